// SPDX-License-Identifier: Apache-2.0
// What holds a stack: a shell left on its side, jaws at its foot, the ground it stands on.
#pragma once

#include "solver/case.h"
#include "solver/mesh/discretisation.h"
#include "solver/models/contact_stiffness.h"
#include "solver/time/equation_of_motion.h"

namespace solemech::solver
{
/// Boundary faces with one of these names, in the order of the mesh.
std::vector<geometry::BoundaryFace> faces_at(const Discretisation             &mesh,
                                             std::vector<geometry::BoundaryId> names);

/// Which displacements the base holds; the axis keeps its place.
std::array<bool, 2> held_at(const geometry::BoundaryFace &face, Base base);

void add_side_and_base(const Case &input, const Discretisation &mesh, const ContactStiffness &stiffness,
                       EquationOfMotion &equation);
} // namespace solemech::solver
