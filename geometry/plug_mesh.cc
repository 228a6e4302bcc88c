// SPDX-License-Identifier: Apache-2.0
#include "geometry/plug_mesh.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

namespace solemech::geometry
{
namespace
{
constexpr int      void_part = -1;
constexpr unsigned none = static_cast<unsigned>(-1);

void require_increasing(const std::vector<double> &lines, const char *axis)
{
  if (lines.size() < 2 || lines.front() != 0 ||
      std::adjacent_find(lines.begin(), lines.end(), std::greater_equal<>()) != lines.end())
    throw std::invalid_argument(std::string("mesh lines in ") + axis + " must start at 0 and increase");
}

void require_line(const std::vector<double> &lines, double position, const char *axis)
{
  const double tolerance = 1e-8 * lines.back();
  if (std::none_of(lines.begin(), lines.end(),
                   [&](double line) { return std::abs(line - position) < tolerance; }))
    throw std::invalid_argument(std::string("mesh lines in ") + axis + " miss the part boundary at " +
                                std::to_string(position * 1e3) + " mm");
}

// Lines must carry every boundary between parts, or cells would straddle two of them.
void require_fitting(const PlugOutline &outline, const GridLines &lines)
{
  require_increasing(lines.r, "r");
  require_increasing(lines.z, "z");
  require_line(lines.r, outline.radius, "r");
  require_line(lines.r, outline.radius + outline.wall_thickness, "r");
  double z = 0;
  for (const Strip &strip : outline.strips)
  {
    for (const Zone &zone : strip.zones)
      require_line(lines.r, zone.outer_radius, "r");
    if (strip.chamber)
    {
      const Cavity hole = cavity(strip);
      require_line(lines.r, hole.outer_radius, "r");
      require_line(lines.r, strip.chamber->outer_radius, "r");
      require_line(lines.z, z + hole.bottom, "z");
      require_line(lines.z, z + hole.top, "z");
    }
    z += strip.thickness;
    require_line(lines.z, z, "z");
  }
}

// Part at radius r and height z above the lower face of the strip; void_part in a chamber.
int part_at(const PlugOutline &outline, const Strip &strip, double r, double z)
{
  if (r > outline.radius)
    return outline.wall_part;
  if (strip.chamber && r < strip.chamber->outer_radius)
  {
    const Cavity hole = cavity(strip);
    const bool   gas = r < hole.outer_radius && z > hole.bottom && z < hole.top;
    return gas ? void_part : strip.chamber->film_part;
  }
  for (const Zone &zone : strip.zones)
    if (r < zone.outer_radius)
      return zone.part;
  return strip.zones.back().part;
}

unsigned strip_at(const PlugOutline &outline, double z)
{
  double top = 0;
  for (unsigned s = 0; s < outline.strips.size(); ++s)
  {
    top += outline.strips[s].thickness;
    if (z < top)
      return s;
  }
  return static_cast<unsigned>(outline.strips.size()) - 1;
}

// The grid while cells and faces are collected: which cell stands at (column, row).
struct Grid
{
  unsigned              n_columns, n_rows;
  std::vector<unsigned> cell_at; // `none` in voids

  unsigned &at(unsigned column, unsigned row) { return cell_at[row * n_columns + column]; }
};

void add_cells(PlugMesh &mesh, Grid &grid, const PlugOutline &outline)
{
  const auto &[r, z] = mesh.lines;
  std::vector<unsigned> vertex_at(r.size() * z.size(), none);
  const auto            vertex = [&](unsigned i, unsigned j) {
    unsigned &number = vertex_at[j * r.size() + i];
    if (number == none)
    {
      number = static_cast<unsigned>(mesh.vertices.size());
      mesh.vertices.push_back({r[i], z[j]});
    }
    return number;
  };

  for (unsigned row = 0; row < grid.n_rows; ++row)
  {
    const double   middle = (z[row] + z[row + 1]) / 2;
    const unsigned s = strip_at(outline, middle);
    double         bottom = 0;
    for (unsigned below = 0; below < s; ++below)
      bottom += outline.strips[below].thickness;
    for (unsigned column = 0; column < grid.n_columns; ++column)
    {
      const double radius = (r[column] + r[column + 1]) / 2;
      const int    part = part_at(outline, outline.strips[s], radius, middle - bottom);
      if (part == void_part)
        continue;
      grid.at(column, row) = static_cast<unsigned>(mesh.cells.size());
      mesh.cells.push_back({.vertices = {vertex(column, row), vertex(column + 1, row),
                                         vertex(column, row + 1), vertex(column + 1, row + 1)},
                            .part = part,
                            .column = column,
                            .row = row,
                            .strip = s});
    }
  }
}

// Faces without a neighbour: on the rim of the grid, or towards a void, which always lies in the own strip.
void add_faces(PlugMesh &mesh, Grid &grid, const std::vector<int> &chamber_of_strip)
{
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
  {
    const auto &[vertices, part, column, row, strip] = mesh.cells[c];
    const auto add = [&, c = c, strip = strip](FaceNumber face, bool on_rim, BoundaryId rim,
                                               unsigned next_column, unsigned next_row) {
      if (on_rim)
        mesh.faces.push_back({c, face, static_cast<int>(rim)});
      else if (grid.at(next_column, next_row) == none)
        mesh.faces.push_back(
          {c, face, static_cast<int>(BoundaryId::chamber_first) + chamber_of_strip[strip]});
    };
    add(left_face, column == 0, BoundaryId::axis, column - 1, row);
    add(right_face, column + 1 == grid.n_columns, BoundaryId::side, column + 1, row);
    add(bottom_face, row == 0, BoundaryId::base, column, row - 1);
    add(top_face, row + 1 == grid.n_rows, BoundaryId::top, column, row + 1);
  }
}

// Order of travel round the gas: floor outwards, wall upwards, ceiling inwards.
std::array<int, 3> travel_key(const PlugMesh &mesh, unsigned face)
{
  const BoundaryFace &wetted = mesh.faces[face];
  const PlugCell     &cell = mesh.cells[wetted.cell];
  const int           column = static_cast<int>(cell.column), row = static_cast<int>(cell.row);
  switch (wetted.face)
  {
  case top_face:
    return {0, column, row};
  case left_face:
    return {1, row, column};
  default:
    return {2, -column, row};
  }
}

ChamberMesh chamber_mesh(const PlugMesh &mesh, const PlugOutline &outline, unsigned strip, int id)
{
  ChamberMesh chamber;
  chamber.strip = strip;
  for (unsigned f = 0; f < mesh.faces.size(); ++f)
    if (mesh.faces[f].id == id)
      chamber.wetted_faces.push_back(f);
  std::sort(chamber.wetted_faces.begin(), chamber.wetted_faces.end(),
            [&](unsigned a, unsigned b) { return travel_key(mesh, a) < travel_key(mesh, b); });

  // floor and ceiling cover the same columns, in opposite order
  const auto &wetted = chamber.wetted_faces;
  for (std::size_t i = 0; i < wetted.size() && mesh.faces[wetted[i]].face == top_face; ++i)
    chamber.facing.emplace_back(wetted[i], wetted[wetted.size() - 1 - i]);

  const AirUnitOutline &unit = *outline.strips[strip].chamber;
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
    if (mesh.cells[c].strip == strip &&
        mesh.vertices[mesh.cells[c].vertices[0]][0] < unit.outer_radius * (1 - 1e-9))
      chamber.film_cells.push_back(c);

  const Cavity hole = cavity(outline.strips[strip]);
  chamber.drawn_area = hole.outer_radius * (hole.top - hole.bottom);
  chamber.drawn_volume = std::numbers::pi * hole.outer_radius * chamber.drawn_area;
  return chamber;
}
} // namespace

std::array<unsigned, 2> face_vertices(const PlugCell &cell, unsigned face)
{
  const auto &v = cell.vertices;
  switch (face)
  {
  case left_face:
    return {v[0], v[2]};
  case right_face:
    return {v[3], v[1]};
  case bottom_face:
    return {v[1], v[0]};
  default:
    return {v[2], v[3]};
  }
}

PlugMesh make_plug_mesh(const PlugOutline &outline, const GridLines &lines)
{
  check(outline);
  require_fitting(outline, lines);
  PlugMesh mesh;
  mesh.lines = lines;
  mesh.part_names = outline.part_names;
  Grid grid{.n_columns = static_cast<unsigned>(lines.r.size()) - 1,
            .n_rows = static_cast<unsigned>(lines.z.size()) - 1,
            .cell_at = std::vector<unsigned>((lines.r.size() - 1) * (lines.z.size() - 1), none)};
  add_cells(mesh, grid, outline);

  std::vector<int>      chamber_of_strip(outline.strips.size(), -1);
  std::vector<unsigned> air_strips;
  for (unsigned s = 0; s < outline.strips.size(); ++s)
    if (outline.strips[s].chamber)
    {
      chamber_of_strip[s] = static_cast<int>(air_strips.size());
      air_strips.push_back(s);
    }
  add_faces(mesh, grid, chamber_of_strip);
  for (unsigned c = 0; c < air_strips.size(); ++c)
    mesh.chambers.push_back(chamber_mesh(mesh, outline, air_strips[c],
                                         static_cast<int>(BoundaryId::chamber_first) + static_cast<int>(c)));
  return mesh;
}

PlugMesh make_plug_mesh(const PlugOutline &outline, MeshSize size)
{
  return make_plug_mesh(outline, graded_lines(outline, size));
}
} // namespace solemech::geometry
