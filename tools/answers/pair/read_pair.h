// SPDX-License-Identifier: Apache-2.0
// Heel and forefoot as one thing: two bench sheets, or one file with both parts, that were read on one rod.
// What cannot be a pair is refused with its cure; what can be put right is, and said.
#pragma once

#include "tools/answers/sheet/sheet.h"

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tools
{
struct Pair
{
  std::string              label; ///< as the sheets call the pair; else from their files
  std::vector<Sheet>       parts; ///< heel, forefoot
  std::vector<std::string> notes; ///< sentences: what was put right or brought together
  std::string              text;  ///< of one file with both parts; empty: there are two

  bool is_one_file() const { return !text.empty(); }

  const Sheet &heel() const { return parts[0]; }
  const Sheet &forefoot() const { return parts[1]; }
};

/// @param files  one file with both parts, or the sheets of the two parts in any order
/// @throws materials::CaseError with every mistake of both
Pair read_pair(const std::vector<std::filesystem::path> &files, const ReadOptions &options);
} // namespace solemech::tools
