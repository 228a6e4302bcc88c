// SPDX-License-Identifier: Apache-2.0
#include "solver/models/sole_model.h"

#include <algorithm>

namespace solemech::solver
{
QuadraticMesh<3> solid_of(const geometry::ColumnMesh &columns)
{
  std::vector<QuadraticMesh<3>::Corners> cells;
  for (const auto &cell : columns.cells)
    cells.push_back(cell.vertices);
  return {columns.vertices, cells};
}

std::vector<SolidFace> faces_on(const geometry::ColumnMesh &columns, geometry::SoleSide side)
{
  std::vector<SolidFace> faces;
  for (const auto &face : columns.faces)
    if (face.side == side)
      faces.push_back({face.cell, face.face});
  return faces;
}

std::vector<SolidPart> parts_of(const Sole &sole, const geometry::SoleMesh &mesh, const LayerKernel &kernel)
{
  std::vector<SolidPart> parts(sole.layers.size());
  for (std::size_t c = 0; c < mesh.columns.cells.size(); ++c)
    for (const auto &[layer, share] : mesh.filling(mesh.columns.cells[c]))
      parts[layer].cells.push_back(c), parts[layer].shares.push_back(share);
  for (std::size_t layer = 0; layer < parts.size(); ++layer)
  {
    parts[layer].name = sole.layers[layer].name;
    parts[layer].density = sole.layers[layer].material.density;
    parts[layer].kernel = kernel(sole.layers[layer]);
  }
  std::erase_if(parts, [](const SolidPart &part) { return part.cells.empty(); });
  return parts;
}
} // namespace solemech::solver
