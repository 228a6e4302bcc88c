// SPDX-License-Identifier: Apache-2.0
// The drawing of a plug: strips from the ground up, zones from the axis outwards, air units.
// It knows part numbers, no materials. In plane strain a radius is a half width.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace solemech::geometry
{
/// Part of a strip between the previous zone (or the axis) and its own outer radius.
struct Zone
{
  double outer_radius = 0; ///< [m]; the last zone of a strip reaches the plug radius
  int    part = 0;         ///< index into PlugOutline::part_names
};

/// An air unit filling its strip from bottom to top and from the axis to its own outer radius.
/// Film lies on bottom, top and side wall, all inside these outer dimensions. Where the strip's zones
/// overlap the unit, the unit wins.
struct AirUnitOutline
{
  double outer_radius = 0;   ///< film included [m]
  double film_thickness = 0; ///< [m]
  int    film_part = 0;      ///< index into PlugOutline::part_names
};

/// One horizontal strip of the plug.
struct Strip
{
  double                        thickness = 0; ///< [m]
  std::vector<Zone>             zones;         ///< from the axis outwards
  std::optional<AirUnitOutline> chamber;
};

/// The void of an air unit, as drawn: a cylinder (or a strip in plane strain) on the axis.
struct Cavity
{
  double outer_radius = 0; ///< of the void itself [m]
  double bottom = 0;       ///< height above the strip's lower face [m]
  double top = 0;          ///< height above the strip's lower face [m]
};

/// A plug ready for meshing. A wall, when there is one, lies outside `radius` over the full height.
struct PlugOutline
{
  std::vector<Strip>       strips;     ///< from the ground (z = 0) up
  double                   radius = 0; ///< without the wall [m]
  std::vector<std::string> part_names;
  double tup_contact_radius = 0; ///< greatest radius the striker presses on [m]; >= radius: all
  double tup_edge_radius = 0;    ///< radius of curvature of the striker at that rim [m]
  double wall_thickness = 0;     ///< [m]; 0: no wall
  int    wall_part = 0;          ///< index into part_names
};

/// Thinnest strip, film, wall or void that is accepted; below it a plug mesh would have slivers only.
constexpr double smallest_thickness = 1e-4; // [m]

/// Height of all strips together [m].
double height(const PlugOutline &outline);

/// The void of an air-unit strip. Precondition: `strip.chamber` has a value.
Cavity cavity(const Strip &strip);

/// Throws InvalidGeometry for the first dimension that cannot be built: empty or too thin strips, zones that
/// do not grow outwards or do not reach the plug radius, an air unit wider than the plug or thinner than its
/// film, unknown part numbers, NaN.
void check(const PlugOutline &outline);
} // namespace solemech::geometry
