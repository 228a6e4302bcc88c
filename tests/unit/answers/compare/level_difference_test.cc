// SPDX-License-Identifier: Apache-2.0
// The difference of two levels of mesh and step from few mixtures, against differences whose shares are
// known: of a function in its Moebius form m, the share of i is the sum of m(T)/|T| over the sets T with i
// (L. S. Shapley, A value for n-person games, 1953).
#include "tests/support/catch.h"
#include "tools/answers/compare/level_difference.h"

#include <cmath>
#include <random>

using namespace solemech::tools;

namespace
{
constexpr double rounding = 1e-12; // relative, of sums of some hundred terms

struct Known
{
  std::vector<double> values, shares;
};

/// A function without dependences of more than `most_together` changes.
Known known(std::size_t n_changes, int most_together, unsigned seed)
{
  std::mt19937                     random(seed);
  std::normal_distribution<double> normal(0, 1);
  Known                            answer;
  answer.values.assign(std::size_t{1} << n_changes, 0);
  answer.shares.assign(n_changes, 0);
  for (ChangeSet part = 0; part < answer.values.size(); ++part)
  {
    const int n_together = std::popcount(part);
    if (n_together > most_together)
      continue;
    const double together = normal(random);
    for (ChangeSet set = 0; set < answer.values.size(); ++set)
      if ((part & set) == part)
        answer.values[set] += together;
    for (std::size_t i = 0; i < n_changes; ++i)
      if (part >> i & 1)
        answer.shares[i] += together / n_together;
  }
  return answer;
}

/// The function with all that its level difference does not need taken from it.
std::vector<double> completed(const Known &exact, std::size_t n_changes, const LevelDifference &difference)
{
  auto values = exact.values;
  for (ChangeSet set = 0; set < values.size(); ++set)
    if (!tells_levels(set, n_changes))
      values[set] = difference.at(set);
  return values;
}
} // namespace

TEST_CASE("shares of a difference without dependences of three changes need few mixtures")
{
  for (const std::size_t n_changes : {4U, 5U, 6U, 7U})
    for (const unsigned seed : {1U, 2U, 3U})
    {
      const auto            exact = known(n_changes, 2, seed);
      const LevelDifference difference(n_changes, [&](ChangeSet set) {
        REQUIRE(tells_levels(set, n_changes));
        return exact.values[set];
      });
      CHECK(std::abs(difference.left_over()) < 100 * rounding);
      const auto shares = shares_over_all_orders(completed(exact, n_changes, difference));
      REQUIRE(shares);
      for (std::size_t i = 0; i < n_changes; ++i)
        CHECK((*shares)[i] == Approx(exact.shares[i]).margin(100 * rounding));
    }
}

TEST_CASE("whatever a difference depends on, where it was run it is met, and its shares add up")
{
  const std::size_t     n_changes = 6;
  const auto            exact = known(n_changes, 6, 4);
  const LevelDifference difference(n_changes, [&](ChangeSet set) { return exact.values[set]; });
  CHECK(std::abs(difference.left_over()) > 0.01);
  for (ChangeSet set = 0; set < exact.values.size(); ++set)
    if (tells_levels(set, n_changes))
      CHECK(difference.at(set) == Approx(exact.values[set]).margin(100 * rounding));
  const auto shares = shares_over_all_orders(completed(exact, n_changes, difference));
  REQUIRE(shares);
  double sum = 0;
  for (const double share : *shares)
    sum += share;
  CHECK(sum == Approx(exact.values.back() - exact.values.front()).margin(100 * rounding));
}
