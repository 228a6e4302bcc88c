// SPDX-License-Identifier: Apache-2.0
// Outlines for tests of meshes, of no real shoe: an ellipse, and soles of all sizes by chance.
#pragma once

#include "geometry/sole_mesh/plan_mesh.h"

#include <cmath>
#include <numbers>
#include <random>

namespace solemech::tests
{
inline geometry::ClosedCurve ellipse(double half_length, double half_width)
{
  return [=](double place) -> geometry::PlanPoint {
    const double angle = 2 * std::numbers::pi * place;
    return {half_length * std::cos(angle), half_width * std::sin(angle)};
  };
}

inline geometry::ClosedCurve closed(const geometry::Outline &outline)
{
  return [outline](double place) { return outline.at(2 * std::numbers::pi * place); };
}

struct DrawnSole
{
  double                length;
  geometry::ClosedCurve outline, mirrored;
};

/// Long and short, slim and wide, right and left.
inline DrawnSole drawn_sole(std::mt19937 &random)
{
  const auto between = [&](double low, double high) {
    return std::uniform_real_distribution<double>(low, high)(random);
  };
  const double         length = between(0.20, 0.34), width = between(0.85, 1.2) * length / 0.29;
  geometry::HalfWidths widths{.medial = {0.024, 0.032, 0.024, 0.032, 0.045, 0.046, 0.030},
                              .lateral = {0.026, 0.034, 0.038, 0.042, 0.050, 0.048, 0.028}};
  for (auto *side : {&widths.medial, &widths.lateral})
    for (double &value : *side)
      value *= width * between(0.9, 1.1);
  return {length, closed({length, widths}), closed({length, {widths.lateral, widths.medial}})};
}
} // namespace solemech::tests
