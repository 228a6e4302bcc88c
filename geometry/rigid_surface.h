// SPDX-License-Identifier: Apache-2.0
// Rigid strikers and courts by signed distance, side walls included.
// Own frame: lowest point at the origin, body on the side of growing z, symmetric in r (r < 0 is mirrored).
// Distances are exact, also inside (nearest boundary point). Convex bodies with rounded edges are offsets of
// a sharp core: d = d_core - edge radius. Second derivatives follow from the curvature k of the nearest
// boundary point: k/(1 + k d) t t^T with tangent t (differential geometry of offset curves).
#pragma once

#include <array>
#include <variant>
#include <vector>

namespace solemech::geometry
{
/// Distance to a surface with its first and second derivatives in the (r, z) plane.
struct SurfaceDistance
{
  double                distance = 0; ///< positive outside the rigid body [m]
  std::array<double, 2> normal{};     ///< gradient, unit, pointing out of the body [-]
  std::array<double, 3> curvature{};  ///< second derivatives rr, zz, rz [1/m]
};

/// Polyline (r, z) from the axis outwards [m].
using Polyline = std::vector<std::array<double, 2>>;

/// Half space z > 0.
class Plane
{
public:
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;      ///< of the body at a height above its lowest point [m]
  double          edge_radius_at(double depth) const; ///< radius of curvature of the outline there [m]
  Polyline        outline(unsigned n, double extent) const;
};

/// Cylinder with a flat face and a rounded edge.
class FlatPuck
{
public:
  /// Throws InvalidGeometry unless 0 < edge_radius <= radius [m].
  FlatPuck(double radius, double edge_radius);
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;
  double          edge_radius_at(double depth) const;
  Polyline        outline(unsigned n, double extent) const;

private:
  double radius_, edge_radius_;
};

/// Full ball.
class Sphere
{
public:
  /// Throws InvalidGeometry unless radius > 0 [m].
  explicit Sphere(double radius);
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;
  double          edge_radius_at(double depth) const;
  Polyline        outline(unsigned n, double extent) const;

private:
  double radius_;
};

/// Rod with a spherical end; a blend of edge_radius joins end and side wall tangentially.
class SphericalEndedRod
{
public:
  /// Throws InvalidGeometry unless 0 < edge_radius <= rod_radius <= end_radius [m].
  SphericalEndedRod(double rod_radius, double end_radius, double edge_radius);
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;
  double          edge_radius_at(double depth) const;
  Polyline        outline(unsigned n, double extent) const;

private:
  double rod_radius_, end_radius_, edge_radius_;
  double blend_r_, blend_z_; ///< centre of the blend [m]
};

/// Cone, blunt by a flat or by a rounded tip, going over into a cylindrical shank. All edges are rounded by
/// edge_radius. flat_radius is where the flat ends and the rounding starts; 0 gives a tip of radius
/// edge_radius.
class ConeFrustum
{
public:
  /// Throws InvalidGeometry unless flat_radius >= 0, edge_radius > 0, 0 < half_angle < pi/2 (between axis and
  /// side [rad]) and the shank is wider than the tip. Lengths in m.
  ConeFrustum(double flat_radius, double half_angle, double edge_radius, double shank_radius);
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;
  double          edge_radius_at(double depth) const;
  Polyline        outline(unsigned n, double extent) const;

private:
  double flat_radius_, half_angle_, edge_radius_, shank_radius_;
  double shoulder_z_; ///< height of the core's corner between cone and shank [m]
};

/// Court with a sinusoidal profile z = amplitude (1 - cos(2 pi r / wavelength)), body above it.
class SinusoidalCourt
{
public:
  /// Throws InvalidGeometry unless amplitude > 0 and wavelength > 0 [m].
  SinusoidalCourt(double amplitude, double wavelength);
  SurfaceDistance distance(double r, double z) const;
  double          radius_at(double depth) const;
  double          edge_radius_at(double depth) const;
  Polyline        outline(unsigned n, double extent) const;

private:
  double amplitude_, wave_number_;
};

using RigidSurface = std::variant<Plane, FlatPuck, Sphere, SphericalEndedRod, ConeFrustum, SinusoidalCourt>;

/// Distance of the point (r, z), in the surface's own frame, with derivatives.
SurfaceDistance surface_distance(const RigidSurface &surface, double r, double z);

/// Radius of the body at the height `depth` above its lowest point: the greatest radius that touches when it
/// has sunk in by `depth` [m]. Infinite for a plane.
double contact_radius(const RigidSurface &surface, double depth);

/// Radius of curvature of the outline at that height [m]: the edge radius of a flat face, the ball's radius.
/// Infinite where the outline is straight with no edge below.
double contact_edge_radius(const RigidSurface &surface, double depth);

/// Right half of the outline for pictures: n points or a few more, from the lowest point outwards, up to the
/// height `extent` (open sideways shapes: up to the radius `extent`) [m].
Polyline outline(const RigidSurface &surface, unsigned n, double extent);
} // namespace solemech::geometry
