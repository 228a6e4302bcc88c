// SPDX-License-Identifier: Apache-2.0
// Readings from curves against closed forms.
#include "solver/metrics.h"
#include "tests/support/catch.h"

#include <algorithm>
#include <cmath>

using namespace solemech::solver;

TEST_CASE("loop areas are the work in and out", "[metrics]")
{
  // Up along F = 100 x, back along F = 100 x^2/0.01: 5 mJ in, 3.333 mJ out.
  std::vector<double> way, force;
  for (int i = 0; i <= 1000; ++i)
    way.push_back(0.01 * i / 1000), force.push_back(100 * way.back());
  for (int i = 999; i >= 0; --i)
    way.push_back(0.01 * i / 1000), force.push_back(100 * way.back() * way.back() / 0.01);
  const auto areas = loop_areas(way, force);
  CHECK(areas.loading == Approx(5e-3).epsilon(1e-5)); // trapezoids of a thousand points
  CHECK(areas.unloading == Approx(10e-3 / 3).epsilon(1e-5));
  CHECK(areas.returned() == Approx(2. / 3).epsilon(1e-5));
  CHECK(LoopAreas{}.returned() == 0);
}

TEST_CASE("the smoothed peak is that of a smooth curve, without the ripple on it", "[metrics]")
{
  std::vector<double> t, smooth, rippled;
  for (int i = 0; i <= 400; ++i)
  {
    t.push_back(0.02 * i / 400);
    smooth.push_back(1000 * std::sin(M_PI * t.back() / 0.02));
    rippled.push_back(smooth.back() + 10 * std::sin(2 * M_PI * t.back() / 4e-4));
  }
  // A quartic over a fifth of a half sine is good to 1e-4; of a ripple of one per cent a tenth is left.
  CHECK(smoothed_peak(t, smooth, 2e-3) == Approx(1000).epsilon(1e-4));
  CHECK(smoothed_peak(t, rippled, 2e-3) == Approx(1000).epsilon(1e-3));
  CHECK(smoothed_peak(std::vector<double>{0, 1, 2}, std::vector<double>{1, 5, 2}, 10) == 5);
}
