// SPDX-License-Identifier: Apache-2.0
// Wavy bars and pads at their limits, and against quadrature and the two shape factors that a handbook gives.
#include "geometry/tread_pattern.h"
#include "tests/support/catch.h"

#include <cmath>
#include <numbers>

using namespace solemech::geometry;

TEST_CASE("a wavy bar without waves is straight, and its angle is that of the mean cosine over its length")
{
  CHECK(wavy_bar_angle(0, 20e-3) == Approx(0).margin(1e-7));
  const double swing = 3e-3, wave = 20e-3, k = 2 * std::numbers::pi / wave;
  double       length = 0;
  const int    n = 20000;
  for (int i = 0; i < n; ++i)
    length += std::hypot(1, swing * k * std::cos(k * wave * (i + 0.5) / n)) * wave / n;
  CHECK(std::cos(wavy_bar_angle(swing, wave)) == Approx(wave / length).epsilon(1e-9));
  CHECK(wavy_bar_angle(4e-3, wave) > wavy_bar_angle(3e-3, wave));
}

TEST_CASE("a very long pad is a bar, a square one that is tall is free on all sides")
{
  // Plane strain against a free block: 4/3 of Young's modulus against one (handbook).
  CHECK(pad_stiffness_share(4e-3, 4, 3e-3) == Approx(1).epsilon(1e-3));
  CHECK(pad_stiffness_share(5e-3, 5e-3, 5e-3) == Approx(0.75));
  CHECK(pad_stiffness_share(4e-3, 8e-3, 3e-3) > pad_stiffness_share(4e-3, 5e-3, 3e-3));
}
