// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/section_mesh.h"

#include "geometry/errors.h"
#include "geometry/sole_mesh/column_heights.h"
#include "geometry/sole_mesh/plan_grid.h"

#include <algorithm>
#include <stdexcept>

namespace solemech::geometry
{
namespace
{
void require_unfolded(const PlugMesh &mesh)
{
  for (const auto &cell : mesh.cells)
    for (unsigned corner = 0; corner < 4; ++corner)
    {
      const auto at = [&](unsigned k) { return mesh.vertices[cell.vertices[k]]; };
      const auto along = plan::operator-(at(corner | 1), at(corner & 2));
      const auto up = plan::operator-(at(corner | 2), at(corner & 1));
      if (const double area = plan::cross(along, up); !(area > 0))
        throw InvalidGeometry("room of layer " + std::to_string(cell.strip + 1) + " from the ground, " +
                                in_mm(at(corner)[0]) + " from the heel,",
                              area * 1e6, "mm2",
                              "more than 0; a bottom line with a gentler bend, or a lower stack");
    }
}
} // namespace

PlugMesh make_section_mesh(const std::vector<double> &x, const SectionHeights &heights,
                           const std::vector<unsigned> &n_cells, const std::vector<std::string> &part_names,
                           const SectionParts &parts, const CarriedBy &carried)
{
  if (x.size() < 2 || std::adjacent_find(x.begin(), x.end(), std::greater_equal<>()) != x.end())
    throw std::invalid_argument("mesh lines of a section must increase");
  const auto layer_of_row = layers_of_rows(n_cells);
  const auto n_rows = static_cast<unsigned>(layer_of_row.size());
  const auto n_columns = static_cast<unsigned>(x.size()) - 1;
  const auto vertex = [&](unsigned column, unsigned row) { return row * (n_columns + 1) + column; };
  PlugMesh   mesh;
  mesh.part_names = part_names;
  mesh.vertices.resize((n_columns + 1) * (n_rows + 1));
  for (unsigned column = 0; column <= n_columns; ++column)
  {
    const auto z = column_heights(heights(x[column]), n_cells, {x[column], 0});
    for (unsigned row = 0; row <= n_rows; ++row)
      mesh.vertices[vertex(column, row)] =
        carried ? carried(x[column], z[row]) : std::array<double, 2>{x[column], z[row]};
  }
  for (unsigned row = 0; row < n_rows; ++row)
    for (unsigned column = 0; column < n_columns; ++column)
    {
      const unsigned layer = layer_of_row[row];
      const auto     cell = static_cast<unsigned>(mesh.cells.size());
      mesh.cells.push_back({.vertices = {vertex(column, row), vertex(column + 1, row),
                                         vertex(column, row + 1), vertex(column + 1, row + 1)},
                            .part = parts(layer, 0.5 * (x[column] + x[column + 1])),
                            .column = column,
                            .row = row,
                            .strip = layer});
      const auto add = [&](bool on_rim, FaceNumber face, BoundaryId id) {
        if (on_rim)
          mesh.faces.push_back({cell, face, static_cast<int>(id)});
      };
      add(column == 0, left_face, BoundaryId::axis);
      add(column + 1 == n_columns, right_face, BoundaryId::side);
      add(row == 0, bottom_face, BoundaryId::base);
      add(row + 1 == n_rows, top_face, BoundaryId::top);
    }
  require_unfolded(mesh);
  return mesh;
}

std::vector<double> section_lines(double from, double to, double size, const std::vector<FinerStretch> &finer,
                                  std::vector<double> stops)
{
  stops.push_back(to);
  std::sort(stops.begin(), stops.end());
  std::vector<double> lines{from};
  for (const double stop : stops)
    if (stop > lines.back() && stop <= to)
    {
      const auto next = plan::graded(lines.back(), stop, size, finer);
      lines.insert(lines.end(), next.begin() + 1, next.end());
    }
  return lines;
}
} // namespace solemech::geometry
