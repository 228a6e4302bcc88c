// SPDX-License-Identifier: Apache-2.0
#include "solver/results/picture_record.h"

#include "solver/results/hdf5_handle.h"

namespace solemech::solver
{
using namespace hdf5;

namespace
{
/// One member of Snapshot that holds four values a cell.
struct CornerField
{
  const char         *name;
  std::vector<double> Snapshot::*values;
  const char                    *unit;
  const char                    *meaning;
};
const CornerField corner_fields[] = {
  {"vertical_stress", &Snapshot::vertical_stress, "Pa", "Cauchy stress along the fall, tension positive"},
  {"mean_stress", &Snapshot::mean_stress, "Pa", "mean of the three normal Cauchy stresses"},
  {"shear_stress", &Snapshot::shear_stress, "Pa", "Cauchy shear stress in the drawn plane"},
  {"vertical_stretch", &Snapshot::vertical_stretch, "1", "current over initial length along the fall"},
  {"energy_density", &Snapshot::energy_density, "J/m3", "energy held, per initial volume"},
  {"dissipated_density", &Snapshot::dissipated_density, "J/m3", "energy lost so far, per initial volume"}};

Numbers flat(const std::vector<std::array<double, 2>> &points)
{
  Numbers values;
  values.reserve(2 * points.size());
  for (const auto &point : points)
    values.insert(values.end(), point.begin(), point.end());
  return values;
}

std::vector<std::array<double, 2>> points_of(const Numbers &values, std::size_t begin, std::size_t n)
{
  std::vector<std::array<double, 2>> points(n);
  for (std::size_t i = 0; i < n; ++i)
    points[i] = {values.at(begin + 2 * i), values.at(begin + 2 * i + 1)};
  return points;
}

} // namespace

void write_picture(hid_t run, const Picture &picture)
{
  const Handle           group = create_group(run, "picture");
  std::vector<long long> cells, parts(picture.cell_part.begin(), picture.cell_part.end());
  for (const auto &cell : picture.cells)
    cells.insert(cells.end(), cell.begin(), cell.end());
  write_integers(group, "cells", cells, {picture.cells.size(), 9});
  write_integers(group, "cell_part", parts, {parts.size()});
  write_texts(group, "part_names", picture.part_names);
  write_numbers(group, "tup_outline", flat(picture.tup_outline), {picture.tup_outline.size(), 2}, "m",
                "right half of the tup, relative to its lowest point");

  const auto   &shots = picture.snapshots;
  const Handle  inner = create_group(group, "snapshots");
  const hsize_t n = shots.size(), n_nodes = n ? shots[0].position.size() : 0;
  Numbers       times, heights, positions, displacements;
  for (const auto &shot : shots)
  {
    if (shot.position.size() != n_nodes)
      throw ResultsError("the snapshots of a picture differ in their number of nodes; nothing was written");
    times.push_back(shot.time);
    heights.push_back(shot.tup_position);
    const Numbers x = flat(shot.position), u = flat(shot.displacement);
    positions.insert(positions.end(), x.begin(), x.end());
    displacements.insert(displacements.end(), u.begin(), u.end());
  }
  write_numbers(inner, "time", times, {n}, "s");
  write_numbers(inner, "tup_position", heights, {n}, "m", "height of the tup's lowest point");
  write_numbers(inner, "position", positions, {n, n_nodes, 2}, "m", "current nodes (across, up)");
  write_numbers(inner, "displacement", displacements, {n, n_nodes, 2}, "m", "of the nodes");
  for (const auto &field : corner_fields)
  {
    Numbers values;
    for (const auto &shot : shots)
      values.insert(values.end(), (shot.*field.values).begin(), (shot.*field.values).end());
    write_numbers(inner, field.name, values, {n, picture.cells.size(), 4}, field.unit, field.meaning);
  }
}

Picture read_picture(hid_t run)
{
  const Handle group = open_group(run, "picture");
  Picture      picture;
  const auto   cells = read_integers(group, "cells"), parts = read_integers(group, "cell_part");
  picture.part_names = read_texts(group, "part_names");
  if (cells.size() != 9 * parts.size())
    damaged("cells and parts do not match");
  picture.cells.resize(parts.size());
  for (std::size_t i = 0; i < cells.size(); ++i)
    picture.cells[i / 9][i % 9] = static_cast<std::size_t>(cells[i]);
  picture.cell_part.assign(parts.begin(), parts.end());
  const Numbers outline = read_numbers(group, "tup_outline");
  picture.tup_outline = points_of(outline, 0, outline.size() / 2);

  const Handle  inner = open_group(group, "snapshots");
  const Numbers times = read_numbers(inner, "time"), heights = read_numbers(inner, "tup_position");
  Shape         shape;
  const Numbers positions = read_numbers(inner, "position", &shape);
  const Numbers displacements = read_numbers(inner, "displacement");
  if (shape.size() != 3 || shape[0] != times.size() || heights.size() != times.size() ||
      displacements.size() != positions.size())
    damaged("snapshots do not match");
  const std::size_t n_nodes = shape[1], n_corners = 4 * parts.size();
  picture.snapshots.resize(times.size());
  for (std::size_t i = 0; i < times.size(); ++i)
  {
    picture.snapshots[i].time = times[i];
    picture.snapshots[i].tup_position = heights[i];
    picture.snapshots[i].position = points_of(positions, 2 * i * n_nodes, n_nodes);
    picture.snapshots[i].displacement = points_of(displacements, 2 * i * n_nodes, n_nodes);
  }
  for (const auto &field : corner_fields)
  {
    const Numbers values = read_numbers(inner, field.name);
    if (values.size() != times.size() * n_corners)
      damaged(std::string("field ") + field.name);
    for (std::size_t i = 0; i < times.size(); ++i)
      (picture.snapshots[i].*field.values)
        .assign(values.begin() + static_cast<long>(i * n_corners),
                values.begin() + static_cast<long>((i + 1) * n_corners));
  }
  return picture;
}
} // namespace solemech::solver
