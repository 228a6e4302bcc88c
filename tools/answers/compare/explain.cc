// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/explain.h"

#include "tools/answers/compare/bands.h"
#include "tools/answers/compare/doubt_bands.h"
#include "tools/answers/compare/level_difference.h"
#include "tools/answers/compare/one_rod.h"
#include "tools/answers/compare/reading_words.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr double notable_interaction = 0.2; // of a share

constexpr SolveWish with_pictures{.pictures = true, .estimate_error = false, .level = 0};

/// The mixtures at the wished accuracy and coarser.
struct MixtureResults
{
  std::vector<solver::Result> fine, coarse;
  bool                        all_fine = true; ///< else only those that tell the difference of the levels
};

/// A reading of every mixture at both levels.
struct Values
{
  std::vector<double> fine, coarse;
  double              left_over = 0; ///< as in LevelDifference
};

/// A set counts only when both levels have its value.
Values values_of(const std::string &reading, const Sets &sets, std::size_t n_changes,
                 const MixtureResults &runs)
{
  Values values;
  for (std::size_t i = 0; i < sets.sets.size(); ++i)
  {
    double of_fine = value_of(runs.fine[i], reading), of_coarse = value_of(runs.coarse[i], reading);
    if (std::isnan(of_coarse) || (std::isnan(of_fine) && runs.all_fine))
      of_fine = of_coarse = no_value;
    values.fine.push_back(of_fine);
    values.coarse.push_back(of_coarse);
  }
  if (runs.all_fine)
    return values;
  const LevelDifference difference(n_changes, [&](ChangeSet set) {
    const auto i = sets.number.at(set);
    return values.fine[i] - values.coarse[i];
  });
  for (std::size_t i = 0; i < sets.sets.size(); ++i)
    if (!tells_levels(sets.sets[i], n_changes))
      values.fine[i] = values.coarse[i] + difference.at(sets.sets[i]);
  values.left_over = std::abs(difference.left_over());
  return values;
}

void add_interactions(ReadingSplit &split, const std::vector<double> &fine, const std::vector<double> &coarse,
                      double least)
{
  for (std::size_t i = 0; i < split.shares.size(); ++i)
    for (std::size_t j = i + 1; j < split.shares.size(); ++j)
    {
      const auto of_fine = interaction(fine, i, j), of_coarse = interaction(coarse, i, j);
      if (!of_fine || !of_coarse)
        continue;
      const Banded both = banded(*of_fine, *of_coarse, least);
      const double smaller = std::min(std::abs(split.shares[i].value), std::abs(split.shares[j].value));
      if (both.is_told() && std::abs(both.value) > notable_interaction * smaller)
        split.interactions.push_back({i, j, both.value, both.band});
    }
  std::sort(split.interactions.begin(), split.interactions.end(),
            [](const Together &x, const Together &y) { return std::abs(x.value) > std::abs(y.value); });
}

ReadingSplit split_of(const std::string &reading, const Sets &sets, std::size_t n_changes,
                      const MixtureResults &runs)
{
  ReadingSplit      split{reading, "", 0, 0, {}, {}, {}};
  const std::size_t a = sets.number.at(0);
  const std::size_t b = sets.number.at(all_of(n_changes));
  split.unit = runs.fine[a].find(reading)->unit;
  split.from = runs.fine[a].find(reading)->value;
  split.to = runs.fine[b].find(reading)->value;
  const auto [of_fine, of_coarse, left_over] = values_of(reading, sets, n_changes, runs);
  const double least = least_share_error(reading, std::max(std::abs(split.from), std::abs(split.to)));
  // One difference of two runs, and one of four: less is averaged out than in a share.
  constexpr double single = 2;
  split.total = banded(split.to - split.from, of_coarse[b] - of_coarse[a], single * least);
  if (n_changes == 0)
    split.total = {0, 0};

  const Shares shares = shares_of(sets, n_changes, of_fine), check = shares_of(sets, n_changes, of_coarse);
  for (std::size_t i = 0; i < shares.values.size(); ++i)
  {
    Banded share = banded(shares.values[i], check.values[i], least);
    share.band += shares.errors[i] + left_over;
    // The only change makes all of it.
    if (n_changes == 1)
      share.band = split.total.band;
    // What makes no difference in any mixture has no error either.
    if (shares.values[i] == 0 && check.values[i] == 0)
      share.band = 0;
    split.shares.push_back(share);
  }
  if (sets.split != Split::sampled_orders)
    add_interactions(split, by_set(sets, n_changes, of_fine), by_set(sets, n_changes, of_coarse),
                     single * least);
  return split;
}

/// The errors that the two levels say about the readings of an end.
void set_errors(solver::Result &fine, const solver::Result &coarse)
{
  for (auto &reading : fine.readings)
    if (const auto *other = coarse.find(reading.name))
      reading.error = std::abs(reading.value - other->value);
}

void note_impossible(const Sets &sets, const MixtureResults &runs, Explanation &answer)
{
  for (std::size_t i = 0; i < sets.sets.size(); ++i)
  {
    std::string reason = sets.mixtures[i].impossible;
    if (reason.empty() && !runs.fine[i].complete)
      reason = runs.fine[i].stop_reason;
    if (reason.empty() && !runs.coarse[i].complete)
      reason = runs.coarse[i].stop_reason;
    if (!reason.empty())
      answer.impossible.push_back({sets.mixtures[i].setup.label, reason});
  }
}
} // namespace

/// A quarter of the difference that is read as real: no one calls less a cause.
static double least_notable(const std::string &reading, double from, double to)
{
  return 0.25 * real_difference(reading, from, to);
}

bool is_small_share(const ReadingSplit &split, std::size_t change)
{
  return std::abs(split.shares[change].value) < real_difference(split.name, split.from, split.to);
}

const Together *entangled(const ReadingSplit &split, std::size_t change)
{
  for (const Together &pair : split.interactions)
    if ((pair.first == change || pair.second == change) &&
        std::abs(pair.value) > notable_interaction * std::abs(split.shares[change].value) &&
        std::abs(pair.value) > least_notable(split.name, split.from, split.to))
      return &pair;
  return nullptr;
}

std::string main_reading(const solver::Result &a, const solver::Result &b)
{
  using solver::catalogue;
  for (const auto *kind : {&catalogue.rebound_by_height, &catalogue.compression_set, &catalogue.loop_return,
                           &catalogue.effective_grip, &catalogue.hardness})
    if (a.find(*kind) && b.find(*kind))
      return *kind;
  return "";
}

Comparison prepared(solver::Case a, solver::Case b)
{
  auto one_rod = share_rod(a, b);
  auto moved = moved_pairs(a, b);
  auto comparison = prepared(std::move(a), std::move(b), std::move(moved));
  comparison.one_rod = std::move(one_rod);
  return comparison;
}

Comparison prepared(solver::Case a, solver::Case b, std::vector<CasePair> moved)
{
  a.doubts.clear();
  b.doubts.clear();
  Comparison comparison;
  comparison.plan = planned_changes(a, b);
  comparison.sets = needed_sets(comparison.plan);
  comparison.comparable = rigs::are_of_one_family(a, b) && a.plug.section == b.plug.section;
  comparison.moved = std::move(moved);
  return comparison;
}

/// Of changes split over all orders, most mixtures are spared their run at the wished accuracy.
static bool spares_finer_runs(const Comparison &comparison)
{
  return comparison.sets.split != Split::sampled_orders &&
         comparison.plan.changes.size() >= least_told_changes;
}

double cost_of(const Comparison &comparison)
{
  if (!comparison.comparable)
    return 2 * (cost_of(readings_only) + cost_of(coarser_run));
  const std::size_t n_changes = comparison.plan.changes.size();
  const auto        n_sets = comparison.sets.sets.size();
  const auto        n_fine = spares_finer_runs(comparison) ? std::min(n_sets, 2 * n_changes + 2) : n_sets;
  return static_cast<double>(n_fine) * cost_of(readings_only) +
         static_cast<double>(n_sets * (1 + comparison.moved.size())) * cost_of(coarser_run);
}

namespace
{
/// Whether the finer runs that were made say of every reading that is split what the levels change.
bool are_levels_told(const MixtureResults &runs, const Sets &sets, std::size_t n_changes)
{
  const auto &a = runs.fine[sets.number.at(0)], &b = runs.fine[sets.number.at(all_of(n_changes))];
  for (const auto *kind : compared_readings())
    for (std::size_t i = 0; i < sets.sets.size(); ++i)
      if (kind->compared.split && a.find(*kind) && b.find(*kind) && tells_levels(sets.sets[i], n_changes) &&
          std::isnan(value_of(runs.fine[i], *kind) - value_of(runs.coarse[i], *kind)))
        return false;
  return true;
}

/// Runs the mixtures at the wished accuracy that tell the difference of the levels, and the others only where
/// those do not suffice.
/// @param[in,out] runs  of the coarser level all, at the wished accuracy the ends
void run_finer(MixtureResults &runs, const Comparison &comparison, Job &job, const std::string &what)
{
  const std::size_t n_changes = comparison.plan.changes.size();
  const auto        run = [&](const std::function<bool(ChangeSet)> &is_wanted) {
    auto results = run_mixtures(comparison.sets, readings_only, job, what, is_wanted);
    for (std::size_t i = 0; i < results.size(); ++i)
      if (const auto set = comparison.sets.sets[i]; is_wanted(set))
        runs.fine[i] = std::move(results[i]);
  };
  const auto is_mixture = [all = all_of(n_changes)](ChangeSet set) { return set != 0 && set != all; };
  const auto tells = [&](ChangeSet set) {
    return tells_levels(set, n_changes) || !spares_finer_runs(comparison);
  };
  run([&](ChangeSet set) { return is_mixture(set) && tells(set); });
  runs.all_fine = !spares_finer_runs(comparison) || !are_levels_told(runs, comparison.sets, n_changes);
  if (runs.all_fine)
    run([&](ChangeSet set) { return is_mixture(set) && !tells(set); });
}

/// Splits every reading that both ends, `a` and `b`, have.
void split_readings(const MixtureResults &runs, const Sets &sets, const solver::Result &a,
                    const solver::Result &b, Explanation &answer)
{
  note_impossible(sets, runs, answer);
  answer.n_sampled_orders = sets.orders.size();
  const std::size_t n_changes = answer.plan.changes.size();
  for (const auto *kind : compared_readings()) // most telling first
    if (kind->compared.split && a.find(*kind) && b.find(*kind))
      answer.splits.push_back(split_of(*kind, sets, n_changes, runs));
  if (sets.split == Split::all_orders && !answer.splits.empty())
    answer.possible_orders = share_of_possible_orders(
      by_set(sets, n_changes, values_of(answer.splits.front().name, sets, n_changes, runs).fine));
  if (!answer.splits.empty() && n_changes > 0 && answer.splits.front().shares.empty())
    answer.no_shares = "every order of the changes passes through a mixture that cannot be built";
}

std::string why_not_comparable(const solver::Case &a, const solver::Case &b)
{
  return rigs::are_of_one_family(a, b) ? "a round plug and a slice give different kinds of readings"
                                       : fmt::format("a {} and a {} give different kinds of readings",
                                                     rigs::kind_of(a).family(), rigs::kind_of(b).family());
}
} // namespace

Explanation explained(const Comparison &comparison, Job &job, const std::string &what)
{
  const Sets       &sets = comparison.sets;
  const ChangeSet   all = all_of(comparison.plan.changes.size());
  const std::size_t end_a = sets.number.at(0), end_b = sets.number.at(all);
  const auto        is_end = [all](ChangeSet set) { return set == 0 || set == all; };
  const auto        is_needed = [&](ChangeSet set) { return comparison.comparable || is_end(set); };

  Explanation answer;
  answer.plan = comparison.plan;
  answer.one_rod = comparison.one_rod;
  answer.has_doubts = !comparison.moved.empty();
  const auto n_calculated = job.n_calculated(), n_from_store = job.n_from_store();
  const auto take_ends = [&](std::vector<solver::Result> &results) {
    answer.b = end_b == end_a ? results[end_b] : std::move(results[end_b]);
    answer.a = std::move(results[end_a]);
    answer.n_calculated = job.n_calculated() - n_calculated;
    answer.n_from_store = job.n_from_store() - n_from_store;
  };
  auto ends = run_mixtures(sets, with_pictures, job, what, is_end);
  if (!ends[end_a].complete || !ends[end_b].complete)
  {
    take_ends(ends);
    return answer;
  }
  MixtureResults runs;
  runs.coarse = run_mixtures(sets, coarser_run, job, what, is_needed);
  if (comparison.comparable && sets.split == Split::near_ends &&
      comparison.plan.changes.size() <= most_exact_changes &&
      std::ranges::any_of(runs.coarse, [](const solver::Result &result) { return !result.complete; }))
  {
    auto with_all = comparison;
    with_all.sets = all_sets(comparison.plan);
    return explained(with_all, job, what);
  }
  for (const std::size_t end : end_a == end_b ? std::vector{end_a} : std::vector{end_a, end_b})
    set_errors(ends[end], runs.coarse[end]);
  runs.fine = std::move(ends);
  if (comparison.comparable)
  {
    run_finer(runs, comparison, job, what);
    split_readings(runs, sets, runs.fine[end_a], runs.fine[end_b], answer);
  }
  else
    answer.no_shares = why_not_comparable(comparison.plan.a, comparison.plan.b);
  take_ends(runs.fine);
  if (answer.has_doubts && comparison.comparable)
    add_doubt_bands(answer, comparison, runs.coarse, job, "bands: " + what);
  return answer;
}
} // namespace solemech::tools
