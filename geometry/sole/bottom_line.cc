// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/bottom_line.h"

#include "geometry/errors.h"

#include "numerics/rising_root.h"

#include <cmath>
#include <numbers>

namespace solemech::geometry
{
double BottomLine::greatest_radius(double run, double rise)
{
  return (run * run + rise * rise) / (2 * rise);
}

BottomLine::Rise BottomLine::rise(double start, double run, double height, double radius)
{
  if (height == 0)
    return {start, 0, 0};
  if (!(run > 0) || !(height > 0) || height > run)
    throw InvalidGeometry("rise of the bottom line", height,
                          "0 up to the distance from its start to the end of the sole, " + in_mm(run));
  const double greatest = greatest_radius(run, height);
  if (radius == 0)
    radius = greatest;
  if (!(radius > 0) || radius > greatest * (1 + 1e-12))
    throw InvalidGeometry("rocker radius", radius,
                          "more than 0, at most " + in_mm(greatest) + " to reach the rise at the tip");
  // Height that the straight piece reaches at the end, over the angle at which the arc is left.
  const auto reached = [&](double angle) {
    return radius * (1 - std::cos(angle)) + (run - radius * std::sin(angle)) * std::tan(angle) - height;
  };
  const double whole = std::asin(std::min(1.0, run / radius));
  return {start, radius, numerics::rising_root(reached, 0.0, std::min(whole, 0.499 * std::numbers::pi))};
}

double BottomLine::Rise::lift(double run) const
{
  if (run <= 0 || radius == 0)
    return 0;
  const double end = radius * std::sin(turned);
  if (run > end)
    return radius * (1 - std::cos(turned)) + (run - end) * std::tan(turned);
  return run * run / (radius + std::sqrt(radius * radius - run * run));
}

double BottomLine::Rise::slope(double run) const
{
  if (run <= 0 || radius == 0)
    return 0;
  return run > radius * std::sin(turned) ? std::tan(turned) : run / std::sqrt(radius * radius - run * run);
}

BottomLine::BottomLine(double length, const BottomShape &shape)
  : heel_(rise(shape.heel_bevel_start, shape.heel_bevel_start, shape.heel_bevel_rise, 0)),
    toe_(rise(shape.toe_spring_start, length - shape.toe_spring_start, shape.toe_spring_rise,
              shape.rocker_radius))
{
}

double BottomLine::lift(double x) const
{
  return heel_.lift(heel_.start - x) + toe_.lift(x - toe_.start);
}

double BottomLine::slope(double x) const
{
  return toe_.slope(x - toe_.start) - heel_.slope(heel_.start - x);
}

std::array<double, 2> BottomLine::placed(double x, double z) const
{
  const double s = slope(x), stretch = std::hypot(1, s);
  return {x - z * s / stretch, lift(x) + z / stretch};
}
} // namespace solemech::geometry
