// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/mixture_runs.h"

namespace solemech::tools
{
namespace
{
constexpr std::size_t n_order_pairs = 12; // for more changes than are split exactly
} // namespace

Sets needed_sets(const ChangePlan &plan)
{
  Sets              needed;
  const std::size_t n = plan.changes.size();
  const auto        add = [&](ChangeSet set) {
    if (needed.number.try_emplace(set, needed.sets.size()).second)
    {
      needed.sets.push_back(set);
      needed.mixtures.push_back(mixture(plan, set));
    }
  };
  if (n <= most_exact_changes)
    for (ChangeSet set = 0; set < (1U << n); ++set)
      add(set);
  else
  {
    needed.orders = sampled_orders(n, n_order_pairs);
    for (const auto &order : needed.orders)
      for (const ChangeSet set : sets_of(order))
        add(set);
  }
  return needed;
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

Shares shares_of(const Sets &sets, std::size_t n_changes, const std::vector<double> &values)
{
  if (sets.orders.empty())
  {
    const auto exact = shares_over_all_orders(values);
    return {exact.value_or(std::vector<double>()), std::vector<double>(exact ? n_changes : 0, 0)};
  }
  auto sampled = shares_over_orders(sets.orders, [&](ChangeSet set) { return values[sets.number.at(set)]; });
  return {std::move(sampled.shares), std::move(sampled.standard_errors)};
}
} // namespace solemech::tools
