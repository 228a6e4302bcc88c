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
void search_all(std::vector<Search> &searches, Job &job)
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
    const auto results = job.run(cases, readings_only, "where it bottoms");
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

double cost_of(const TrialRequest &request)
{
  constexpr double n_searches = 2, loads = 6, points = 7; // each about
  const double     n_sides = request.swaps.empty() ? 1 : 2;
  return n_sides * cost_of(SolveWish()) + (n_sides * (n_searches * loads + (request.player.empty() ? 0 : 1)) +
                                           (request.range.empty() ? 0 : points)) *
                                            cost_of(readings_only);
}

TrialResult solve_trial(const TrialInput &trial, Job &job)
{
  TrialResult answer;
  const bool  differs = canonical_text(trial.now) != canonical_text(trial.changed);

  if (differs)
  {
    auto sides = job.run({trial.now, trial.changed}, SolveWish(), "before and after");
    answer.now.result = std::move(sides.front());
    answer.changed.result = std::move(sides.back());
  }
  else
    answer.now.result = job.run_alone({trial.now, {}});
  if (!answer.now.result.complete || !answer.changed.result.complete)
    return answer;

  std::vector<Search> searches;
  add_searches(searches, trial.now, answer.now);
  if (differs)
    add_searches(searches, trial.changed, answer.changed);
  search_all(searches, job);

  if (trial.player_mass && can_be_stepped_on(trial.now) && can_be_stepped_on(trial.changed))
  {
    std::vector steps{stepped_on(trial.now, *trial.player_mass)};
    if (differs)
      steps.push_back(stepped_on(trial.changed, *trial.player_mass));
    const auto results = job.run(steps, readings_only, "under the player");
    answer.now.reserve.under_player = travel_left(steps.front(), results.front());
    if (differs)
      answer.changed.reserve.under_player = travel_left(steps.back(), results.back());
  }
  if (!differs)
    answer.changed = answer.now;
  if (trial.range)
    answer.range = job.run(trial.range->cases, readings_only, "over the range");
  return answer;
}
} // namespace solemech::tools
