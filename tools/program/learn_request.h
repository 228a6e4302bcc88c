// SPDX-License-Identifier: Apache-2.0
// What is asked of `solemech learn`.
#pragma once

#include "tools/program/options.h"

namespace solemech::tools
{
struct LearnRequest : AnswerWish
{
  std::string        name;  ///< lesson or case file; empty: the list
  std::optional<int> guess; ///< number of the choice, from 1
};

CommandText text_of(const LearnRequest &);
void        describe(Options &options, LearnRequest &request);
} // namespace solemech::tools
