// SPDX-License-Identifier: Apache-2.0
#include "geometry/stack_outline.h"

#include "geometry/errors.h"

#include <cmath>

namespace solemech::geometry
{
namespace
{
const std::string thick_enough = "at least " + in_mm(smallest_thickness);

// Comparisons are written so that NaN fails them.
void require_thickness(const std::string &name, double value)
{
  if (!(value >= smallest_thickness && std::isfinite(value)))
    throw InvalidGeometry(name, value, thick_enough);
}

void check_part(const PlugOutline &outline, const std::string &where, int part)
{
  if (part < 0 || static_cast<std::size_t>(part) >= outline.part_names.size())
    throw InvalidGeometry("part number of " + where, part, "",
                          "0 up to " + std::to_string(static_cast<int>(outline.part_names.size()) - 1));
}

void check_zones(const PlugOutline &outline, const Strip &strip, const std::string &name)
{
  if (strip.zones.empty())
    throw InvalidGeometry("number of zones in " + name, 0, "", "at least 1");
  double inner = 0;
  for (const Zone &zone : strip.zones)
  {
    if (!(zone.outer_radius > inner && zone.outer_radius <= outline.radius * (1 + 1e-12)))
      throw InvalidGeometry("zone radius in " + name, zone.outer_radius,
                            "more than " + in_mm(inner) + ", at most " + in_mm(outline.radius) +
                              " (the plug)");
    check_part(outline, "a zone in " + name, zone.part);
    inner = zone.outer_radius;
  }
  if (inner < outline.radius * (1 - 1e-12))
    throw InvalidGeometry("outermost zone radius in " + name, inner, in_mm(outline.radius) + " (the plug)");
}

void check_air_unit(const PlugOutline &outline, const Strip &strip, const std::string &name)
{
  const AirUnitOutline &unit = *strip.chamber;
  require_thickness("film thickness in " + name, unit.film_thickness);
  const double thickest = (strip.thickness - smallest_thickness) / 2;
  if (!(unit.film_thickness <= thickest))
    throw InvalidGeometry("film thickness in " + name, unit.film_thickness,
                          "at most " + in_mm(thickest) + " (two films and a void share the layer)");
  const double smallest = unit.film_thickness + smallest_thickness;
  if (!(unit.outer_radius >= smallest && unit.outer_radius <= outline.radius * (1 + 1e-12)))
    throw InvalidGeometry("air unit diameter in " + name, 2 * unit.outer_radius,
                          in_mm(2 * smallest) + " to " + in_mm(2 * outline.radius) + " (the plug)");
  check_part(outline, "the film in " + name, unit.film_part);
}
} // namespace

double height(const PlugOutline &outline)
{
  double sum = 0;
  for (const Strip &strip : outline.strips)
    sum += strip.thickness;
  return sum;
}

Cavity cavity(const Strip &strip)
{
  const AirUnitOutline &unit = *strip.chamber;
  return {.outer_radius = unit.outer_radius - unit.film_thickness,
          .bottom = unit.film_thickness,
          .top = strip.thickness - unit.film_thickness};
}

void check(const PlugOutline &outline)
{
  require_thickness("plug radius", outline.radius);
  if (outline.strips.empty())
    throw InvalidGeometry("number of strips", 0, "", "at least 1");
  if (!(outline.tup_contact_radius > 0))
    throw InvalidGeometry("radius under the striker", outline.tup_contact_radius, "more than 0 mm");
  if (!(outline.tup_edge_radius >= 0))
    throw InvalidGeometry("edge radius of the striker", outline.tup_edge_radius, "0 mm or more");
  if (outline.wall_thickness != 0)
  {
    require_thickness("thickness of the side wall", outline.wall_thickness);
    check_part(outline, "the side wall", outline.wall_part);
  }
  unsigned number = 0;
  for (const Strip &strip : outline.strips)
  {
    const std::string name = "strip " + std::to_string(++number) + " from the ground";
    require_thickness("thickness of " + name, strip.thickness);
    check_zones(outline, strip, name);
    if (strip.chamber)
      check_air_unit(outline, strip, name);
  }
}
} // namespace solemech::geometry
