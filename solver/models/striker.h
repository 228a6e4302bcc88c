// SPDX-License-Identifier: Apache-2.0
// A striker as a rigid surface, and what it presses on.
#pragma once

#include "geometry/rigid_surface.h"
#include "solver/case.h"

namespace solemech::solver
{
/// Surface of a striker, in its own frame with the lowest point at the origin.
geometry::RigidSurface striker_surface(const Tup &tup);

/// Reach of the struck surface: what a striker of this shape touches when it has sunk to `depth` [m].
double striker_reach(const Tup &tup, double depth);

/// Radius with which the edge of a flat striker is rounded [m].
double striker_edge(const Tup &tup);

/// Area within a radius; per metre of depth in a plane section [m2].
double loaded_area(Section section, double radius);

/// Stiffness of the stack's column under a striker, layers in series at their modulus at rest [N/m].
double column_stiffness(const Case &input, const Tup &tup);
} // namespace solemech::solver
