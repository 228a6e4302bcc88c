// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/level_difference.h"

#include <algorithm>
#include <numeric>

namespace solemech::tools
{
LevelDifference::LevelDifference(std::size_t n_changes, const std::function<double(ChangeSet)> &difference)
  : n_changes_(n_changes), none_(difference(0))
{
  const auto          all = static_cast<ChangeSet>((std::uint64_t{1} << n_changes) - 1);
  const double        at_end = difference(all), n = static_cast<double>(n_changes);
  std::vector<double> rows; // sums over j of u_i + u_j
  for (std::size_t i = 0; i < n_changes; ++i)
  {
    alone_.push_back(difference(1U << i) - none_);
    rows.push_back(at_end - difference(all ^ (1U << i)) - alone_.back());
  }
  const double sum = std::accumulate(rows.begin(), rows.end(), 0.0) / (2 * (n - 1)); // of u
  for (const double row : rows)
    of_pairs_.push_back((row - sum) / (n - 2));
  left_over_ = at_end - of_singles_and_pairs(all);
}

double LevelDifference::of_singles_and_pairs(ChangeSet set) const
{
  double    d = none_;
  const int n_others = std::popcount(set) - 1;
  for (std::size_t i = 0; i < n_changes_; ++i)
    if (set >> i & 1)
      d += alone_[i] + n_others * of_pairs_[i];
  return d;
}

double LevelDifference::at(ChangeSet set) const
{
  const double way = (std::popcount(set) - 1.0) / (static_cast<double>(n_changes_) - 2);
  return of_singles_and_pairs(set) + std::clamp(way, 0.0, 1.0) * left_over_;
}
} // namespace solemech::tools
