// SPDX-License-Identifier: Apache-2.0
// What share of each plan cell a shape covers: a plate that ends within cells, with slots. Cells are
// quartered where the edge of the shape runs; in the smallest pieces it is a straight line between the
// places where it crosses their sides.
#pragma once

#include "geometry/sole_mesh/plan_mesh.h"

#include <functional>
#include <vector>

namespace solemech::geometry
{
/// A shape in plan: what it covers.
using PlanShape = std::function<bool(const PlanPoint &)>;

/// Shares of area, 0 to 1, to 1e-3 where the edge bends no closer than half a cell. What is narrower than an
/// eighth of a cell may be missed.
std::vector<double> cell_shares(const PlanMesh &mesh, const PlanShape &shape);
} // namespace solemech::geometry
