// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/mesh_cost.h"

#include <algorithm>
#include <cmath>

namespace solemech::geometry
{
MeshCost expected_cost(const PlanMesh &plan, unsigned n_rows)
{
  // nodes of quadratic cells: corners, middles of edges, middles; each edge counts from both its cells
  const auto   n_cells = static_cast<double>(plan.cells.size());
  const double n_edges = 0.5 * (4 * n_cells + static_cast<double>(plan.rim.size()));
  const double n_plan = static_cast<double>(plan.vertices.size()) + n_edges + n_cells;
  PlanPoint    least = plan.vertices.front(), most = least;
  for (const auto &vertex : plan.vertices)
    for (unsigned c = 0; c < 2; ++c)
      least[c] = std::min(least[c], vertex[c]), most[c] = std::max(most[c], vertex[c]);
  const double length = most[0] - least[0], width = most[1] - least[1];
  const double n_across = std::sqrt(n_plan * std::min(width / length, length / width));

  MeshCost     cost{.n_unknowns = 3 * n_plan * (2 * n_rows + 1)};
  const double band = 3 * n_across * (2 * n_rows + 1), size = cost.n_unknowns / 17500;
  cost.operations = 1.08 * std::pow(size, -0.3) * cost.n_unknowns * band * band;
  cost.factor_bytes = 8 * 0.86 * std::pow(size, -0.23) * cost.n_unknowns * band;
  cost.factor_seconds = cost.operations / 8e9;
  return cost;
}
} // namespace solemech::geometry
