// SPDX-License-Identifier: Apache-2.0
// Outer faces of a mesh of hexahedra, nine nodes each.
#pragma once

#include "solver/mesh/quadratic_mesh.h"

namespace solemech::solver
{
/// Face of a cell: 2 d for the one where direction d starts, 2 d + 1 for the one where it ends.
struct SolidFace
{
  std::size_t cell;
  unsigned    side;
};

using FaceNodes = std::array<unsigned, 9>; ///< 3 x 3, the lower of the two directions fastest

FaceNodes face_nodes(const QuadraticMesh<3> &mesh, const SolidFace &face);

/// Where the middle node of a face is [m].
inline const QuadraticMesh<3>::Point &face_centre(const QuadraticMesh<3> &mesh, const SolidFace &face)
{
  return mesh.nodes()[face_nodes(mesh, face)[4]];
}

/// Faces that belong to one cell only.
std::vector<SolidFace> outer_faces(const QuadraticMesh<3> &mesh);
} // namespace solemech::solver
