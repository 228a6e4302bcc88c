// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/solve_trial.h"

#include "solver/mesh/locking.h"
#include "tools/language/case_text.h"
#include "tools/rigs/registry.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// One search for the load at which a stack bottoms, with what it needs to go on.
struct Search
{
  LimitSearch  limit;
  solver::Case stack;
  solver::Case (*loaded)(const solver::Case &, double);
  std::optional<LimitSearch::Answer> *answer;
};

bool can_bottom(const solver::Case &data)
{
  return std::any_of(data.layers.begin(), data.layers.end(),
                     [](const solver::Layer &layer) { return solver::locking_strain(layer) > 0; });
}

void add_searches(std::vector<Search> &searches, const solver::Case &data, TrialSide &side)
{
  if (!can_bottom(data))
    return;
  if (rigs::fall_of(data))
  {
    const double energy = drop_energy(data);
    LimitSearch  limit(2 * energy, energy / most_energy, most_energy * energy, reserve_tolerance);
    if (const auto left = travel_left(data, side.result))
      limit.take(energy, left->share);
    searches.push_back({limit, data, dropped_with, &side.reserve.energy});
  }
  if (can_be_stepped_on(data))
    searches.push_back({LimitSearch(heaviest_step, lightest_step, heaviest_step, reserve_tolerance), data,
                        stepped_on, &side.reserve.body_mass});
}

/// All searches go on together: one batch holds the next loads of each.
void search_all(std::vector<Search> &searches, const RunCases &run)
{
  for (;;)
  {
    std::vector<solver::Case>                   cases;
    std::vector<std::pair<std::size_t, double>> origin;
    for (std::size_t i = 0; i < searches.size(); ++i)
      for (const double load : searches[i].limit.next())
      {
        cases.push_back(searches[i].loaded(searches[i].stack, load));
        origin.emplace_back(i, load);
      }
    if (cases.empty())
      break;
    const auto results = run(cases, false, "where it bottoms");
    for (std::size_t i = 0; i < cases.size(); ++i)
    {
      const auto left = travel_left(cases[i], results[i]);
      searches[origin[i].first].limit.take(origin[i].second,
                                           left ? std::optional(left->share) : std::nullopt);
    }
  }
  for (const auto &search : searches)
    *search.answer = search.limit.answer();
}
} // namespace

TrialResult solve_trial(const TrialInput &trial, const RunCases &run)
{
  TrialResult answer;
  const bool  differs = canonical_text(trial.now) != canonical_text(trial.changed);

  auto sides =
    run(differs ? std::vector{trial.now, trial.changed} : std::vector{trial.now}, true, "now and changed");
  answer.now.result = std::move(sides.front());
  if (differs)
    answer.changed.result = std::move(sides.back());
  if (!answer.now.result.complete || !answer.changed.result.complete)
    return answer;

  std::vector<Search> searches;
  add_searches(searches, trial.now, answer.now);
  if (differs)
    add_searches(searches, trial.changed, answer.changed);
  search_all(searches, run);

  if (trial.player_mass && can_be_stepped_on(trial.now) && can_be_stepped_on(trial.changed))
  {
    std::vector steps{stepped_on(trial.now, *trial.player_mass)};
    if (differs)
      steps.push_back(stepped_on(trial.changed, *trial.player_mass));
    const auto results = run(steps, false, "under the player");
    answer.now.reserve.under_player = travel_left(steps.front(), results.front());
    if (differs)
      answer.changed.reserve.under_player = travel_left(steps.back(), results.back());
  }
  if (!differs)
    answer.changed = answer.now;
  if (trial.range)
    answer.range = run(trial.range->cases, false, "over the range");
  return answer;
}
} // namespace solemech::tools
