// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech draw`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct DrawRequest
{
  std::string sole;         ///< file, or name of a prepared sole
  std::string output;       ///< file to write; empty: NAME-drawing.svg in this folder
  bool        json = false; ///< what the sole measures, as JSON
};

CommandText text_of(const DrawRequest &);
void        describe(Options &options, DrawRequest &request);
/// @throws UsageError
void check(const Options &options, const DrawRequest &request);
} // namespace solemech::tools
