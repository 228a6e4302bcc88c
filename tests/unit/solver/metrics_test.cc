// SPDX-License-Identifier: Apache-2.0
// Readings from curves against closed forms.
#include "solver/results/metrics.h"
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

TEST_CASE("a motion turns where its cubic turns", "[metrics]")
{
  // x = -sin(w t) over a step that holds its crest at a quarter period. The cubic misses the place by at most
  // (w dt)^4/384 = 3e-7 (remainder of Hermite's formula), the time by some tens of that.
  constexpr double w = 100, begin = 0.0152, dt = 1e-3, crest = M_PI / 2 / w;
  const auto       x = [](double t) { return -std::sin(w * t); };
  const auto       v = [](double t) { return -w * std::cos(w * t); };
  const auto       found = crest_between(x(begin), v(begin), x(begin + dt), v(begin + dt), dt);
  CHECK(begin + found.share * dt == Approx(crest).epsilon(1e-5));
  CHECK(found.place == Approx(-1).epsilon(3e-7));
  // A parabola is met exactly, both ways round; and so is the turn at an end of the step.
  for (const double sign : {1.0, -1.0})
  {
    const auto parabola = crest_between(-sign * 3, sign * 2, -sign * 3, -sign * 2, 1);
    CHECK(parabola.share == Approx(0.5).epsilon(1e-12));
    CHECK(parabola.place == Approx(-sign * 2.5).epsilon(1e-12));
  }
  CHECK(crest_between(-1, -2, -2, 0, 1).share == Approx(1).epsilon(1e-12));
}

TEST_CASE("the peak of a smooth curve lies between its samples", "[metrics]")
{
  const std::vector<double> t{0, 1, 1.5, 3};
  const auto                parabola = [](double time) { return 2 - 0.25 * (time - 1.7) * (time - 1.7); };
  std::vector<double>       samples;
  for (const double time : t)
    samples.push_back(parabola(time));
  const auto peak = peak_of(t, samples);
  CHECK(peak.at == Approx(1.7).epsilon(1e-12));
  CHECK(peak.value == Approx(2).epsilon(1e-12));
  // At an end of the curve the sample counts.
  CHECK(peak_of(t, std::vector<double>{1, 2, 3, 4}).value == 4);
  CHECK(peak_of(t, std::vector<double>{4, 3, 2, 1}).at == 0);
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
