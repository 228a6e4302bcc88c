// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/mixture_runs.h"

#include <optional>

namespace solemech::tools
{
namespace
{
constexpr std::size_t n_order_pairs = 12;

/// Sets of a split, each once.
class Collected
{
public:
  explicit Collected(const ChangePlan &plan) : plan_(plan) {}

  /// @return that they can all be built
  bool add(ChangeSet set)
  {
    if (sets.number.try_emplace(set, sets.sets.size()).second)
    {
      sets.sets.push_back(set);
      sets.mixtures.push_back(mixture(plan_, set));
    }
    return sets.mixtures[sets.number.at(set)].impossible.empty();
  }

  Sets sets;

private:
  const ChangePlan &plan_;
};

/// Nothing when one of them cannot be built.
std::optional<Sets> near_ends(const ChangePlan &plan)
{
  const std::size_t n = plan.changes.size();
  Collected         collected(plan);
  collected.sets.split = Split::near_ends;
  for (ChangeSet set = 0; set < (1U << n); ++set)
    if (is_near_end(set, n) && !collected.add(set))
      return std::nullopt;
  return std::move(collected.sets);
}

Sets of_sampled_orders(const ChangePlan &plan)
{
  Collected collected(plan);
  collected.sets.split = Split::sampled_orders;
  collected.sets.orders = sampled_orders(plan.changes.size(), n_order_pairs);
  for (const auto &order : collected.sets.orders)
    for (const ChangeSet set : sets_of(order))
      collected.add(set);
  return std::move(collected.sets);
}
} // namespace

Sets all_sets(const ChangePlan &plan)
{
  Collected collected(plan);
  for (ChangeSet set = 0; set < (1U << plan.changes.size()); ++set)
    collected.add(set);
  return std::move(collected.sets);
}

Sets needed_sets(const ChangePlan &plan)
{
  const std::size_t n = plan.changes.size();
  if (n > least_near_ends && n <= most_near_ends)
    if (auto sets = near_ends(plan))
      return std::move(*sets);
  return n <= most_exact_changes ? all_sets(plan) : of_sampled_orders(plan);
}

std::vector<std::vector<solver::Result>> run_mixtures(const std::vector<WantedMixtures> &pairs,
                                                      const SolveWish &wish, Job &job,
                                                      const std::string &what)
{
  std::vector<solver::Case>                cases;
  std::vector<std::vector<solver::Result>> results;
  std::vector<solver::Result *>            places; // one a case; `results` keeps its rows where they are
  for (const auto &[sets, is_wanted] : pairs)
  {
    auto &row = results.emplace_back(sets.sets.size());
    for (std::size_t i = 0; i < row.size(); ++i)
    {
      row[i].complete = false;
      if (!sets.mixtures[i].impossible.empty() || !is_wanted(sets.sets[i]))
        continue;
      cases.push_back(sets.mixtures[i].setup);
      places.push_back(&row[i]);
    }
  }
  auto runs = job.run(cases, wish, what);
  for (std::size_t k = 0; k < places.size(); ++k)
    *places[k] = std::move(runs[k]);
  return results;
}

std::vector<solver::Result> run_mixtures(const Sets &sets, const SolveWish &wish, Job &job,
                                         const std::string                    &what,
                                         const std::function<bool(ChangeSet)> &is_wanted)
{
  return std::move(run_mixtures({{sets, is_wanted}}, wish, job, what).front());
}

double value_of(const solver::Result &result, const std::string &reading)
{
  const auto *found = result.complete ? result.find(reading) : nullptr;
  return found ? found->value : no_value;
}

std::vector<double> by_set(const Sets &sets, std::size_t n_changes, const std::vector<double> &values)
{
  std::vector<double> all(std::size_t{1} << n_changes, no_value);
  for (std::size_t i = 0; i < sets.sets.size(); ++i)
    all[sets.sets[i]] = values[i];
  return all;
}

Shares shares_of(const Sets &sets, std::size_t n_changes, const std::vector<double> &values)
{
  switch (sets.split)
  {
  case Split::sampled_orders: {
    auto sampled =
      shares_over_orders(sets.orders, [&](ChangeSet set) { return values[sets.number.at(set)]; });
    // Two standard errors: 19 of 20 samples of orders lie within.
    for (double &error : sampled.standard_errors)
      error *= 2;
    return {std::move(sampled.shares), std::move(sampled.standard_errors)};
  }
  case Split::near_ends: {
    auto                near = shares_near_ends(by_set(sets, n_changes, values));
    std::vector<double> errors(near.shares.size(), near.spread);
    return {std::move(near.shares), std::move(errors)};
  }
  case Split::all_orders:
    break;
  }
  const auto exact = shares_over_all_orders(by_set(sets, n_changes, values));
  return {exact.value_or(std::vector<double>()), std::vector<double>(exact ? n_changes : 0, 0)};
}
} // namespace solemech::tools
