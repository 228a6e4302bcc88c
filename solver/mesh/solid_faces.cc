// SPDX-License-Identifier: Apache-2.0
#include "solver/mesh/solid_faces.h"

namespace solemech::solver
{
FaceNodes face_nodes(const QuadraticMesh<3> &mesh, const SolidFace &face)
{
  static constexpr unsigned stride[3] = {1, 3, 9}; // of the nodes of a cell, along each direction
  const unsigned            across = face.side / 2, first = across == 0 ? 1 : 0, second = across == 2 ? 1 : 2;
  const auto               &cell = mesh.cells()[face.cell];
  FaceNodes                 nodes;
  for (unsigned a = 0; a < nodes.size(); ++a)
    nodes[a] =
      cell[(face.side % 2 ? 2 : 0) * stride[across] + a % 3 * stride[first] + a / 3 * stride[second]];
  return nodes;
}

std::vector<SolidFace> outer_faces(const QuadraticMesh<3> &mesh)
{
  constexpr unsigned         n_sides = 6, middle = 4;
  std::vector<unsigned char> n_cells(mesh.n_nodes(), 0); // of the face whose middle a node is
  std::vector<SolidFace>     all, outer;
  for (std::size_t cell = 0; cell < mesh.cells().size(); ++cell)
    for (unsigned side = 0; side < n_sides; ++side)
      ++n_cells[face_nodes(mesh, all.emplace_back(SolidFace{cell, side}))[middle]];
  for (const auto &face : all)
    if (n_cells[face_nodes(mesh, face)[middle]] == 1)
      outer.push_back(face);
  return outer;
}
} // namespace solemech::solver
