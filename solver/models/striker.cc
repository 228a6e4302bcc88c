// SPDX-License-Identifier: Apache-2.0
#include "solver/models/striker.h"

#include "solver/part_law.h"

#include <algorithm>
#include <numbers>

namespace solemech::solver
{
double striker_edge(const Tup &tup)
{
  return tup.edge_radius > 0 ? tup.edge_radius : 0.02 * tup.diameter;
}

geometry::RigidSurface striker_surface(const Tup &tup)
{
  const double radius = 0.5 * tup.diameter;
  switch (tup.shape)
  {
  case TupShape::sphere:
    return geometry::Sphere(radius);
  case TupShape::spherical_ended:
    return geometry::SphericalEndedRod(radius, tup.end_radius, striker_edge(tup));
  case TupShape::cone:
    return geometry::ConeFrustum(tup.end_radius, tup.half_angle, tup.edge_radius, radius);
  case TupShape::flat:
    break;
  }
  return geometry::FlatPuck(radius, striker_edge(tup));
}

double striker_reach(const Tup &tup, double depth)
{
  return geometry::contact_radius(striker_surface(tup), depth);
}

double loaded_area(Section section, double radius)
{
  return section == Section::axisymmetric ? std::numbers::pi * radius * radius : 2 * radius;
}

double column_stiffness(const Case &input, const Tup &tup)
{
  double compliance = 0;
  for (const auto &layer : input.layers)
    compliance += layer.thickness / (layer.area_share * equilibrium_modulus(layer.material, input));
  return loaded_area(input.plug.section, std::min(0.5 * tup.diameter, input.plug.radius)) / compliance;
}
} // namespace solemech::solver
