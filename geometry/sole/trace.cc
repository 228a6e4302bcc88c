// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/trace.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
using Points = std::vector<PlanPoint>;

constexpr double farthest_point = 1e9; ///< from the origin, in any unit that people draw in

/// Side of c as seen along a - b: positive to the left.
double side(const PlanPoint &a, const PlanPoint &b, const PlanPoint &c)
{
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

bool cross(const PlanPoint &a, const PlanPoint &b, const PlanPoint &c, const PlanPoint &d)
{
  return std::max(a[0], b[0]) >= std::min(c[0], d[0]) && std::max(c[0], d[0]) >= std::min(a[0], b[0]) &&
         side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/// A place where the closed line crosses itself.
std::optional<PlanPoint> own_crossing(const Points &points)
{
  const auto n = points.size();
  for (std::size_t i = 0; i < n; ++i)
    for (std::size_t j = i + 2; j < n; ++j)
      if (cross(points[i], points[(i + 1) % n], points[j], points[(j + 1) % n]))
        return points[i];
  return std::nullopt;
}

/// The points without those that follow on the spot.
Points without_repeats(const Points &points)
{
  Points kept;
  for (const auto &point : points)
    if (kept.empty() || point != kept.back())
      kept.push_back(point);
  while (kept.size() > 1 && kept.front() == kept.back())
    kept.pop_back();
  return kept;
}

/// Turned and moved so that rearmost and foremost point lie at (0, 0) and (length, 0); lateral side first,
/// from the heel on.
Points laid_straight(Points points)
{
  const auto by_x = [](const PlanPoint &a, const PlanPoint &b) { return a[0] < b[0]; };
  for (int turns = 0; turns < 50; ++turns)
  {
    const auto [rear, front] = std::ranges::minmax_element(points, by_x);
    const PlanPoint heel = *rear, toe = *front;
    const double    length = std::hypot(toe[0] - heel[0], toe[1] - heel[1]);
    const double    c = (toe[0] - heel[0]) / length, s = (toe[1] - heel[1]) / length;
    for (auto &point : points)
    {
      const double x = point[0] - heel[0], y = point[1] - heel[1];
      point = {c * x + s * y, c * y - s * x};
    }
    if (std::abs(s) < 1e-12)
      break;
  }
  std::ranges::rotate(points, std::ranges::min_element(points, by_x));
  double twice_area = 0;
  for (std::size_t i = 0; i < points.size(); ++i)
  {
    const auto &a = points[i], &b = points[(i + 1) % points.size()];
    twice_area += a[0] * b[1] - a[1] * b[0];
  }
  if (twice_area > 0) // the lateral side comes first where it turns right
    std::reverse(points.begin() + 1, points.end());
  return points;
}

/// Points of one side strictly between the ends, some 6 degrees of the outline apart; they only go one way.
Points thinned(const Points &side_points, double length, double *turns_back)
{
  constexpr double apart = std::numbers::pi / 32;
  const auto       phi = [&](double x) { return std::acos(std::clamp(1 - 2 * x / length, -1.0, 1.0)); };
  Points           kept;
  double           last = 0, farthest = 0;
  for (const auto &point : side_points)
  {
    if (farthest - point[0] > *turns_back)
      *turns_back = farthest - point[0];
    farthest = std::max(farthest, point[0]);
    const double here = phi(point[0]);
    if (here - last > apart && std::numbers::pi - here > apart)
    {
      kept.push_back(point);
      last = here;
    }
  }
  return kept;
}

struct Sides
{
  Points lateral, medial;
  double length = 0, turns_back = 0;
};

Sides sides_of(const Points &trace)
{
  const Points points = laid_straight(trace);
  const auto   toe =
    std::ranges::max_element(points, {}, [](const PlanPoint &p) { return p[0]; }) - points.begin();
  Sides sides;
  sides.length = points[static_cast<std::size_t>(toe)][0];
  const Points lateral(points.begin() + 1, points.begin() + toe);
  Points       medial(points.begin() + toe + 1, points.end());
  std::ranges::reverse(medial);
  sides.lateral = thinned(lateral, sides.length, &sides.turns_back);
  sides.medial = thinned(medial, sides.length, &sides.turns_back);
  std::ranges::reverse(sides.medial);
  return sides;
}

std::string at_point(const PlanPoint &point)
{
  return in_mm(point[0]) + ", " + in_mm(point[1]);
}
} // namespace

std::optional<TraceFlaw> trace_flaw(const std::vector<PlanPoint> &trace)
{
  const auto points = without_repeats(trace);
  if (points.size() < least_trace_points || points.size() > most_trace_points)
    return TraceFlaw{"the outline has " + std::to_string(points.size()) + " different points",
                     "Give " + std::to_string(least_trace_points) + " to " +
                       std::to_string(most_trace_points) + ", one every 5 to 10 mm"};
  if (std::ranges::any_of(points,
                          [](const PlanPoint &p) { return !(std::hypot(p[0], p[1]) < farthest_point); }))
    return TraceFlaw{"a point of the outline lies beyond all others",
                     "Remove it; all points belong to one sole"};
  if (const auto place = own_crossing(points))
    return TraceFlaw{"the outline crosses itself near " + at_point(*place),
                     "List the points in one go round the sole, without loops"};
  const auto sides = sides_of(points);
  if (sides.lateral.size() < 5 || sides.medial.size() < 5)
    return TraceFlaw{"the outline has hardly any points along one of its sides",
                     "Trace both edges of the sole, and say which way its toe points"};
  if (sides.turns_back > 0.02 * sides.length)
    return TraceFlaw{"an edge of the outline turns back by " + in_mm(sides.turns_back) +
                       " on its way to the toe",
                     "Trace the sole without straps, and say which way its toe points"};
  return std::nullopt;
}

Outline traced_outline(const std::vector<PlanPoint> &trace, double length)
{
  if (const auto flaw = trace_flaw(trace))
    throw InvalidGeometry("trace", static_cast<double>(trace.size()), "points", flaw->cure);
  auto         sides = sides_of(without_repeats(trace));
  const double scale = length > 0 ? length / sides.length : 1;
  for (auto *points : {&sides.lateral, &sides.medial})
    for (auto &point : *points)
      point = {scale * point[0], scale * point[1]};
  return {scale * sides.length, sides.lateral, sides.medial};
}
} // namespace solemech::geometry
