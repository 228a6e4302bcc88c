// SPDX-License-Identifier: Apache-2.0
// Bands from doubts, with solvers whose answers are formulas: against the closed form of a product of powers,
// against sampling of a formula that curves, and when runs fail.
#include "tests/support/catch.h"
#include "tools/study/job.h"

#include <algorithm>
#include <cmath>
#include <random>
#include <stdexcept>

using namespace solemech;
using namespace solemech::tools;
using solver::DoubtedNumber;

namespace
{
constexpr double half_band = 1.6448536269514722; // standard deviations, normal table

solver::Case stack()
{
  solver::Case setup;
  for (const char *name : {"core", "carrier"})
  {
    solver::Layer layer;
    layer.name = name;
    layer.thickness = 0.02;
    setup.layers.push_back(layer);
  }
  setup.doubts = {{DoubtedNumber::thickness, "core", 0.03, {}},
                  {DoubtedNumber::thickness, "carrier", 0.05, {0.5}}};
  return setup;
}

Solve formula(double (*value)(double, double))
{
  return [value](const solver::Case &setup, const SolveWish &, const RunProgress &) {
    solver::Result result;
    result.readings.push_back(
      {"reading", value(setup.layers[0].thickness, setup.layers[1].thickness), "m", "", 0});
    return result;
  };
}

solver::Result run(const Solve &solve, const solver::Case &setup, SolveWish wish = {})
{
  const std::atomic<bool> never{false};
  return Job(solve, {}, {}, never).run_alone({setup, wish});
}
} // namespace

TEST_CASE("the band of a sum is that of the covariance: variance = g C g (Gauss)")
{
  const auto   result = run(formula([](double a, double b) { return a + 2 * b; }), stack());
  const double g[] = {0.02 * 0.03, 2 * 0.02 * 0.05};
  const double variance = g[0] * g[0] + g[1] * g[1] + 2 * 0.5 * g[0] * g[1];
  CHECK(result.readings[0].doubt() == Approx(half_band * std::sqrt(variance)).epsilon(2e-3));
  CHECK(result.readings[0].value == Approx(0.06));
}

TEST_CASE("linear bands hold nine of ten samples of a reading that curves")
{
  const auto                 value = [](double a, double b) { return 1 / (a * a) + 30 * std::sqrt(a * b); };
  const auto                 reading = run(formula(value), stack()).readings[0];
  std::mt19937_64            random(3);
  std::normal_distribution<> normal;
  int                        inside = 0;
  constexpr int              n = 20000;
  for (int i = 0; i < n; ++i)
  {
    const double x = normal(random), y = 0.5 * x + std::sqrt(0.75) * normal(random);
    inside += std::abs(value(0.02 * std::exp(0.03 * x), 0.02 * std::exp(0.05 * y)) - reading.value) <=
              reading.doubt();
  }
  // Sampling scatter of 20000 is 0.2 points; the rest is left to the curvature.
  CHECK(static_cast<double>(inside) / n == Approx(0.9).margin(0.01));
}

TEST_CASE("what both share drops out of a difference")
{
  const auto a = run(formula([](double x, double y) { return x + y; }), stack()).readings[0];
  const auto b = run(formula([](double x, double y) { return x + y + 1; }), stack()).readings[0];
  CHECK(solver::doubt_of_difference(a, b) < 1e-12);
  CHECK(a.doubt() > 0);
}

TEST_CASE("no band without doubts, none without a wish for errors, and none when an end cannot be run")
{
  const auto sum = formula([](double a, double b) { return a + b; });
  auto       plain = stack();
  plain.doubts.clear();
  CHECK(run(sum, plain).readings[0].doubt() < 0);
  CHECK(run(sum, stack(), {.pictures = false, .estimate_error = false}).readings[0].doubt() < 0);

  const Solve refusing = [&](const solver::Case &setup, const SolveWish &wish, const RunProgress &progress) {
    if (setup.layers[0].thickness > 0.0203)
      throw std::invalid_argument("too thick");
    return sum(setup, wish, progress);
  };
  const auto refused = run(refusing, stack());
  CHECK(refused.complete);
  CHECK(refused.readings[0].doubt() < 0);
  REQUIRE(refused.warnings.size() == 1);
  CHECK(refused.warnings[0].text.find("too thick") != std::string::npos);
}
