// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/discretisation.h"

#include <algorithm>
#include <numeric>

namespace solemech::solver
{
namespace
{
std::vector<QuadraticMesh<2>::Corners> corners(const geometry::PlugMesh &mesh)
{
  std::vector<QuadraticMesh<2>::Corners> cells;
  for (const auto &cell : mesh.cells)
    cells.push_back(cell.vertices);
  return cells;
}

/// A half section is counted twice.
Depth depth(MeshSection section)
{
  return {section == MeshSection::axisymmetric, section == MeshSection::plane_strain ? 2.0 : 1.0};
}
} // namespace

EdgeShapes edge_shapes(double s)
{
  EdgeShapes shapes;
  for (unsigned a = 0; a < 3; ++a)
    shapes.value[a] = quadratic_shape(a, s), shapes.slope[a] = quadratic_slope(a, s);
  return shapes;
}

Discretisation::Discretisation(const geometry::PlugMesh &mesh, MeshSection section, const Held &held)
  : QuadraticMesh(mesh.vertices, corners(mesh), depth(section)), mesh_(mesh), section_(section)
{
  std::vector<bool> fixed(2 * n_nodes(), false);
  for (const auto &face : mesh_.faces)
  {
    const auto hold = held(face);
    for (const unsigned node : edge(face))
      for (unsigned c = 0; c < 2; ++c)
        if (hold[c])
          fixed[2 * node + c] = true;
  }
  // Joined faces move alike: the nodes of the second one take the unknowns of the first.
  std::vector<unsigned> owner(n_nodes());
  std::iota(owner.begin(), owner.end(), 0u);
  for (const auto &[first, second] : mesh_.joined_faces)
  {
    const auto a = edge(mesh_.faces[first]), b = edge(mesh_.faces[second]);
    // The body lies on either side of its two ends, so they are travelled in opposite senses.
    for (unsigned i = 0; i < 3; ++i)
      owner[b[i]] = a[2 - i];
  }
  // Fibres join facing edges of a chamber, which no element does.
  std::vector<std::vector<unsigned>> coupled;
  for (const auto &chamber : mesh_.chambers)
    for (const auto &[lower, upper] : chamber.facing)
    {
      const auto below = edge(mesh_.faces[lower]), above = edge(mesh_.faces[upper]);
      coupled.push_back({below[0], below[1], below[2], above[0], above[1], above[2]});
    }
  number_unknowns(fixed, owner, coupled);
}

EdgeNumbers Discretisation::edge(const geometry::BoundaryFace &face) const
{
  static constexpr unsigned local[4][3] = {{0, 3, 6}, {2, 5, 8}, {0, 1, 2}, {6, 7, 8}};
  const auto               &cell = cells()[face.cell];
  EdgeNumbers nodes{cell[local[face.face][0]], cell[local[face.face][1]], cell[local[face.face][2]]};
  // Local edges run from the first of their two corners; the face may run the other way.
  static constexpr unsigned first_corner[4] = {0, 1, 0, 2};
  const auto               &plug_cell = mesh_.cells[face.cell];
  if (geometry::face_vertices(plug_cell, face.face)[0] != plug_cell.vertices[first_corner[face.face]])
    std::swap(nodes[0], nodes[2]);
  return nodes;
}

ElementGroup Discretisation::group(int part, unsigned n_branches, const std::vector<Point> &positions,
                                   const std::vector<Point> &offset) const
{
  std::vector<std::size_t> members;
  for (std::size_t i = 0; i < cells().size(); ++i)
    if (mesh_.cells[i].part == part)
      members.push_back(i);
  return QuadraticMesh::group(mesh_.part_names[part], members, n_branches, positions, offset);
}
} // namespace solemech::solver
