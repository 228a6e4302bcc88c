// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/plan_figure.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
constexpr double pi = std::numbers::pi;

double corner_of(const PlanFigure &figure)
{
  return figure.form == PlanFigure::Form::box ? std::min({figure.corner, figure.length / 2, figure.width / 2})
                                              : 0;
}
} // namespace

bool covers(const PlanFigure &figure, const PlanPoint &point)
{
  const double dx = point[0] - figure.x, dy = point[1] - figure.y;
  const double c = std::cos(figure.turned), s = std::sin(figure.turned);
  const double along = std::abs(c * dx + s * dy), across = std::abs(c * dy - s * dx);
  if (figure.form == PlanFigure::Form::ellipse)
    return std::hypot(2 * along / figure.length, 2 * across / figure.width) <= 1;
  const double r = corner_of(figure);
  const double over_x = along - (figure.length / 2 - r), over_y = across - (figure.width / 2 - r);
  return std::hypot(std::max(over_x, 0.0), std::max(over_y, 0.0)) <= r;
}

double area(const PlanFigure &figure)
{
  if (figure.form == PlanFigure::Form::ellipse)
    return pi / 4 * figure.length * figure.width;
  const double r = corner_of(figure);
  return figure.length * figure.width - (4 - pi) * r * r;
}

std::vector<PlanPoint> points_round(const PlanFigure &figure, unsigned n)
{
  std::vector<PlanPoint> points;
  const double           r = corner_of(figure), c = std::cos(figure.turned), s = std::sin(figure.turned);
  for (unsigned i = 0; i < n; ++i)
  {
    const double angle = 2 * pi * (i + 0.5) / n;
    double       along = figure.length / 2 * std::cos(angle), across = figure.width / 2 * std::sin(angle);
    if (figure.form == PlanFigure::Form::box)
    {
      along = std::copysign(figure.length / 2 - r, std::cos(angle)) + r * std::cos(angle);
      across = std::copysign(figure.width / 2 - r, std::sin(angle)) + r * std::sin(angle);
    }
    points.push_back({figure.x + c * along - s * across, figure.y + s * along + c * across});
  }
  return points;
}
} // namespace solemech::geometry
