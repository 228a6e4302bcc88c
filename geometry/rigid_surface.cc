// SPDX-License-Identifier: Apache-2.0
#include "geometry/rigid_surface.h"

#include "geometry/errors.h"
#include "geometry/outline_curves.h"

#include "numerics/rising_root.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
using namespace outline_curves;
using std::numbers::pi;

// ---- plane

SurfaceDistance Plane::distance(double, double z) const
{
  return {.distance = -z, .normal = {0, -1}};
}

double Plane::radius_at(double) const
{
  return infinite;
}

double Plane::edge_radius_at(double) const
{
  return infinite;
}

Polyline Plane::outline(unsigned, double extent) const
{
  return {{0, 0}, {extent, 0}};
}

// ---- cone frustum

ConeFrustum::ConeFrustum(double flat_radius, double half_angle, double edge_radius, double shank_radius)
  : flat_radius_(flat_radius), half_angle_(half_angle), edge_radius_(edge_radius), shank_radius_(shank_radius)
{
  if (!(flat_radius >= 0 && std::isfinite(flat_radius)))
    throw InvalidGeometry("radius of the cone's flat", flat_radius, "0 mm or more");
  if (!(half_angle > 0 && half_angle < pi / 2))
    throw InvalidGeometry("half angle of the cone", half_angle * 180 / pi, "degrees",
                          "between 0 and 90 degrees");
  if (!(edge_radius > 0 && std::isfinite(edge_radius)))
    throw InvalidGeometry("edge radius of the cone", edge_radius, "more than 0 mm");
  if (!(shank_radius > flat_radius + edge_radius && std::isfinite(shank_radius)))
    throw InvalidGeometry("radius of the cone's shank", shank_radius,
                          "more than " + in_mm(flat_radius + edge_radius) + " (flat and edge)");
  shoulder_z_ = edge_radius + (shank_radius - edge_radius - flat_radius) / std::tan(half_angle);
}

SurfaceDistance ConeFrustum::distance(double r, double z) const
{
  const std::array<Vector, 2> corners{
    {{flat_radius_, edge_radius_}, {shank_radius_ - edge_radius_, shoulder_z_}}};
  const std::array<Vector, 3> normals{{{0, -1}, {std::cos(half_angle_), -std::sin(half_angle_)}, {1, 0}}};
  return mirrored(r, z,
                  [&](const Vector &p) { return to_rounded_polygon(p, corners, normals, edge_radius_); });
}

double ConeFrustum::radius_at(double depth) const
{
  const double rise = edge_radius_ * std::sin(half_angle_); // from tangent point to centre, at both edges
  if (depth < edge_radius_ - rise)
    return flat_radius_ + half_chord(edge_radius_, depth);
  if (depth < shoulder_z_ - rise)
    return flat_radius_ + edge_radius_ * std::cos(half_angle_) +
           (depth - edge_radius_ + rise) * std::tan(half_angle_);
  return shank_radius_ - edge_radius_ + half_chord(edge_radius_, depth - (shoulder_z_ - edge_radius_));
}

double ConeFrustum::edge_radius_at(double) const
{
  return edge_radius_;
}

Polyline ConeFrustum::outline(unsigned n, double extent) const
{
  Polyline line{{0, 0}};
  append_arc(line, {flat_radius_, edge_radius_}, edge_radius_, -pi / 2, -half_angle_, at_least_two(n));
  append_arc(line, {shank_radius_ - edge_radius_, shoulder_z_}, edge_radius_, -half_angle_, 0,
             at_least_two(n));
  return cut_at(line, extent, radius_at(extent));
}

// ---- sinusoidal court

SinusoidalCourt::SinusoidalCourt(double amplitude, double wavelength)
  : amplitude_(amplitude), wave_number_(2 * pi / wavelength)
{
  if (!(amplitude > 0 && std::isfinite(amplitude)))
    throw InvalidGeometry("amplitude of the court", amplitude, "more than 0 mm");
  if (!(wavelength > 0 && std::isfinite(wavelength)))
    throw InvalidGeometry("wavelength of the court", wavelength, "more than 0 mm");
}

SurfaceDistance SinusoidalCourt::distance(double r, double z) const
{
  const double a = amplitude_, k = wave_number_;
  const auto   profile = [&](double x) { return a * (1 - std::cos(k * x)); };
  const auto   slope = [&](double x) { return a * k * std::sin(k * x); };
  const auto   squared = [&](double x) { return std::pow(x - r, 2) + std::pow(profile(x) - z, 2); };
  // half the derivative of the squared distance: zero at the foot point
  const auto lean = [&](double x) { return x - r + (profile(x) - z) * slope(x); };

  // The foot point is no farther away than the point straight above or below. Sample that window (16 points a
  // wave), then search between the neighbours of the best sample: slow, but it cannot leave the right valley.
  const double reach = std::abs(profile(r) - z);
  const int    half = 16 + static_cast<int>(16 * reach * k / (2 * pi));
  int          best = 0;
  for (int i = -half; i <= half; ++i)
    if (squared(r + reach * i / half) < squared(r + reach * best / half))
      best = i;
  const double foot =
    numerics::rising_root(lean, r + reach * (best - 1) / half, r + reach * (best + 1) / half);
  const double length = std::hypot(1.0, slope(foot));
  const Vector normal{slope(foot) / length, -1 / length};
  const double d = dot(from_to({foot, profile(foot)}, {r, z}), normal);
  const double kappa = a * k * k * std::cos(k * foot) / std::pow(length, 3);
  return {.distance = d, .normal = normal, .curvature = bending(kappa / (1 + kappa * d), tangent(normal))};
}

double SinusoidalCourt::radius_at(double depth) const
{
  return depth >= 2 * amplitude_ ? infinite : std::acos(1 - std::max(depth, 0.0) / amplitude_) / wave_number_;
}

double SinusoidalCourt::edge_radius_at(double) const
{
  return 1 / (amplitude_ * wave_number_ * wave_number_);
}

Polyline SinusoidalCourt::outline(unsigned n, double extent) const
{
  Polyline line;
  for (unsigned i = 0; i <= at_least_two(n); ++i)
  {
    const double r = extent * i / at_least_two(n);
    line.push_back({r, amplitude_ * (1 - std::cos(wave_number_ * r))});
  }
  return line;
}

// ---- any surface

SurfaceDistance surface_distance(const RigidSurface &surface, double r, double z)
{
  return std::visit([&](const auto &shape) { return shape.distance(r, z); }, surface);
}

double contact_radius(const RigidSurface &surface, double depth)
{
  return std::visit([&](const auto &shape) { return shape.radius_at(depth); }, surface);
}

double contact_edge_radius(const RigidSurface &surface, double depth)
{
  return std::visit([&](const auto &shape) { return shape.edge_radius_at(depth); }, surface);
}

Polyline outline(const RigidSurface &surface, unsigned n, double extent)
{
  return std::visit([&](const auto &shape) { return shape.outline(n, extent); }, surface);
}
} // namespace solemech::geometry
