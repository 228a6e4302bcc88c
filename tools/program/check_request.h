// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech check`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct CheckRequest
{
  std::vector<std::string> files;    ///< files, or names of prebuilt cases
  std::vector<std::string> settings; ///< "layer.entry=value"
};

CommandText text_of(const CheckRequest &);
void        describe(Options &options, CheckRequest &request);
} // namespace solemech::tools
