// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/contact.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace solemech::solver
{
Contact::Contact(std::string name, const Discretisation &mesh,
                 const std::vector<geometry::BoundaryFace> &faces, geometry::RigidSurface surface,
                 ContactSettings settings, RigidBody body, double height, bool faces_up)
  : RigidContact(std::move(name), mesh, surface_points(mesh, faces), std::move(surface), settings, body,
                 {0, height}, faces_up),
    section_(mesh.section()), pressure_window_(settings.pressure_window)
{
  if (section_ != MeshSection::whole_plane && std::any_of(body.freedoms.begin(), body.freedoms.end(),
                                                          [](Freedom f) { return f != Freedom::along_z; }))
    throw std::invalid_argument("a body that slides or tilts has no symmetric section");
}

ContactState Contact::state(const Vector &x) const
{
  const bool round = section_ == MeshSection::axisymmetric;
  const bool whole = section_ == MeshSection::whole_plane;
  const auto area_within = [&](double radius) {
    return round ? std::numbers::pi * radius * radius : whole ? radius : 2 * radius;
  };
  struct Load
  {
    double within, area,
      force; ///< level area inside of the point's radius, of the point, and on it, all current
  };
  std::vector<Load> loads;
  ContactState      state;
  for (const auto &touch : touches(x))
  {
    state.force += touch.force[1];
    if (touch.pressure == 0)
      continue;
    const double radius = touch.home[0], area = touch.point->area;
    state.radius = std::max(state.radius, std::abs(radius));
    state.deepest = std::max(state.deepest, touch.depth);
    const double spread = reach(*touch.point, x) * (round ? radius / touch.point->at_rest[0] : 1.0);
    loads.push_back({area_within(radius), area * spread, touch.pressure * area * std::abs(touch.normal[1])});
  }
  // Pressure at the rim of a flat striker has no limit on refinement; the mean over a ring of fixed width
  // has. Each point's force is spread over its area, so that a ring may cut through it: whole points would
  // count too much.
  const auto force_within = [&](double area) {
    double force = 0;
    for (const auto &load : loads)
      if (load.area > 0)
        force += load.force * std::clamp((area - load.within) / load.area + 0.5, 0.0, 1.0);
    return force;
  };
  for (const auto &load : loads)
  {
    const double rim = load.within + 0.5 * load.area;
    const double radius =
      whole ? rim : std::max(pressure_window_, round ? std::sqrt(rim / std::numbers::pi) : 0.5 * rim);
    const double outside = area_within(radius), inside = area_within(radius - pressure_window_);
    const double force = force_within(outside) - (whole || inside > 0 ? force_within(inside) : 0.0);
    state.peak_pressure = std::max(state.peak_pressure, force / (outside - inside));
  }
  return state;
}
} // namespace solemech::solver
