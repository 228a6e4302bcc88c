// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech sheet`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct SheetRequest
{
  std::string file;          ///< to write
  std::string part = "heel"; ///< or "forefoot"
  bool        pair = false;  ///< one file with both parts
  bool        rig = false;   ///< a rig file instead of a bench sheet
  bool        sole = false;  ///< a sole file instead of a bench sheet
};

CommandText text_of(const SheetRequest &);
void        describe(Options &options, SheetRequest &request);
/// @throws UsageError
void check(const Options &options, const SheetRequest &request);
} // namespace solemech::tools
