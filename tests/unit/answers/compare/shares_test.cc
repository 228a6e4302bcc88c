// SPDX-License-Identifier: Apache-2.0
// Shares against functions whose shares are known. Axioms (sum, nothing for a change that does nothing, equal
// for equals, additive): L. S. Shapley, A value for n-person games, 1953. Interaction index: M. Grabisch and
// M. Roubens, Int. J. Game Theory 28 (1999) 547: for a sum of products over sets (a function in its Moebius
// form m), the share of i is the sum of m(T)/|T| over T with i, the interaction of i and j the sum of
// m(T)/(|T| - 1) over T with both.
#include "tests/support/catch.h"
#include "tools/answers/compare/shares.h"

#include <bit>
#include <cmath>
#include <numeric>
#include <random>

using namespace solemech::tools;

namespace
{
constexpr double rounding = 1e-12; // relative, of sums of some hundred terms

/// Values from a Moebius form: v(S) is the sum of m(T) over the subsets T of S.
std::vector<double> values_from(const std::vector<double> &moebius)
{
  std::vector<double> values(moebius.size(), 0);
  for (ChangeSet set = 0; set < values.size(); ++set)
    for (ChangeSet part = 0; part < moebius.size(); ++part)
      if ((part & set) == part)
        values[set] += moebius[part];
  return values;
}

std::vector<double> random_moebius(std::size_t n_changes, unsigned seed)
{
  std::mt19937                     random(seed);
  std::normal_distribution<double> normal(0, 1);
  std::vector<double>              moebius(std::size_t{1} << n_changes);
  for (double &value : moebius)
    value = normal(random);
  return moebius;
}

double sum(const std::vector<double> &values)
{
  return std::accumulate(values.begin(), values.end(), 0.0);
}
} // namespace

TEST_CASE("shares and interactions of random functions are those of their Moebius form")
{
  for (std::size_t n = 1; n <= most_exact_changes; ++n)
  {
    const auto moebius = random_moebius(n, static_cast<unsigned>(n));
    const auto values = values_from(moebius);
    const auto shares = shares_over_all_orders(values);
    REQUIRE(shares);
    for (std::size_t i = 0; i < n; ++i)
    {
      double expected = 0;
      for (ChangeSet part = 1; part < moebius.size(); ++part)
        if (part >> i & 1)
          expected += moebius[part] / std::popcount(part);
      CHECK((*shares)[i] == Approx(expected).epsilon(rounding).margin(rounding));
      for (std::size_t j = 0; j < i; ++j)
      {
        double together = 0;
        for (ChangeSet part = 1; part < moebius.size(); ++part)
          if (part >> i & part >> j & 1)
            together += moebius[part] / (std::popcount(part) - 1);
        CHECK(*interaction(values, i, j) == Approx(together).epsilon(rounding).margin(rounding));
        CHECK(*interaction(values, i, j) == Approx(*interaction(values, j, i)).epsilon(rounding));
      }
    }
    // The wish of the tool: shares add up to the difference to 1e-9.
    CHECK(sum(*shares) == Approx(values.back() - values.front()).epsilon(1e-9));
    CHECK(share_of_possible_orders(values) == Approx(1).epsilon(rounding));
  }
}

TEST_CASE("a change that does nothing gets nothing, and equals get the same")
{
  // Three changes: the first doubles, the second doubles, the third does nothing.
  std::vector<double> values(8);
  for (ChangeSet set = 0; set < 8; ++set)
    values[set] = std::pow(2.0, std::popcount(set & 3U));
  const auto shares = shares_over_all_orders(values);
  REQUIRE(shares);
  CHECK((*shares)[2] == 0);
  CHECK((*shares)[0] == (*shares)[1]);
  CHECK((*shares)[0] == Approx(1.5).epsilon(rounding)); // 4 - 1 = 3, half each
  CHECK(*interaction(values, 0, 2) == 0);
  CHECK(*interaction(values, 0, 1) == Approx(1).epsilon(rounding)); // 4 - 2 - 2 + 1
}

TEST_CASE("going back from B to A turns every share round and keeps the interactions")
{
  const auto          values = values_from(random_moebius(5, 3));
  std::vector<double> back(values.rbegin(), values.rend());
  const auto          shares = *shares_over_all_orders(values), turned = *shares_over_all_orders(back);
  for (std::size_t i = 0; i < shares.size(); ++i)
    CHECK(turned[i] == Approx(-shares[i]).epsilon(rounding));
  CHECK(*interaction(back, 1, 3) == Approx(*interaction(values, 1, 3)).epsilon(rounding));
}

TEST_CASE("orders through a set without value are left out; the rest still adds up")
{
  // Gloves: one left, two right; only orders in which the left one does not come first.
  std::vector<double> values{0, no_value, 0, 1, 0, 1, 0, 1};
  const auto          shares = shares_over_all_orders(values);
  REQUIRE(shares);
  // Orders left: b a c, b c a, c a b, c b a. The left glove a comes second twice and last twice: 1 each time.
  CHECK(share_of_possible_orders(values) == Approx(4.0 / 6).epsilon(rounding));
  CHECK((*shares)[0] == Approx(1).epsilon(rounding));
  CHECK((*shares)[1] == Approx(0).margin(rounding));
  CHECK((*shares)[2] == Approx(0).margin(rounding));

  auto many = values_from(random_moebius(6, 11));
  many[5] = many[17] = many[62] = no_value;
  CHECK(sum(*shares_over_all_orders(many)) == Approx(many.back() - many.front()).epsilon(1e-9));

  // No way from A to B: no answer instead of a wrong one.
  values = {0, no_value, no_value, 1};
  CHECK_FALSE(shares_over_all_orders(values));
  CHECK(share_of_possible_orders(values) == 0);
  CHECK_FALSE(interaction(values, 0, 1));
}

TEST_CASE("sampled orders come close to the exact shares, as close as their errors say")
{
  constexpr std::size_t n = 7, n_pairs = 200;
  const auto            values = values_from(random_moebius(n, 5));
  const auto            exact = *shares_over_all_orders(values);
  const auto            orders = sampled_orders(n, n_pairs);
  const auto            sampled = shares_over_orders(orders, [&](ChangeSet set) { return values[set]; });
  CHECK(orders == sampled_orders(n, n_pairs));
  CHECK(sampled.n_orders == 2 * n_pairs);
  CHECK(sum(sampled.shares) == Approx(values.back() - values.front()).epsilon(1e-9));
  double squares = 0;
  for (std::size_t i = 0; i < n; ++i)
  {
    const double off = (sampled.shares[i] - exact[i]) / sampled.standard_errors[i];
    CHECK(std::abs(off) < 4); // normal scatter: beyond 4 standard errors once in 16000
    squares += off * off;
  }
  CHECK(squares / n < 2.7); // chi-square of 7 over 7: beyond once in 120
}

TEST_CASE("a sampled order through a set without value is left out")
{
  const auto value = [](ChangeSet set) { return set == 1 ? no_value : std::popcount(set) * 2.0; };
  const auto sampled = shares_over_orders({{0, 1, 2}, {2, 1, 0}, {1, 0, 2}, {2, 0, 1}}, value);
  CHECK(sampled.n_orders == 3);
  for (const double share : sampled.shares)
    CHECK(share == Approx(2).epsilon(rounding));
  CHECK(shares_over_orders({{0, 1}, {1, 0}}, [](ChangeSet set) {
          return set == 3 ? 1 : no_value;
        }).shares.empty());
}

TEST_CASE("mixtures near both ends give the shares of anything without dependences of five changes at once")
{
  for (const std::size_t n_changes : {6U, 7U, 8U, 10U})
  {
    auto moebius = random_moebius(n_changes, 11);
    for (ChangeSet set = 0; set < moebius.size(); ++set)
      if (std::popcount(set) > 4)
        moebius[set] = 0;
    const auto exact = *shares_over_all_orders(values_from(moebius));
    auto       values = values_from(moebius);
    for (ChangeSet set = 0; set < values.size(); ++set)
      if (!is_near_end(set, n_changes))
        values[set] = no_value;
    const auto near = shares_near_ends(values);
    REQUIRE(near.shares.size() == n_changes);
    CHECK(near.spread < 1e3 * rounding);
    for (std::size_t i = 0; i < n_changes; ++i)
      CHECK(near.shares[i] == Approx(exact[i]).margin(1e4 * rounding));
  }
}

TEST_CASE("shares from few mixtures add up whatever depends on what, and a missing one is made up for")
{
  const std::size_t n_changes = 7;
  auto              values = values_from(random_moebius(n_changes, 12));
  values[3] = no_value;
  const auto near = shares_near_ends(values);
  REQUIRE(near.shares.size() == n_changes);
  CHECK(near.spread > 0.01);
  CHECK(std::accumulate(near.shares.begin(), near.shares.end(), 0.0) ==
        Approx(values.back() - values.front()).epsilon(1e3 * rounding));
  values[1] = no_value;
  CHECK(shares_near_ends(values).shares.empty());
}
