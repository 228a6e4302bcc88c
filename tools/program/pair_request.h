// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech pair`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct PairRequest : AnswerWish
{
  std::vector<std::string> files;    ///< one with both parts, or the sheets of heel and forefoot
  std::vector<std::string> settings; ///< "entry=value" of both, "heel.entry=value" of one part
};

CommandText text_of(const PairRequest &);
void        describe(Options &options, PairRequest &request);
/// @throws UsageError
void check(const Options &options, const PairRequest &request);
} // namespace solemech::tools
