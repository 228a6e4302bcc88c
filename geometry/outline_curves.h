// SPDX-License-Identifier: Apache-2.0
// Building blocks of rigid surfaces: distances to lines, circles and rounded convex polygons in the (r, z)
// half plane, and polylines for pictures. Only the sources of rigid_surface.h include it.
#pragma once

#include "geometry/rigid_surface.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <span>

namespace solemech::geometry::outline_curves
{
using Vector = std::array<double, 2>;
constexpr double infinite = std::numeric_limits<double>::infinity();

inline double dot(const Vector &a, const Vector &b)
{
  return a[0] * b[0] + a[1] * b[1];
}

inline Vector from_to(const Vector &a, const Vector &b)
{
  return {b[0] - a[0], b[1] - a[1]};
}

// Outline runs counter-clockwise round the body: downwards normal means travel outwards.
inline Vector tangent(const Vector &normal)
{
  return {-normal[1], normal[0]};
}

// Second derivatives of a distance: kappa t t^T.
inline std::array<double, 3> bending(double kappa, const Vector &t)
{
  return {kappa * t[0] * t[0], kappa * t[1] * t[1], kappa * t[0] * t[1]};
}

inline SurfaceDistance to_line(const Vector &p, const Vector &on_line, const Vector &normal)
{
  return {.distance = dot(from_to(on_line, p), normal), .normal = normal};
}

inline SurfaceDistance to_circle(const Vector &p, const Vector &centre, double radius)
{
  const Vector arm = from_to(centre, p);
  const double rho = std::hypot(arm[0], arm[1]);
  if (rho == 0) // every direction is nearest; down is as good as any
    return {.distance = -radius, .normal = {0, -1}};
  const Vector normal{arm[0] / rho, arm[1] / rho};
  return {.distance = rho - radius, .normal = normal, .curvature = bending(1 / rho, tangent(normal))};
}

inline SurfaceDistance farther(const SurfaceDistance &a, const SurfaceDistance &b)
{
  return a.distance > b.distance ? a : b;
}

// Convex polygon of edges (given by outward normals, from the axis outwards) and the corners between them,
// grown by `rounding`. The first edge ends on the axis, the last runs up to infinity.
inline SurfaceDistance to_rounded_polygon(const Vector &p, std::span<const Vector> corners,
                                          std::span<const Vector> normals, double rounding)
{
  for (std::size_t k = 0; k < corners.size(); ++k)
  {
    const Vector arm = from_to(corners[k], p);
    if (dot(arm, tangent(normals[k])) >= 0 && dot(arm, tangent(normals[k + 1])) <= 0)
      return to_circle(p, corners[k], rounding);
  }
  const auto edge = [&](std::size_t k) { return to_line(p, corners[k == 0 ? 0 : k - 1], normals[k]); };
  // off the corners the greatest signed distance is exact: outside the edge that faces p, inside the nearest
  // edge
  SurfaceDistance nearest = edge(0);
  for (std::size_t k = 1; k < normals.size(); ++k)
    nearest = farther(nearest, edge(k));
  nearest.distance -= rounding;
  return nearest;
}

// Answers for r >= 0 serve r < 0 by mirroring.
template <typename Distance>
SurfaceDistance mirrored(double r, double z, const Distance &distance)
{
  SurfaceDistance answer = distance(Vector{std::abs(r), z});
  if (r < 0)
  {
    answer.normal[0] = -answer.normal[0];
    answer.curvature[2] = -answer.curvature[2];
  }
  return answer;
}

inline void append_arc(Polyline &line, const Vector &centre, double radius, double from, double to,
                       unsigned n)
{
  for (unsigned i = 0; i <= n; ++i)
  {
    const double angle = from + (to - from) * i / n;
    line.push_back({centre[0] + radius * std::cos(angle), centre[1] + radius * std::sin(angle)});
  }
}

// Ends a rising outline at the height `top`.
inline Polyline cut_at(const Polyline &line, double top, double radius_there)
{
  Polyline cut;
  for (const Vector &point : line)
    if (point[1] < top)
      cut.push_back(point);
  cut.push_back({radius_there, top});
  return cut;
}

// Half chord of a circle at the height `depth` above its lowest point.
inline double half_chord(double radius, double depth)
{
  const double clamped = std::clamp(depth, 0.0, radius);
  return std::sqrt(clamped * (2 * radius - clamped));
}

inline unsigned at_least_two(unsigned n)
{
  return std::max(n, 2u);
}
} // namespace solemech::geometry::outline_curves
