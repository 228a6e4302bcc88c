// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech help`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct HelpRequest
{
  std::string topic; ///< a command; empty: the program
  std::string text;  ///< ready to print
};

CommandText text_of(const HelpRequest &);
void        describe(Options &options, HelpRequest &request);
} // namespace solemech::tools
