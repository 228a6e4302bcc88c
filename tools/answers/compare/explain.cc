// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/explain.h"

#include "tools/answers/compare/bands.h"
#include "tools/answers/compare/doubt_bands.h"
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

/// A set counts only when both levels have its value.
std::pair<std::vector<double>, std::vector<double>> tables(const std::string                 &reading,
                                                           const std::vector<solver::Result> &fine,
                                                           const std::vector<solver::Result> &coarse)
{
  std::pair<std::vector<double>, std::vector<double>> both;
  for (std::size_t i = 0; i < fine.size(); ++i)
  {
    double of_fine = value_of(fine[i], reading), of_coarse = value_of(coarse[i], reading);
    if (std::isnan(of_fine) || std::isnan(of_coarse))
      of_fine = of_coarse = no_value;
    both.first.push_back(of_fine);
    both.second.push_back(of_coarse);
  }
  return both;
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
                      const std::vector<solver::Result> &fine, const std::vector<solver::Result> &coarse)
{
  ReadingSplit      split{reading, "", 0, 0, {}, {}, {}};
  const std::size_t a = sets.number.at(0);
  const std::size_t b = sets.number.at(all_of(n_changes));
  split.unit = fine[a].find(reading)->unit;
  split.from = fine[a].find(reading)->value;
  split.to = fine[b].find(reading)->value;
  const auto [of_fine, of_coarse] = tables(reading, fine, coarse);
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
    // Two standard errors: 19 of 20 samples of orders lie within.
    share.band += 2 * shares.sampling_errors[i];
    // The only change makes all of it.
    if (n_changes == 1)
      share.band = split.total.band;
    // What makes no difference in any mixture has no error either.
    if (shares.values[i] == 0 && check.values[i] == 0)
      share.band = 0;
    split.shares.push_back(share);
  }
  if (sets.orders.empty())
    add_interactions(split, of_fine, of_coarse, single * least);
  return split;
}

/// The errors that the two levels say about the readings of an end.
void set_errors(solver::Result &fine, const solver::Result &coarse)
{
  for (auto &reading : fine.readings)
    if (const auto *other = coarse.find(reading.name))
      reading.error = std::abs(reading.value - other->value);
}

void note_impossible(const Sets &sets, const std::vector<solver::Result> &fine,
                     const std::vector<solver::Result> &coarse, Explanation &answer)
{
  for (std::size_t i = 0; i < sets.sets.size(); ++i)
  {
    std::string reason = sets.mixtures[i].impossible;
    if (reason.empty() && !fine[i].complete)
      reason = fine[i].stop_reason;
    else if (reason.empty() && !coarse[i].complete)
      reason = coarse[i].stop_reason;
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

double cost_of(const Comparison &comparison)
{
  const double n_sets = comparison.comparable ? static_cast<double>(comparison.sets.sets.size()) : 2;
  const double n_moved = comparison.comparable ? static_cast<double>(comparison.moved.size()) : 0;
  return n_sets * (cost_of(readings_only) + (1 + n_moved) * cost_of(coarser_run));
}

namespace
{
/// Both ends at the wished accuracy, then every mixture once coarser and once at that accuracy.
struct MixtureResults
{
  std::vector<solver::Result> fine, coarse;
};

/// Splits every reading that both ends, `a` and `b`, have.
void split_readings(const MixtureResults &runs, const Sets &sets, const solver::Result &a,
                    const solver::Result &b, Explanation &answer)
{
  note_impossible(sets, runs.fine, runs.coarse, answer);
  answer.n_sampled_orders = sets.orders.size();
  const std::size_t n_changes = answer.plan.changes.size();
  for (const auto *kind : compared_readings()) // most telling first
    if (kind->compared.split && a.find(*kind) && b.find(*kind))
      answer.splits.push_back(split_of(*kind, sets, n_changes, runs.fine, runs.coarse));
  if (sets.orders.empty() && !answer.splits.empty())
    answer.possible_orders =
      share_of_possible_orders(tables(answer.splits.front().name, runs.fine, runs.coarse).first);
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
  const auto        is_mixture = [&](ChangeSet set) { return comparison.comparable && !is_end(set); };
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
  runs.fine = run_mixtures(sets, readings_only, job, what, is_mixture);
  for (const std::size_t end : end_a == end_b ? std::vector{end_a} : std::vector{end_a, end_b})
  {
    set_errors(ends[end], runs.coarse[end]);
    runs.fine[end] = std::move(ends[end]);
  }
  if (comparison.comparable)
    split_readings(runs, sets, runs.fine[end_a], runs.fine[end_b], answer);
  else
    answer.no_shares = why_not_comparable(comparison.plan.a, comparison.plan.b);
  take_ends(runs.fine);
  if (answer.has_doubts && comparison.comparable)
    add_doubt_bands(answer, comparison, runs.coarse, job, "bands: " + what);
  return answer;
}
} // namespace solemech::tools
