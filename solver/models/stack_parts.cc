// SPDX-License-Identifier: Apache-2.0
#include "solver/models/stack_parts.h"

#include "solver/layer_parts.h"
#include "solver/models/striker.h"
#include "solver/rig_parts.h"

#include <algorithm>

namespace solemech::solver
{
namespace
{
/// Depth over stack height for which the mesh under the striker is made.
constexpr double expected_depth = 0.3;

int number_of(const std::vector<Part> &parts, const std::string &name)
{
  return static_cast<int>(
    std::find_if(parts.begin(), parts.end(), [&](const Part &p) { return p.name == name; }) - parts.begin());
}

geometry::Strip strip_of(const Layer &layer, const std::vector<Part> &parts, double radius)
{
  geometry::Strip strip;
  strip.thickness = layer.thickness;
  if (layer.ring && 0.5 * layer.core_diameter < radius)
    strip.zones = {{0.5 * layer.core_diameter, number_of(parts, layer.name)},
                   {radius, number_of(parts, ring_part(layer.name))}};
  else
    strip.zones = {{radius, number_of(parts, layer.name)}};
  if (layer.unit)
    strip.chamber =
      geometry::AirUnitOutline{0.5 * layer.unit->diameter, layer.unit->film_thickness, film_of(parts, layer)};
  return strip;
}
} // namespace

std::vector<Part> parts_of(const Case &input)
{
  std::vector<Part> parts;
  for (const auto &layer : input.layers)
  {
    parts.push_back({layer.name, layer.material, layer.area_share});
    if (layer.ring)
      parts.push_back({ring_part(layer.name), *layer.ring, layer.area_share});
    if (layer.unit)
      parts.push_back({film_part(layer.name), layer.unit->film, 1.0, true});
  }
  if (input.plug.side == Side::ring)
    parts.push_back({rig_part::wall, input.plug.side_material});
  return parts;
}

int film_of(const std::vector<Part> &parts, const Layer &layer)
{
  return number_of(parts, film_part(layer.name));
}

geometry::PlugOutline outline_of(const Case &input, const std::vector<Part> &parts, const Tup &tup)
{
  geometry::PlugOutline outline;
  outline.radius = input.plug.radius;
  for (const auto &part : parts)
    outline.part_names.push_back(part.name);
  for (auto layer = input.layers.rbegin(); layer != input.layers.rend(); ++layer)
    outline.strips.push_back(strip_of(*layer, parts, outline.radius));
  const auto   surface = striker_surface(tup);
  const double depth = expected_depth * stack_height(input.layers);
  outline.tup_contact_radius = geometry::contact_radius(surface, depth);
  outline.tup_edge_radius = geometry::contact_edge_radius(surface, depth);
  if (tup.shape == TupShape::flat)
    outline.tup_contact_radius = 0.5 * tup.diameter, outline.tup_edge_radius = striker_edge(tup);
  if (input.plug.side == Side::ring)
  {
    outline.wall_thickness = input.plug.side_thickness;
    outline.wall_part = number_of(parts, rig_part::wall);
  }
  return outline;
}
} // namespace solemech::solver
