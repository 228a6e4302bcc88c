// SPDX-License-Identifier: Apache-2.0
// Verdicts, wild readings, contradictions, held-out readings and what stays open.
#include "tests/support/catch.h"
#include "tests/unit/study/models.h"

using namespace solemech;
using namespace solemech::settle;
using namespace solemech::tests;

namespace
{
const std::vector<Parameter> stiffness{{"core modulus", 1, 0.5, 0.05, 20}};

/// Every reading sees the same parameter: y = 10 + 4 ln p.
Predict same_sight(std::size_t n)
{
  return linear_model(std::vector(n, std::vector{4.0}), std::vector(n, 10.0));
}
} // namespace

TEST_CASE("one wild reading among good ones loses its pull and is named")
{
  const std::vector<Observation> readings{
    {"a", 11.0, 0.2}, {"b", 10.9, 0.2}, {"c", 11.1, 0.2}, {"d", 11.05, 0.2}, {"wild", 14, 0.2}};
  const auto answer = settled(stiffness, readings, same_sight(5));
  // Without it: weighted mean with the prior (mean 10, deviation 2), in closed form.
  const double precision = 4 / 0.04 + 1 / 4.0;
  const double mean = (44.05 / 0.04 + 10 / 4.0) / precision;
  CHECK(answer.predictions[0] == Approx(mean).margin(0.5 / std::sqrt(precision)));
  CHECK(answer.observations[4].weight < 0.05);
  CHECK(answer.observations[4].verdict == Verdict::disagree);
  CHECK(answer.observations[4].contradicts == std::vector<std::size_t>{0, 1, 2, 3});
  for (int i = 0; i < 4; ++i)
  {
    CHECK(answer.observations[i].weight == 1);
    CHECK(answer.observations[i].verdict == Verdict::agree);
  }
}

TEST_CASE("two readings that cannot both hold are named as a pair, and consistent ones are not")
{
  // Two parameters; the third reading sees only the second, and agrees.
  const std::vector<Parameter>   two{{"core modulus", 1, 0.5, 0.05, 20}, {"core loss", 1, 0.5, 0.05, 20}};
  const auto                     model = linear_model({{4, 0}, {4, 0}, {0, 3}}, {10, 10, 5});
  const std::vector<Observation> readings{{"press", 9, 0.2}, {"gauge", 12, 0.2}, {"rebound", 5.5, 0.2}};
  const auto                     answer = settled(two, readings, model);
  REQUIRE(answer.observations[0].contradicts.size() == 1);
  CHECK(answer.observations[0].contradicts[0] == 1);
  CHECK(answer.observations[1].contradicts == std::vector<std::size_t>{0});
  CHECK(answer.observations[2].contradicts.empty());
  CHECK(answer.observations[2].verdict != Verdict::disagree);
  CHECK_FALSE(answer.observations[0].beyond_assumptions);
  CHECK(std::any_of(answer.remarks.begin(), answer.remarks.end(),
                    [](const auto &r) { return r.find("press and gauge cannot both be right") != r.npos; }));

  const auto good = settled(two, {{"press", 10.9, 0.2}, {"gauge", 11.1, 0.2}, {"rebound", 5.5, 0.2}}, model);
  for (const auto &o : good.observations)
    CHECK(o.contradicts.empty());
  CHECK(good.observations[0].verdict == Verdict::agree);
}

TEST_CASE("a reading that no likely value reaches is named with the reason")
{
  const auto answer = settled({{"core modulus", 1, 0.05, 0.5, 2}}, {{"rebound", 14, 0.2}}, same_sight(1));
  CHECK(answer.observations[0].beyond_assumptions);
  REQUIRE_FALSE(answer.remarks.empty());
  CHECK(answer.remarks[0].find("rebound: no likely value of the unknowns gives 14") == 0);
}

TEST_CASE("a held-out reading never moves the answer and is judged against it")
{
  std::vector<Observation> readings{{"a", 11, 0.2}, {"kept back", 11.1, 0.2, Meaning::value, true}};
  const auto               with = settled(stiffness, readings, same_sight(2));
  readings[1].value = 15;
  const auto other = settled(stiffness, readings, same_sight(2));
  CHECK(with.values == other.values);
  CHECK(with.covariance == other.covariance);
  CHECK(with.misfit == other.misfit);
  CHECK(with.observations[1].verdict == Verdict::agree);
  CHECK(other.observations[1].verdict == Verdict::disagree);
  const auto alone = settled(stiffness, {readings[0]}, same_sight(1));
  CHECK(with.values == alone.values);
}

TEST_CASE("a reading that nothing else can check gets no verdict")
{
  // Nothing else and a wide prior: everything else says 10 +- 33 at 90 %.
  const auto answer = settled({{"core modulus", 1, 5, 1e-6, 1e6}}, {{"only one", 11, 0.2}}, same_sight(1));
  CHECK(answer.observations[0].verdict == Verdict::cannot_tell);
  CHECK(answer.predictions[0] == Approx(11).margin(0.01));
  CHECK(answer.parameters[0].settled);
}

TEST_CASE("an at-least reading pulls only from below")
{
  const auto at_least = [](double value) {
    return std::vector<Observation>{{"a", 11, 0.2}, {"wore through", value, 0.2, Meaning::at_least}};
  };
  const auto without = settled(stiffness, {at_least(9)[0]}, same_sight(1));
  const auto holds = settled(stiffness, at_least(9), same_sight(2));
  CHECK(holds.values[0] == Approx(without.values[0]).epsilon(1e-9));
  CHECK(holds.observations[1].verdict == Verdict::agree);
  CHECK(holds.observations[1].misfit == 0);
  // Not reached: like a reading of that value, in closed form.
  const auto   pulls = settled(stiffness, at_least(11.4), same_sight(2));
  const double precision = 2 / 0.04 + 1 / 4.0;
  CHECK(pulls.predictions[0] ==
        Approx((22.4 / 0.04 + 10 / 4.0) / precision).margin(0.015 / std::sqrt(precision)));
}

TEST_CASE("what the readings cannot separate is said as a mixture, and what none sees by itself")
{
  // Only the sum of the first two is seen; the third not at all.
  const std::vector<Parameter> three{{"core modulus", 1, 0.4, 0.01, 100},
                                     {"core loss", 1, 0.4, 0.01, 100},
                                     {"rubber modulus", 1, 0.4, 0.01, 100}};
  const auto                   answer =
    settled(three, {{"a", 11, 0.05}, {"b", 11, 0.05}}, linear_model({{4, 4, 0}, {4, 4, 0}}, {10, 10}));
  REQUIRE(answer.open.size() == 2);
  CHECK(answer.open[0].words == "No reading says anything about rubber modulus.");
  CHECK(answer.open[1].parts.size() == 2);
  CHECK(answer.open[1].parts[0].weight * answer.open[1].parts[1].weight == Approx(-1).epsilon(1e-6));
  CHECK(answer.open[1].doubt_left == Approx(1).epsilon(1e-6));
  CHECK(answer.open[1].words.find("cannot separate") != std::string::npos);
  // Of each alone half the variance is left: the known sum, the open difference.
  CHECK(answer.parameters[0].doubt_left == Approx(std::sqrt(0.5)).epsilon(0.001));
  CHECK(answer.correlation[0][1] == Approx(-1).epsilon(0.001));
}
