// SPDX-License-Identifier: Apache-2.0
// Mesh lines of a stack under the tip of a hardness gauge, a hundredth as wide as the stack.
#pragma once

#include "geometry/grading.h"
#include "materials/gauge.h"

namespace solemech::solver
{
/// Fine around the tip, growing outwards and downwards, through every interface between layers and zones. A
/// line stands where the flat meets the flank: the surface folds there, which the middle of an element edge
/// cannot follow.
/// @param n_cells  from the axis to the corner of the tip
geometry::GridLines lines_for_tip(const geometry::PlugOutline &outline, const materials::IndenterTip &tip,
                                  int n_cells);
} // namespace solemech::solver
