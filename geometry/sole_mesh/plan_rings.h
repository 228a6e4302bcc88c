// SPDX-License-Identifier: Apache-2.0
// Lets rows of cells into a sketch along a closed curve. The cells inside the curve are cut loose along
// their outer edges and the gap is filled with rows of new cells ("pillowing": Mitchell & Tautges, Trends in
// Unstructured Mesh Generation, ASME AMD 220, 1997, 181), whose nodes slide on the curve and on its offsets.
// Where the curve leaves the outline the rows end there. Only the sources of plan_mesh.h include it.
#pragma once

#include "geometry/sole_mesh/plan_sketch.h"

namespace solemech::geometry::plan
{
/// False, and the sketch is worth nothing, when the curve has no cells inside or meets the outline where no
/// row can end.
bool let_in(Sketch &sketch, const PlanRing &ring);

/// The ring with its curve drawn in towards its centre where the outline is nearer to it than a margin [m].
PlanRing kept_inside(const Sketch &sketch, const PlanRing &ring, double margin);
} // namespace solemech::geometry::plan
