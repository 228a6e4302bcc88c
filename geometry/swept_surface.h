// SPDX-License-Identifier: Apache-2.0
// Rigid surfaces in space, from the outline of one in the (r, z) plane: turned about its axis (puck, ball,
// cone) or drawn out along y (roller, bar). Own frame: lowest point at the origin, body on the side of
// growing z. Derivatives of a body of revolution: with e the unit vector away from the axis and t across it,
// H = h_rr e e^T + h_zz z z^T + h_rz (e z^T + z e^T) + (n_r/r) t t^T (chain rule for r = |x|).
#pragma once

#include "geometry/rigid_surface.h"

namespace solemech::geometry
{
enum class Sweep { round, along_y };

struct SweptSurface
{
  RigidSurface outline;
  Sweep        sweep = Sweep::round;
};

/// Distance to a surface in space with its first and second derivatives.
struct SpaceDistance
{
  double                               distance = 0; ///< positive outside the rigid body [m]
  std::array<double, 3>                normal{};     ///< gradient, unit, pointing out of the body [-]
  std::array<std::array<double, 3>, 3> curvature{};  ///< second derivatives [1/m]
};

/// Distance of a place, in the surface's own frame [m].
SpaceDistance surface_distance(const SweptSurface &surface, const std::array<double, 3> &place);
} // namespace solemech::geometry
