// SPDX-License-Identifier: Apache-2.0
// First sketches of a plan: the core and rim of a sole, the grid of a rectangle. Only the sources of
// plan_mesh.h include it.
#pragma once

#include "geometry/sole_mesh/plan_outline.h"

namespace solemech::geometry::plan
{
/// Lines from side to side through the lines asked for, closer where finer stretches want it. Between their
/// ends they are cut into a core and `n_rim` rows on either side; the rows go on round heel and toe.
Sketch sketch_of_sole(const Outline &outline, const PlanSizes &sizes);

/// Places between `from` and `to` (both included) so that no interval is longer than its size at its middle;
/// sizes grow by 0.4 of the distance from a finer stretch.
std::vector<double> graded(double from, double to, double size, const std::vector<FinerStretch> &finer);

Sketch sketch_of_rectangle(const std::vector<double> &x, const std::vector<double> &y);
} // namespace solemech::geometry::plan
