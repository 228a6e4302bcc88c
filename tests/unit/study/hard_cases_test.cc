// SPDX-License-Identifier: Apache-2.0
// Curved models, limits, failed runs, interruptions and inputs that make no sense.
#include "tests/support/catch.h"
#include "tests/unit/study/models.h"

#include <algorithm>
#include <limits>

using namespace solemech;
using namespace solemech::settle;
using namespace solemech::tests;

namespace
{
const std::vector<Parameter> one{{"core modulus", 1, 0.5, 0.2, 5}};
} // namespace

TEST_CASE("bands of a curved model: sampling shows where linear ones are off, and how good its own model is")
{
  // y = 10 p^2 with a poor reading: the posterior of p^2 is skewed. By numerical integration of the posterior
  // density on a fine grid (trapezoid), independent of any sampling.
  const double        value = 20, doubt = 8;
  const auto          answer = settled({{"core modulus", 1, 0.6, 0.01, 100}}, {{"force", value, doubt}},
                                       predict_with([](const auto &p) { return std::vector{10 * p[0] * p[0]}; }));
  std::vector<double> u, density;
  double              sum = 0;
  for (double x = -4; x <= 4; x += 1e-4)
  {
    const double r = (10 * std::exp(2 * x) - value) / doubt;
    u.push_back(x);
    density.push_back(std::exp(-0.5 * (r * r + x * x / 0.36)));
    sum += density.back();
  }
  const auto quantile = [&](double share) {
    double part = 0;
    for (std::size_t i = 0; i < u.size(); ++i)
      if ((part += density[i]) >= share * sum)
        return std::exp(u[i]);
    return 0.0;
  };
  const auto  &p = answer.parameters[0];
  const double half = 0.5 * (quantile(0.95) - quantile(0.05));
  CHECK(p.sampled.low == Approx(quantile(0.05)).margin(0.12 * half));
  CHECK(p.sampled.high == Approx(quantile(0.95)).margin(0.12 * half));
  CHECK(answer.check.linear_error > 0.05);
  CHECK(answer.check.surrogate_error > 0.01);
  CHECK(answer.check.surrogate_error < 1);
  CHECK(answer.check.words.find("sampled cases") != std::string::npos);
}

TEST_CASE("readings that span decades compare by ratio")
{
  // Power law: ln y = ln 3 + 2 u is linear, so the closed form is that of a linear model.
  Observation reading{"depth rate", 300, 30, Meaning::value, false, true};
  const auto  answer = settled({{"wear rate", 1, 1, 1e-3, 1e3}}, {reading},
                               predict_with([](const auto &p) { return std::vector{3 * p[0] * p[0]}; }));
  // precision 2^2 / 0.1^2 + 1, mean = 2 ln(100) / 0.01 / precision
  CHECK(std::log(answer.values[0]) == Approx(200 * std::log(100.) / 401).margin(0.001));
  CHECK(answer.covariance[0][0] == Approx(1 / 401.).epsilon(0.001));
}

TEST_CASE("limits hold, and an answer that leans on one says so")
{
  const auto answer =
    settled(one, {{"force", 100, 1}}, predict_with([](const auto &p) { return std::vector{10 * p[0]}; }));
  CHECK(answer.values[0] == Approx(5).epsilon(1e-9));
  CHECK(answer.parameters[0].at_limit);
  CHECK(answer.parameters[0].band.high <= 5 * (1 + 1e-12));
  CHECK(answer.parameters[0].sampled.high <= 5 * (1 + 1e-12));
  CHECK(std::any_of(answer.remarks.begin(), answer.remarks.end(),
                    [](const auto &r) { return r.find("pulled to its limit") != r.npos; }));
}

TEST_CASE("runs that fail are stepped around")
{
  SECTION("where the fit would go")
  {
    const auto model = predict_with(
      [](const auto &p) { return p[0] > 2.05 ? std::vector<double>{} : std::vector{10 * p[0]}; });
    const auto answer = settled(one, {{"force", 20, 0.5}}, model);
    CHECK(answer.values[0] == Approx(2).epsilon(0.01));
  }
  SECTION("everywhere: a clear message")
  {
    CHECK_THROWS_AS(
      settled(one, {{"force", 20, 0.5}}, predict_with([](const auto &) { return std::vector<double>{}; })),
      PredictionFailed);
  }
  SECTION("predictions that are no numbers count as failed")
  {
    const auto model = predict_with([](const auto &p) {
      return std::vector{p[0] > 1.2 ? std::numeric_limits<double>::quiet_NaN() : 10 * p[0]};
    });
    CHECK(settled(one, {{"force", 11, 0.5}}, model).values[0] == Approx(1.1).epsilon(0.02));
  }
  SECTION("another number of predictions than of readings is a fault of the caller")
  {
    CHECK_THROWS_AS(settled(one, {{"force", 20, 0.5}}, predict_with([](const auto &) {
                              return std::vector{1., 2.};
                            })),
                    PredictionFailed);
  }
}

TEST_CASE("what the caller throws comes through")
{
  struct Fault
  {
  };
  int        calls = 0;
  const auto later = [&](const std::vector<std::vector<double>> &sets) -> std::vector<std::vector<double>> {
    if (++calls == 3)
      throw Fault();
    std::vector<std::vector<double>> rows;
    for (const auto &set : sets)
      rows.push_back({10 * set[0]});
    return rows;
  };
  CHECK_THROWS_AS(settled(one, {{"force", 20, 0.5}}, later), Fault);
}

TEST_CASE("everything that makes no sense is named at once, before any run")
{
  const double nan = std::numeric_limits<double>::quiet_NaN();
  try
  {
    check_inputs({{"m", 0, 0.5, 0.1, 1}, {"n", 1, 0, 2, 1}},
                 {{"a", 5, 0}, {"b", 5, 6}, {"c", nan, 1}, {"d", -5, 1, Meaning::value, false, true}});
    FAIL("nothing was refused");
  }
  catch (const ImpossibleInput &error)
  {
    CHECK(error.problems.size() == 7);
    const std::string all = error.what();
    for (const char *part : {"m: the assumed value", "n: the assumed spread", "n: the limits",
                             "a: an uncertainty of 0", "b: ±9.869 is larger than the reading 5",
                             "c: the reading is not a number", "d: a reading compared by ratio"})
      CHECK(all.find(part) != std::string::npos);
  }
  CHECK_NOTHROW(check_inputs(one, {{"a", 5, 1, Meaning::value, true}}, true)); // a prediction needs none
  CHECK_THROWS_AS(check_inputs(one, {{"a", 5, 1, Meaning::value, true}}), ImpossibleInput);
  CHECK_THROWS_AS(check_inputs({}, {{"a", 5, 1}}), ImpossibleInput);
}

TEST_CASE("each parameter set is asked for once, in batches, and equal inputs give equal answers")
{
  std::vector<std::vector<double>> seen;
  std::size_t                      n_batches = 0;
  const auto                       counting = [&](const std::vector<std::vector<double>> &sets) {
    ++n_batches;
    std::vector<std::vector<double>> rows;
    for (const auto &set : sets)
    {
      seen.push_back(set);
      rows.push_back({10 * set[0], 5 * set[0] * set[1], 3 / set[1]});
    }
    return rows;
  };
  const std::vector<Parameter>   two{{"m", 1, 0.5, 0.05, 20}, {"n", 1, 0.5, 0.05, 20}};
  const std::vector<Observation> readings{{"a", 15, 0.5}, {"b", 6, 0.3}, {"c", 3.6, 0.2}};
  const auto                     first = settled(two, readings, counting);
  CHECK(first.n_evaluations == int(seen.size()));
  CHECK(n_batches < seen.size());
  CHECK(first.n_evaluations <= 5 * 3 + 4 + 4 + 1); // steps, axes, check runs, the last confirmation
  auto unique = seen;
  std::sort(unique.begin(), unique.end());
  CHECK(std::adjacent_find(unique.begin(), unique.end()) == unique.end());
  const auto again = settled(two, readings, counting);
  CHECK(first.values == again.values);
  CHECK(first.covariance == again.covariance);
  CHECK(first.parameters[0].sampled.low == again.parameters[0].sampled.low);
}
