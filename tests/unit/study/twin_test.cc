// SPDX-License-Identifier: Apache-2.0
// Twin experiments: truths drawn from the prior, readings made from them with noise of the stated doubt. The
// truth must lie in 90 % bands in about 90 of 100 trials, and the answers must not lean to one side.
//
// The model is a drop on a spring with a dashpot, mass m on stiffness k with damping ratio d, in closed form
// (any text on vibrations): contact until the force is gone, approximated by half a damped period; rebound
// height ratio exp(-2 pi d / sqrt(1 - d^2)); greatest force ~ v sqrt(k m) exp(-d asin(sqrt(1 - d^2)) / sqrt(1
// - d^2)).
#include "tests/support/catch.h"
#include "tests/support/twin_trials.h"
#include "tests/unit/study/models.h"

#include <numbers>

using namespace solemech;
using namespace solemech::settle;
using namespace solemech::tests;

namespace
{
std::vector<double> drop(double stiffness, double damping, double mass)
{
  const double speed = 2.8, root = std::sqrt(std::max(1e-6, 1 - damping * damping)),
               omega = std::sqrt(stiffness / mass);
  return {400 * std::exp(-2 * std::numbers::pi * damping / root),
          speed * std::sqrt(stiffness * mass) * std::exp(-damping * std::asin(root) / root),
          1e3 * std::numbers::pi / (omega * root)};
}

/// The three readings of two drops (1.2 kg and 3 kg).
std::vector<double> two_drops(const std::vector<double> &p)
{
  auto       readings = drop(p[0], p[1], 1.2);
  const auto heavy = drop(p[0] * p[2], p[1], 3.0);
  readings.insert(readings.end(), heavy.begin(), heavy.end());
  return readings;
}
} // namespace

TEST_CASE("truth lies in the 90 % band in 85 to 95 of 100 trials, without bias")
{
  TwinBench bench;
  bench.parameters = {{"stiffness", 1.6e5, 0.3, 2e4, 1e6},
                      {"damping", 0.08, 0.35, 0.01, 0.5},
                      {"stiffening", 1.2, 0.15, 0.6, 2.4}};
  bench.doubts = {0.02, 0.05, 0.04, 0.025, 0.05, 0.04};
  bench.relative = true;
  bench.predict = predict_with(two_drops);
  const auto count = twin_trials(bench, 100, 20);
  INFO(count.text());
  for (const double share : {count.parameters_share(), count.sampled_share(), count.predictions_share()})
  {
    CHECK(share >= 0.85);
    CHECK(share <= 0.95);
  }
  CHECK(count.n_disagree <= 18); // 1 % of 600 expected; 3 % would be 3 times too many
  CHECK(count.n_not_converged == 0);
  for (const double lean : count.lean)
    CHECK(std::abs(lean) < 0.25);
}
