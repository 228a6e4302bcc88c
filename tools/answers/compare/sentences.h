// SPDX-License-Identifier: Apache-2.0
// What a comparison says in words, from its numbers alone: turn A and B round and the sentences turn round.
#pragma once

#include "tools/answers/compare/explain.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct ComparedPair
{
  const Explanation &explanation;
  std::string        a, b; ///< what the two are called
  bool are_parts = false;  ///< of one shoe: a sentence says "the heel", and begins with a capital
};

/// The answer in one sentence: "B throws the weight back 63 mm (15.9 points of return) higher than A."
std::string main_sentence(const ComparedPair &pair);

/// What a person should know beside it: a difference too small to be taken as real, a higher rebound that
/// lands harder, a stack close to the end of its travel.
std::vector<std::string> further_sentences(const ComparedPair &pair);

/// What makes the difference of one reading: the greatest shares, those that act together, or that none can
/// be told.
std::string share_sentence(const Explanation &explanation, const ReadingSplit &split);

/// What to say beside the share of one change, "" when there is nothing.
std::string change_remark(const Explanation &explanation, std::size_t change);

/// "+14.1 points" in the words of the reading.
std::string difference_text(const std::string &reading, double value);
} // namespace solemech::tools
