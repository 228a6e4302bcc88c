// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/column_mesh.h"

#include "geometry/errors.h"
#include "geometry/sole_mesh/column_heights.h"

#include <cmath>

namespace solemech::geometry
{
namespace
{
SolidPoint placed(const PlanPoint &place, double height, const CarriedBy &carried)
{
  if (!carried)
    return {place[0], place[1], height};
  const auto [x, z] = carried(place[0], height);
  return {x, place[1], z};
}

/// Derivatives of the trilinear map of a cell by its three directions.
std::array<SolidPoint, 3> jacobian(const ColumnMesh &mesh, unsigned cell, const std::array<double, 3> &at)
{
  std::array<SolidPoint, 3> columns{};
  for (unsigned v = 0; v < 8; ++v)
    for (unsigned d = 0; d < 3; ++d)
    {
      double factor = 1;
      for (unsigned e = 0; e < 3; ++e)
      {
        const bool high = (v >> e) % 2;
        factor *= e == d ? (high ? 1 : -1) : (high ? at[e] : 1 - at[e]);
      }
      for (unsigned c = 0; c < 3; ++c)
        columns[d][c] += factor * mesh.vertices[mesh.cells[cell].vertices[v]][c];
    }
  return columns;
}

double determinant(const std::array<SolidPoint, 3> &m)
{
  return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1]) -
         m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0]) +
         m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
}

void require_unfolded(const ColumnMesh &mesh)
{
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
    for (unsigned v = 0; v < 8; ++v)
    {
      const std::array<double, 3> corner{v % 2 * 1.0, v / 2 % 2 * 1.0, v / 4 * 1.0};
      if (const double volume = determinant(jacobian(mesh, c, corner)); !(volume > 0))
        throw InvalidGeometry(
          "room of layer " + std::to_string(mesh.cells[c].layer + 1) + " from the ground, " +
            in_mm(mesh.vertices[mesh.cells[c].vertices[v]][0]) + " from the heel,",
          volume * 1e9, "mm3", "more than 0; a bottom line with a gentler bend, or a lower stack");
    }
}

void add_faces(ColumnMesh &mesh, const PlanMesh &plan, unsigned n_rows)
{
  const auto n_plan = static_cast<unsigned>(plan.cells.size());
  for (unsigned c = 0; c < n_plan; ++c)
  {
    mesh.faces.push_back({c, 4, SoleSide::bottom});
    mesh.faces.push_back({(n_rows - 1) * n_plan + c, 5, SoleSide::top});
  }
  for (unsigned row = 0; row < n_rows; ++row)
    for (const auto &[cell, face] : plan.rim) // FaceNumber counts ends like a HexFace
      mesh.faces.push_back({row * n_plan + cell, face, SoleSide::side});
}
} // namespace

std::array<unsigned, 4> face_vertices(const HexCell &cell, unsigned face)
{
  constexpr unsigned      corners[6][4] = {{0, 4, 6, 2}, {1, 3, 7, 5}, {0, 1, 5, 4},
                                           {2, 6, 7, 3}, {0, 2, 3, 1}, {4, 5, 7, 6}};
  std::array<unsigned, 4> vertices{};
  for (unsigned i = 0; i < 4; ++i)
    vertices[i] = cell.vertices[corners[face][i]];
  return vertices;
}

ColumnMesh make_column_mesh(const PlanMesh &plan, const InterfaceHeights &heights,
                            const std::vector<unsigned> &n_cells, const CarriedBy &carried)
{
  const auto layer_of_row = layers_of_rows(n_cells);
  const auto n_rows = static_cast<unsigned>(layer_of_row.size());
  const auto n_plan = static_cast<unsigned>(plan.vertices.size());

  ColumnMesh mesh;
  mesh.vertices.resize((n_rows + 1) * plan.vertices.size());
  for (unsigned v = 0; v < n_plan; ++v)
  {
    const auto column = column_heights(heights(plan.vertices[v]), n_cells, plan.vertices[v]);
    for (unsigned row = 0; row <= n_rows; ++row)
      mesh.vertices[row * n_plan + v] = placed(plan.vertices[v], column[row], carried);
  }
  for (unsigned row = 0; row < n_rows; ++row)
    for (unsigned c = 0; c < plan.cells.size(); ++c)
    {
      HexCell cell{.layer = layer_of_row[row], .plan_cell = c};
      for (unsigned v = 0; v < 8; ++v)
        cell.vertices[v] = (row + v / 4) * n_plan + plan.cells[c].vertices[v % 4];
      mesh.cells.push_back(cell);
    }
  add_faces(mesh, plan, n_rows);
  require_unfolded(mesh);
  return mesh;
}

double cell_volume(const ColumnMesh &mesh, unsigned cell)
{
  const double near = 0.5 - 0.5 / std::sqrt(3.0);
  double       volume = 0;
  for (unsigned q = 0; q < 8; ++q)
    volume +=
      determinant(jacobian(mesh, cell,
                           {q % 2 ? 1 - near : near, q / 2 % 2 ? 1 - near : near, q / 4 ? 1 - near : near})) /
      8;
  return volume;
}
} // namespace solemech::geometry
