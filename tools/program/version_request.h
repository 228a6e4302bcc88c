// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech version`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct VersionRequest
{
  bool verbose = false; ///< build facts too
};

CommandText text_of(const VersionRequest &);
void        describe(Options &options, VersionRequest &request);
} // namespace solemech::tools
