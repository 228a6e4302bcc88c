// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/outline.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
constexpr double pi = std::numbers::pi;
constexpr int    n_samples = 4000; // round the curve, for areas and crossings

double phi_at(double x, double length)
{
  return std::acos(std::clamp(1 - 2 * x / length, -1.0, 1.0));
}

/// Signed half widths round the sole: heel, lateral side, toe tip, medial side.
PeriodicCubic round_the_sole(double length, const std::vector<PlanPoint> &lateral,
                             const std::vector<PlanPoint> &medial)
{
  std::vector<double> phi{0}, y{0};
  for (const auto &point : lateral)
  {
    phi.push_back(phi_at(point[0], length));
    y.push_back(point[1]);
  }
  phi.push_back(pi);
  y.push_back(0);
  for (const auto &point : medial)
  {
    phi.push_back(2 * pi - phi_at(point[0], length));
    y.push_back(point[1]);
  }
  for (std::size_t i = 1; i < phi.size(); ++i)
    if (phi[i] <= phi[i - 1])
      throw InvalidGeometry("point of the outline", y[i],
                            "inside the length, one after the other round the sole");
  return {std::move(phi), std::move(y), 2 * pi};
}

std::vector<PlanPoint> measured(double length, const std::array<double, 7> &half_widths, double sign)
{
  std::vector<PlanPoint> points;
  for (std::size_t i = 0; i < half_widths.size(); ++i)
  {
    if (!(half_widths[i] > 0))
      throw InvalidGeometry("half width of the outline", half_widths[i], "more than 0");
    points.push_back({outline_stations[i] * length, sign * half_widths[i]});
  }
  return points;
}

std::vector<PlanPoint> backwards(std::vector<PlanPoint> points)
{
  std::ranges::reverse(points);
  return points;
}

double checked(double length)
{
  if (!(length > 0))
    throw InvalidGeometry("length of the outline", length, "more than 0");
  return length;
}
} // namespace

Outline::Outline(double length, const HalfWidths &half_widths)
  : Outline(checked(length), measured(length, half_widths.lateral, 1),
            backwards(measured(length, half_widths.medial, -1)))
{
}

Outline::Outline(double length, const std::vector<PlanPoint> &lateral, const std::vector<PlanPoint> &medial)
  : length_(checked(length)), y_(round_the_sole(length, lateral, medial))
{
}

PlanPoint Outline::at(double phi) const
{
  return {length_ / 2 * (1 - std::cos(phi)), y_.value(phi)};
}

PlanPoint Outline::along(double phi) const
{
  return {length_ / 2 * std::sin(phi), y_.slope(phi)};
}

double Outline::phi_of(double x) const
{
  return phi_at(x, length_);
}

Span Outline::across(double x) const
{
  if (x <= 0 || x >= length_)
    return {};
  const double phi = phi_of(x);
  return {y_.value(2 * pi - phi), y_.value(phi)};
}

double Outline::area() const
{
  // Line integral of y dx by the trapezoidal rule, whose error falls fast for a closed smooth curve.
  double sum = 0;
  for (int i = 0; i < n_samples; ++i)
  {
    const double phi = 2 * pi * i / n_samples;
    sum += y_.value(phi) * std::sin(phi);
  }
  return sum * pi / n_samples * length_;
}

double Outline::crossing() const
{
  for (int i = 1; i < n_samples / 2; ++i)
  {
    const double phi = 2 * pi * i / n_samples;
    if (!(y_.value(phi) > y_.value(2 * pi - phi)))
      return at(phi)[0];
  }
  return -1;
}

std::vector<PlanPoint> points_round(const Outline &outline, unsigned n)
{
  std::vector<PlanPoint> points;
  for (unsigned i = 0; i < n; ++i)
    points.push_back(outline.at(2 * pi * i / n));
  return points;
}
} // namespace solemech::geometry
