// SPDX-License-Identifier: Apache-2.0
// Contact in space (rigid_contact.h), and what its surface feels: force, moments, area.
#pragma once

#include "solver/contributions/rigid_contact.h"

namespace solemech::solver
{
/// What the surface feels.
struct SolidContactState
{
  std::array<double, 3> force{};     ///< on the body [N]
  std::array<double, 3> moment{};    ///< of it about where the surface's lowest point is now [N m]
  double                area = 0;    ///< that touches, seen from above, current [m2]
  double                deepest = 0; ///< penetration [m]
};

class SolidContact : public RigidContact<3>
{
public:
  /// Parameters as of RigidContact.
  SolidContact(std::string name, const QuadraticMesh<3> &mesh, const std::vector<SolidFace> &faces,
               geometry::SweptSurface surface, ContactSettings settings, RigidBody body, const At &lowest,
               bool faces_up)
    : RigidContact(std::move(name), mesh, surface_points(mesh, faces), std::move(surface), settings,
                   std::move(body), lowest, faces_up)
  {
  }

  SolidContactState state(const Vector &x) const;
};
} // namespace solemech::solver
