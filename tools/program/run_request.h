// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech run`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct RunRequest : AnswerWish
{
  std::vector<std::string> cases;    ///< names or files
  std::vector<std::string> settings; ///< "layer.entry=value"
};

CommandText text_of(const RunRequest &);
void        describe(Options &options, RunRequest &request);
} // namespace solemech::tools
