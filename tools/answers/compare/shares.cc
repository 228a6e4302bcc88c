// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/shares.h"

#include <algorithm>
#include <bit>
#include <cmath>
#include <numeric>
#include <random>

namespace solemech::tools
{
namespace
{
std::size_t n_changes_of(std::span<const double> values)
{
  return static_cast<std::size_t>(std::countr_zero(values.size()));
}

/// Number of possible ways from no change to each set, one change after the other.
std::vector<double> ways_up(std::span<const double> values)
{
  const std::size_t   n = n_changes_of(values);
  std::vector<double> ways(values.size(), 0);
  ways[0] = std::isnan(values[0]) ? 0 : 1;
  for (ChangeSet set = 1; set < values.size(); ++set)
    if (!std::isnan(values[set]))
      for (std::size_t i = 0; i < n; ++i)
        if (set >> i & 1)
          ways[set] += ways[set ^ (1U << i)];
  return ways;
}

/// Number of possible ways from each set to all changes.
std::vector<double> ways_on(std::span<const double> values)
{
  // The same count seen from the other end.
  std::vector<double> turned(values.rbegin(), values.rend());
  std::vector<double> ways = ways_up(turned);
  std::reverse(ways.begin(), ways.end());
  return ways;
}

double factorial(std::size_t n)
{
  return std::tgamma(static_cast<double>(n) + 1);
}

/// Orders in pairs; a pair of which one order is missing counts by the other alone.
std::vector<double> of_pair(const std::vector<std::vector<std::optional<double>>> &steps, std::size_t first)
{
  std::vector<double> mean;
  double              n_orders = 0;
  for (std::size_t k = first; k < std::min(first + 2, steps.size()); ++k)
  {
    if (std::any_of(steps[k].begin(), steps[k].end(), [](const auto &step) { return !step; }))
      continue;
    mean.resize(steps[k].size(), 0);
    for (std::size_t i = 0; i < mean.size(); ++i)
      mean[i] += *steps[k][i];
    ++n_orders;
  }
  for (double &value : mean)
    value /= n_orders;
  return mean;
}
} // namespace

std::optional<std::vector<double>> shares_over_all_orders(std::span<const double> values)
{
  const std::size_t n = n_changes_of(values);
  const auto        up = ways_up(values), on = ways_on(values);
  const double      n_orders = up.back();
  if (!(n_orders > 0))
    return std::nullopt;
  std::vector<double> shares(n, 0);
  for (ChangeSet set = 0; set < values.size(); ++set)
    for (std::size_t i = 0; i < n; ++i)
      if (const ChangeSet with = set | (1U << i); with != set && up[set] > 0 && on[with] > 0)
        shares[i] += up[set] * on[with] / n_orders * (values[with] - values[set]);
  return shares;
}

bool is_near_end(ChangeSet set, std::size_t n_changes)
{
  const auto n_made = static_cast<std::size_t>(std::popcount(set));
  return n_made <= 2 || n_made + 2 >= n_changes;
}

namespace
{
/// Mean of what change i adds to n_others others; those without value are left out, no_value when all are.
double mean_addition(std::span<const double> values, std::size_t i, std::size_t n_others)
{
  double sum = 0, n = 0;
  for (ChangeSet set = 0; set < values.size(); ++set)
  {
    if ((set >> i & 1) || static_cast<std::size_t>(std::popcount(set)) != n_others)
      continue;
    const double added = values[set | 1U << i] - values[set];
    if (std::isnan(added))
      continue;
    sum += added;
    ++n;
  }
  return n > 0 ? sum / n : no_value;
}
} // namespace

SharesNearEnds shares_near_ends(std::span<const double> values)
{
  const std::size_t n = n_changes_of(values);
  // Weights of both inner and of both outer places for which 1 and x^2 have their means over 0 .. n - 1, x
  // from the middle; odd powers vanish.
  const double   inner = static_cast<double>(n - 1) / 12, outer = 0.5 - inner;
  SharesNearEnds answer;
  double         sum = 0;
  for (std::size_t i = 0; i < n; ++i)
  {
    const auto at = [&](std::size_t n_others) { return mean_addition(values, i, n_others); };
    answer.shares.push_back(outer * (at(0) + at(n - 1)) + inner * (at(1) + at(n - 2)));
    sum += answer.shares.back();
  }
  if (std::isnan(sum))
    return {};
  const double lacking = (values.back() - values.front() - sum) / static_cast<double>(n);
  for (double &share : answer.shares)
    share += lacking;
  answer.spread = std::abs(lacking);
  return answer;
}

double share_of_possible_orders(std::span<const double> values)
{
  return ways_up(values).back() / factorial(n_changes_of(values));
}

std::optional<double> interaction(std::span<const double> values, std::size_t i, std::size_t j)
{
  const std::size_t n = n_changes_of(values);
  const ChangeSet   bit_i = 1U << i, bit_j = 1U << j;
  double            sum = 0, weights = 0;
  for (ChangeSet set = 0; set < values.size(); ++set)
  {
    if (set & (bit_i | bit_j))
      continue;
    const auto   s = static_cast<std::size_t>(std::popcount(set));
    const double weight = factorial(n - s - 2) * factorial(s) / factorial(n - 1);
    const double together =
      values[set | bit_i | bit_j] - values[set | bit_i] - values[set | bit_j] + values[set];
    if (std::isnan(together))
      continue;
    sum += weight * together;
    weights += weight;
  }
  return weights > 0 ? std::optional(sum / weights) : std::nullopt;
}

std::vector<std::vector<std::size_t>> sampled_orders(std::size_t n_changes, std::size_t n_pairs)
{
  std::mt19937             random(20240229); // fixed: the same comparison gives the same answer
  std::vector<std::size_t> order(n_changes);
  std::iota(order.begin(), order.end(), 0);
  std::vector<std::vector<std::size_t>> orders;
  for (std::size_t pair = 0; pair < n_pairs; ++pair)
  {
    // Fisher-Yates by hand: std::shuffle may differ from library to library.
    for (std::size_t k = n_changes; k > 1; --k)
      std::swap(order[k - 1], order[random() % k]);
    orders.push_back(order);
    orders.emplace_back(order.rbegin(), order.rend());
  }
  return orders;
}

std::vector<ChangeSet> sets_of(const std::vector<std::size_t> &order)
{
  std::vector<ChangeSet> sets{0};
  for (const std::size_t change : order)
    sets.push_back(sets.back() | (1U << change));
  return sets;
}

SampledShares detail::averaged(const std::vector<std::vector<std::optional<double>>> &steps,
                               std::size_t                                            n_changes)
{
  SampledShares                    answer;
  std::vector<std::vector<double>> pairs;
  for (std::size_t k = 0; k < steps.size(); k += 2)
    if (auto mean = of_pair(steps, k); !mean.empty())
      pairs.push_back(std::move(mean));
  for (const auto &order : steps)
    answer.n_orders +=
      std::all_of(order.begin(), order.end(), [](const auto &step) { return step.has_value(); }) ? 1 : 0;
  if (pairs.empty())
    return answer;

  const auto n_pairs = static_cast<double>(pairs.size());
  answer.shares.assign(n_changes, 0);
  answer.standard_errors.assign(n_changes, std::numeric_limits<double>::infinity());
  for (std::size_t i = 0; i < n_changes; ++i)
  {
    for (const auto &pair : pairs)
      answer.shares[i] += pair[i] / n_pairs;
    double squares = 0;
    for (const auto &pair : pairs)
      squares += (pair[i] - answer.shares[i]) * (pair[i] - answer.shares[i]);
    if (pairs.size() > 1)
      answer.standard_errors[i] = std::sqrt(squares / (n_pairs * (n_pairs - 1)));
  }
  return answer;
}
} // namespace solemech::tools
