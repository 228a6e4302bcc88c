// SPDX-License-Identifier: Apache-2.0
// Contact in a section (rigid_contact.h), and what its surface feels: force, radius, peak pressure.
#pragma once

#include "solver/contributions/rigid_contact.h"

namespace solemech::solver
{
/// What the surface feels [N, m, Pa].
struct ContactState
{
  double force = 0;         ///< on the body, upwards
  double radius = 0;        ///< outermost touching radius, current
  double peak_pressure = 0; ///< greatest mean over a ring (or the disc at the axis) of the window's width
  double deepest = 0;       ///< penetration
};

class Contact : public RigidContact<2>
{
public:
  /// @param body     that carries the surface; without freedoms: fixed. One that slides or tilts needs a
  ///                 section that is drawn as a whole
  /// @param height   of the surface's lowest point when all freedoms of the body are zero [m]
  /// @param faces_up surface lies below and faces up (ground) instead of pressing from above
  Contact(std::string name, const Discretisation &mesh, const std::vector<geometry::BoundaryFace> &faces,
          geometry::RigidSurface surface, ContactSettings settings, RigidBody body, double height,
          bool faces_up);

  ContactState state(const Vector &x) const;

private:
  MeshSection section_;
  double      pressure_window_;
};
} // namespace solemech::solver
