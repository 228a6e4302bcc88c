// SPDX-License-Identifier: Apache-2.0
// The strikers of a drop rig or press; the other surfaces are in rigid_surface.cc.
#include "geometry/errors.h"
#include "geometry/outline_curves.h"
#include "geometry/rigid_surface.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
using namespace outline_curves;
using std::numbers::pi;

// ---- flat puck

FlatPuck::FlatPuck(double radius, double edge_radius) : radius_(radius), edge_radius_(edge_radius)
{
  if (!(radius > 0 && std::isfinite(radius)))
    throw InvalidGeometry("striker radius", radius, "more than 0 mm");
  if (!(edge_radius > 0 && edge_radius <= radius))
    throw InvalidGeometry("edge radius of the striker", edge_radius,
                          "more than 0 mm, at most " + in_mm(radius) + " (its radius)");
}

SurfaceDistance FlatPuck::distance(double r, double z) const
{
  const std::array<Vector, 1> corners{{{radius_ - edge_radius_, edge_radius_}}};
  const std::array<Vector, 2> normals{{{0, -1}, {1, 0}}};
  return mirrored(r, z,
                  [&](const Vector &p) { return to_rounded_polygon(p, corners, normals, edge_radius_); });
}

double FlatPuck::radius_at(double depth) const
{
  return radius_ - edge_radius_ + half_chord(edge_radius_, depth);
}

double FlatPuck::edge_radius_at(double) const
{
  return edge_radius_;
}

Polyline FlatPuck::outline(unsigned n, double extent) const
{
  Polyline line{{0, 0}};
  append_arc(line, {radius_ - edge_radius_, edge_radius_}, edge_radius_, -pi / 2, 0, at_least_two(n));
  return cut_at(line, extent, radius_at(extent));
}

// ---- sphere

Sphere::Sphere(double radius) : radius_(radius)
{
  if (!(radius > 0 && std::isfinite(radius)))
    throw InvalidGeometry("ball radius", radius, "more than 0 mm");
}

SurfaceDistance Sphere::distance(double r, double z) const
{
  return mirrored(r, z, [&](const Vector &p) { return to_circle(p, {0, radius_}, radius_); });
}

double Sphere::radius_at(double depth) const
{
  return half_chord(radius_, depth);
}

double Sphere::edge_radius_at(double) const
{
  return radius_;
}

Polyline Sphere::outline(unsigned n, double extent) const
{
  Polyline line;
  append_arc(line, {0, radius_}, radius_, -pi / 2, std::asin(std::min(1.0, extent / radius_ - 1)),
             at_least_two(n));
  return line;
}

// ---- spherical-ended rod

SphericalEndedRod::SphericalEndedRod(double rod_radius, double end_radius, double edge_radius)
  : rod_radius_(rod_radius), end_radius_(end_radius), edge_radius_(edge_radius)
{
  if (!(rod_radius > 0 && std::isfinite(rod_radius)))
    throw InvalidGeometry("striker radius", rod_radius, "more than 0 mm");
  if (!(end_radius >= rod_radius && std::isfinite(end_radius)))
    throw InvalidGeometry("end radius of the striker", end_radius,
                          "at least " + in_mm(rod_radius) + " (its radius)");
  if (!(edge_radius > 0 && edge_radius < rod_radius))
    throw InvalidGeometry("edge radius of the striker", edge_radius,
                          "more than 0 mm, less than " + in_mm(rod_radius) + " (its radius)");
  // the blend touches the end from inside and the side wall
  blend_r_ = rod_radius - edge_radius;
  blend_z_ = end_radius - std::sqrt(std::pow(end_radius - edge_radius, 2) - blend_r_ * blend_r_);
}

SurfaceDistance SphericalEndedRod::distance(double r, double z) const
{
  return mirrored(r, z, [&](const Vector &p) {
    const Vector centre{0, end_radius_}, blend{blend_r_, blend_z_};
    const Vector arm = from_to(blend, p);
    const Vector end_side = from_to(centre, blend); // along the end's normal where the blend starts
    if (arm[1] <= 0 && dot(arm, tangent(end_side)) >= 0)
      return to_circle(p, blend, edge_radius_);
    const SurfaceDistance wall = to_line(p, {rod_radius_, 0}, {1, 0});
    if (p[1] >= end_radius_)
      return wall;
    const SurfaceDistance end = to_circle(p, centre, end_radius_);
    const bool            inside_core = arm[0] < 0 && end.distance < -edge_radius_;
    if (inside_core)
      return farther(wall, end);
    return arm[1] > 0 && arm[0] >= 0 ? wall : end;
  });
}

double SphericalEndedRod::radius_at(double depth) const
{
  const double blend_start = end_radius_ * (1 - (end_radius_ - blend_z_) / (end_radius_ - edge_radius_));
  if (depth < blend_start)
    return half_chord(end_radius_, depth);
  return blend_r_ + half_chord(edge_radius_, depth - (blend_z_ - edge_radius_));
}

double SphericalEndedRod::edge_radius_at(double depth) const
{
  const double blend_start = end_radius_ * (1 - (end_radius_ - blend_z_) / (end_radius_ - edge_radius_));
  return depth < blend_start ? end_radius_ : edge_radius_;
}

Polyline SphericalEndedRod::outline(unsigned n, double extent) const
{
  const double turn = std::atan2(blend_z_ - end_radius_, blend_r_);
  Polyline     line;
  append_arc(line, {0, end_radius_}, end_radius_, -pi / 2, turn, at_least_two(n));
  append_arc(line, {blend_r_, blend_z_}, edge_radius_, turn, 0, at_least_two(n));
  return cut_at(line, extent, radius_at(extent));
}
} // namespace solemech::geometry
