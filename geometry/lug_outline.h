// SPDX-License-Identifier: Apache-2.0
// Section of one tread lug on its skin, drawn tip upwards: the skin lies on z = 0 (where it is bonded to the
// sole) and reaches over one spacing, the lug stands in its middle. Walls lean by the draft angle, so that
// the root is wider than the face; a fillet joins wall and skin, an arc joins wall and face. A worn lug has
// its own face.
#pragma once

#include <array>
#include <vector>

namespace solemech::geometry
{
/// Points (x, z) [m].
using LugLine = std::vector<std::array<double, 2>>;

struct LugOutline
{
  double  width = 0;   ///< across the fresh face, up to the sharp corners that the edge arcs round off [m]
  double  height = 0;  ///< of the fresh lug above its skin [m]
  double  spacing = 0; ///< from lug to lug [m]
  double  skin = 0;    ///< thickness under the lug [m]
  double  draft = 0;   ///< angle of the walls to the upright [rad]
  double  edge_radius = 0; ///< between wall and face [m]
  double  fillet = 0;      ///< radius between wall and skin [m]
  LugLine worn_face;       ///< from the left wall to the right one, on top of what is left; empty: fresh
};

/// Least edge radius, fillet and skin that are accepted: a sharp corner has no converged pressure [m].
constexpr double smallest_lug_radius = 0.05e-3;

/// Throws InvalidGeometry for the first dimension that cannot be built: lengths that are not positive, arcs
/// that do not fit on face or wall, a root wider than the spacing, a worn face outside the fresh lug.
void check(const LugOutline &outline);

/// Right half of the fresh outline as curves, from the root to the axis.
struct LugWall
{
  std::array<double, 2> toe; ///< where the fillet leaves the skin
  std::array<double, 2> fillet_center, edge_center;
  double                fillet_from, fillet_to; ///< angle of the fillet's ends as seen from its centre [rad]
  double                edge_from, edge_to;     ///< angle of the edge arc's ends, wall first [rad]
  std::array<double, 2> wall_bottom, wall_top;  ///< straight piece between the arcs
};
LugWall lug_wall(const LugOutline &outline);

/// Half width of the fresh lug at a height above the bonded plane; 0 above the face, half the spacing at the
/// skin [m].
double half_width_at(const LugOutline &outline, double z);

/// Height of the fresh lug's surface above the bonded plane at x [m].
double surface_height_at(const LugOutline &outline, double x);
} // namespace solemech::geometry
