// SPDX-License-Identifier: Apache-2.0
#include "geometry/tread_pattern.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
double wavy_bar_angle(double swing, double wave_length)
{
  // Slope a k cos(k s): the length of a wave is 2/pi sqrt(1 + a^2 k^2) E(m) of its wave length, m = a^2
  // k^2/(1 + a^2 k^2).
  const double steepest = 2 * std::numbers::pi * swing / wave_length, square = steepest * steepest;
  const double modulus = std::sqrt(square / (1 + square));
  const double longer = 2 / std::numbers::pi * std::sqrt(1 + square) * std::comp_ellint_2(modulus);
  return std::acos(1 / std::max(longer, 1.0)); // rounding must not make a straight bar shorter than itself
}

double pad_stiffness_share(double width, double length, double height)
{
  const double pad = 4. / 3 - 2. / 3 * (width * length + height * height) /
                                (width * width + length * length + 2 * height * height);
  return pad / (4. / 3);
}
} // namespace solemech::geometry
