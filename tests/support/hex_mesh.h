// SPDX-License-Identifier: Apache-2.0
// A box of hexahedra for solver tests: tensor grid, held components, moved nodes.
#pragma once

#include "solver/mesh/quadratic_mesh.h"
#include "tests/support/single_body.h"

#include <numeric>

namespace solemech::tests
{
using Point3 = std::array<double, 3>;
using HexMesh = solver::QuadraticMesh<3>;

/// Vertices and cells of the grid of these lines, x fastest; nothing is held yet.
inline HexMesh hex_grid(const Lines &x, const Lines &y, const Lines &z)
{
  const auto vertex = [&](std::size_t i, std::size_t j, std::size_t k) -> unsigned {
    return i + x.size() * (j + y.size() * k);
  };
  std::vector<Point3>           vertices;
  std::vector<HexMesh::Corners> cells;
  for (std::size_t k = 0; k < z.size(); ++k)
    for (std::size_t j = 0; j < y.size(); ++j)
      for (std::size_t i = 0; i < x.size(); ++i)
      {
        vertices.push_back({x[i], y[j], z[k]});
        if (i + 1 == x.size() || j + 1 == y.size() || k + 1 == z.size())
          continue;
        auto &corners = cells.emplace_back();
        for (unsigned c = 0; c < 8; ++c)
          corners[c] = vertex(i + c % 2, j + c / 2 % 2, k + c / 4);
      }
  return {vertices, cells};
}

/// Holds the components that `held` names for the place of a node.
template <typename Held>
void hold(HexMesh &mesh, Held &&held)
{
  std::vector<bool> fixed;
  for (const auto &x : mesh.nodes())
    for (const bool component : std::array<bool, 3>(held(x)))
      fixed.push_back(component);
  std::vector<unsigned> owner(mesh.n_nodes());
  std::iota(owner.begin(), owner.end(), 0u);
  mesh.number_unknowns(fixed, owner);
}

/// Nothing held.
inline std::array<bool, 3> free_everywhere(const Point3 &)
{
  return {false, false, false};
}

/// All cells of a mesh.
template <int dim>
std::vector<std::size_t> all_cells(const solver::QuadraticMesh<dim> &mesh)
{
  std::vector<std::size_t> cells(mesh.cells().size());
  std::iota(cells.begin(), cells.end(), 0u);
  return cells;
}
} // namespace solemech::tests
