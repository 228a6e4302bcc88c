// SPDX-License-Identifier: Apache-2.0
// Shapes the cells of a sketch. Each node in turn goes down the sum of squares of
//   f = (|e1|^2/l1^2 + |e2|^2/l2^2) / (2 D),  D = e1 x e2/(l1 l2),
// over the corners of its cells: e1, e2 the edges, l1, l2 the sides wanted. f is the inverse mean ratio
// (Knupp, SIAM J. Sci. Comput. 23, 2001, 193), 1 for a cell as wanted and without bound for one that
// collapses, so that no cell folds. Where cells are folded at first, D is replaced by
// (D + sqrt(D^2 + e^2))/2, which unfolds them (Escobar et al., Comput. Methods Appl. Mech. Eng. 192, 2003,
// 2775).
#pragma once

#include "geometry/sole_mesh/plan_sketch.h"

namespace solemech::geometry::plan
{
/// Moves the nodes that are not fixed, those with a rail along it.
void shape(Sketch &sketch);
} // namespace solemech::geometry::plan
