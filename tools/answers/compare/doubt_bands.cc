// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/doubt_bands.h"

#include "tools/answers/compare/bands.h"
#include "tools/language/doubted_case.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::tools
{
namespace
{
/// A pair at an end of its doubts: its mixtures, and the results of their runs.
struct MovedSets
{
  Sets        sets;
  std::size_t n_changes = 0, end_b = 0;
  /// The changes are those of the two cases. Else what was equal differs now: no change that is split is
  /// behind that, and only the whole difference moves.
  bool                        has_same_changes = true;
  bool                        is_small = false; ///< too small to be worth the runs of its mixtures
  std::vector<solver::Result> results = {};

  bool is_split() const { return has_same_changes && !is_small; }
};

constexpr std::size_t end_a = 0; // the set without any change is the first of every plan

std::vector<double> values_of(const std::vector<solver::Result> &results, const std::string &reading)
{
  std::vector<double> values;
  for (const auto &result : results)
    values.push_back(value_of(result, reading));
  return values;
}

/// Shifts of the readings of one end.
void add_shift(solver::Result &end, const solver::Result &moved, const solver::Result &base)
{
  for (auto &reading : end.readings)
    if (const auto *there = moved.find(reading.name), *here = base.find(reading.name); there && here)
      reading.shifts.push_back(there->value - here->value);
}

/// Sums of squares of what each doubt does to a difference and its shares.
struct Squares
{
  double              total = 0;
  std::vector<double> shares;
};
} // namespace

std::vector<CasePair> moved_pairs(const solver::Case &a, const solver::Case &b)
{
  auto at_rest_a = a, at_rest_b = b;
  at_rest_a.doubts.clear();
  at_rest_b.doubts.clear();
  const bool            together = a.doubts == b.doubts;
  std::vector<CasePair> pairs;
  for (const auto &direction : independent_doubts(a.doubts))
    pairs.push_back({moved(a, direction, 1), together ? moved(b, direction, 1) : at_rest_b});
  if (!together)
    for (const auto &direction : independent_doubts(b.doubts))
      pairs.push_back({at_rest_a, moved(b, direction, 1)});
  return pairs;
}

namespace
{
/// Moves that together make up less than this of the variance of every reading of both ends widen no band by
/// more than a fiftieth: they are spared the runs of their mixtures.
constexpr double least_variance = 0.04;

std::vector<MovedSets> moved_sets(const Comparison &comparison)
{
  std::vector<MovedSets> all;
  for (const CasePair &pair : comparison.moved)
  {
    const auto plan = planned_changes(pair.a, pair.b);
    all.push_back(
      {needed_sets(plan), plan.changes.size(), 0, plan.changes.size() == comparison.plan.changes.size()});
    all.back().end_b = all.back().sets.number.at(all_of(plan.changes.size()));
  }
  return all;
}

/// The ends of every moved pair, all mixtures of those that are split.
void run_moved(std::vector<MovedSets> &all, Job &job, const std::string &what, bool with_mixtures)
{
  std::vector<WantedMixtures> wanted;
  for (const MovedSets &moved : all)
    wanted.push_back({moved.sets, [&moved, with_mixtures](ChangeSet set) {
                        return (with_mixtures && moved.is_split()) || set == 0 ||
                               set == all_of(moved.n_changes);
                      }});
  auto results = run_mixtures(wanted, coarser_run, job, what);
  for (std::size_t i = 0; i < all.size(); ++i)
    all[i].results = std::move(results[i]);
}

/// Share of the variance of a reading of an end that each move makes up, the largest of all readings.
std::vector<double> shares_of_variance(const std::vector<MovedSets> &all, const Explanation &answer,
                                       const solver::Result &a, const solver::Result &b)
{
  std::vector<double> largest(all.size(), 0);
  for (const auto &split : answer.splits)
    for (const bool is_b : {false, true})
    {
      std::vector<double> squares;
      double              sum = 0;
      for (const MovedSets &moved : all)
      {
        squares.push_back(std::pow(value_of(moved.results[is_b ? moved.end_b : end_a], split.name) -
                                     value_of(is_b ? b : a, split.name),
                                   2));
        sum += squares.back();
      }
      for (std::size_t i = 0; i < all.size() && sum > 0; ++i)
        largest[i] = std::max(largest[i], squares[i] / sum);
    }
  return largest;
}

void spare_small_moves(std::vector<MovedSets> &all, const std::vector<double> &shares)
{
  std::vector<std::size_t> order(all.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::ranges::sort(order, {}, [&](std::size_t i) { return shares[i]; });
  double spared = 0;
  for (const std::size_t i : order)
    if (spared += shares[i]; spared < least_variance)
      all[i].is_small = true;
}
} // namespace

void add_doubt_bands(Explanation &answer, const Comparison &comparison,
                     const std::vector<solver::Result> &coarse, Job &job, const std::string &what)
{
  const std::size_t n_changes = answer.plan.changes.size();
  const Sets       &sets = comparison.sets;
  const std::size_t end_b = sets.number.at(all_of(n_changes));
  auto              all_moved = moved_sets(comparison);
  run_moved(all_moved, job, what, false);
  for (const MovedSets &moved : all_moved)
    for (const auto *end : {&moved.results[end_a], &moved.results[moved.end_b]})
      if (!end->complete)
      {
        answer.no_doubt_bands = "a run at an end of the ± stopped: " + end->stop_reason;
        return;
      }
  spare_small_moves(all_moved, shares_of_variance(all_moved, answer, coarse[end_a], coarse[end_b]));
  run_moved(all_moved, job, what, true);

  std::vector<Squares> squares(answer.splits.size());
  for (const MovedSets &moved : all_moved)
  {
    add_shift(answer.a, moved.results[end_a], coarse[end_a]);
    add_shift(answer.b, moved.results[moved.end_b], coarse[end_b]);
    for (std::size_t i = 0; i < answer.splits.size(); ++i)
    {
      const auto &name = answer.splits[i].name;
      const auto  there = values_of(moved.results, name), here = values_of(coarse, name);
      squares[i].total += std::pow(there[moved.end_b] - there[end_a] - here[end_b] + here[end_a], 2);
      squares[i].shares.resize(answer.splits[i].shares.size(), 0);
      if (!moved.has_same_changes)
        answer.shares_without_doubts |= !squares[i].shares.empty();
      if (!moved.is_split())
        continue;
      const auto shares = shares_of(moved.sets, n_changes, there).values,
                 base = shares_of(sets, n_changes, here).values;
      for (std::size_t c = 0; c < std::min(shares.size(), base.size()) && c < squares[i].shares.size(); ++c)
        squares[i].shares[c] += std::pow(shares[c] - base[c], 2);
    }
  }
  // Errors of mesh and step are no scatter: they come on top.
  for (std::size_t i = 0; i < squares.size(); ++i)
  {
    answer.splits[i].total.band += std::sqrt(squares[i].total);
    for (std::size_t c = 0; c < squares[i].shares.size(); ++c)
      answer.splits[i].shares[c].band += std::sqrt(squares[i].shares[c]);
  }
}
} // namespace solemech::tools
