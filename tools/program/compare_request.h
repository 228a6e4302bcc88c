// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech compare`.
#pragma once

#include "tools/program/options.h"

#include <map>

namespace solemech::tools
{
struct CompareRequest : AnswerWish
{
  std::vector<std::string> cases; ///< names, files, or folders of finished runs; the first is compared to
  std::map<std::string, std::string> labels; ///< of settled sheets, by the case that stands for each
};

CommandText text_of(const CompareRequest &);
void        describe(Options &options, CompareRequest &request);
} // namespace solemech::tools
