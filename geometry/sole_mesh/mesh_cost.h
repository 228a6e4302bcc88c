// SPDX-License-Identifier: Apache-2.0
// What a direct factorisation of a solid over a plan will take, told before any of it is built.
#pragma once

#include "geometry/sole_mesh/plan_mesh.h"

namespace solemech::geometry
{
struct MeshCost
{
  double n_unknowns = 0;     ///< three at each node of quadratic cells
  double factor_bytes = 0;   ///< of the factor of one matrix [B]
  double operations = 0;     ///< of one factorisation [-]
  double factor_seconds = 0; ///< of it on one processor that does 8e9 a second
};

/// Over n unknowns with a band of b, those of one cut across the foot, nested dissection takes about
/// n b^2 operations and n b entries, less and less of both the larger n is. Fitted to factorisations of
/// blocks 290 x 105 x 28 mm with 17,000 to 429,000 unknowns (symmetric, supernodal): right to a third.
MeshCost expected_cost(const PlanMesh &plan, unsigned n_rows);
} // namespace solemech::geometry
