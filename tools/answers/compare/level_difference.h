// SPDX-License-Identifier: Apache-2.0
// What a finer mesh and step change of a reading is small and nearly a sum over the changes, so that finer
// runs of few mixtures say it of all. These are both ends and the mixtures of one change and of all but one;
// between them the difference of the two levels counts as what single changes and pairs of them make of it,
//   d(S) = d0 + sum of a_i + sum over pairs of (u_i + u_j),  i, j in S,
// with u so that every last step comes out, and what is left at the far end spread over the numbers of
// changes between. A share of a d without dependences of three changes at once is half the sum of its first
// and its last step, and so is exact.
#pragma once

#include "tools/answers/compare/shares.h"

#include <bit>
#include <functional>

namespace solemech::tools
{
/// Fewest changes between which a mixture lies that is spared its finer run.
inline constexpr std::size_t least_told_changes = 4;

/// Mixtures that are run finer.
inline bool tells_levels(ChangeSet set, std::size_t n_changes)
{
  const auto n_made = static_cast<std::size_t>(std::popcount(set));
  return n_made <= 1 || n_made + 1 >= n_changes;
}

class LevelDifference
{
public:
  /// @param n_changes   at least least_told_changes
  /// @param difference  of a set that tells the levels, finer minus coarser [unit of the reading]
  LevelDifference(std::size_t n_changes, const std::function<double(ChangeSet)> &difference);

  double at(ChangeSet set) const;

  /// What singles and pairs of changes leave over at the far end [unit of the reading].
  double left_over() const { return left_over_; }

private:
  double of_singles_and_pairs(ChangeSet set) const;

  std::size_t         n_changes_;
  double              none_, left_over_ = 0;
  std::vector<double> alone_, of_pairs_; ///< a_i, u_i
};
} // namespace solemech::tools
