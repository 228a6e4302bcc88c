// SPDX-License-Identifier: Apache-2.0
#include "tools/output/picture/section.h"

#include "tools/output/picture/outlines.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr double mm = 1e3;
constexpr double tile_size = 4; ///< [mm]

/// The half section and its mirror image as one mesh; nodes on the axis are shared.
struct WholeMesh
{
  std::vector<Point>        current, initial; ///< [mm]
  std::vector<NineNodeCell> cells;
  std::vector<int>          part;
};

WholeMesh whole_mesh(const solver::Picture &picture, const solver::Snapshot &shot)
{
  WholeMesh         mesh;
  const std::size_t n = shot.position.size();
  double            reach = 0;
  for (std::size_t i = 0; i < n; ++i)
  {
    const auto &x = shot.position[i], &u = shot.displacement[i];
    mesh.current.push_back({mm * x[0], mm * x[1]});
    mesh.initial.push_back({mm * (x[0] - u[0]), mm * (x[1] - u[1])});
    reach = std::max(reach, std::abs(mesh.initial.back()[0]));
  }
  std::vector<std::size_t> image(n);
  for (std::size_t i = 0; i < n; ++i)
    if (std::abs(mesh.initial[i][0]) < 1e-9 * reach)
      image[i] = i;
    else
    {
      image[i] = mesh.current.size();
      mesh.current.push_back({-mesh.current[i][0], mesh.current[i][1]});
      mesh.initial.push_back({-mesh.initial[i][0], mesh.initial[i][1]});
    }
  for (std::size_t c = 0; c < picture.cells.size(); ++c)
  {
    const auto &cell = picture.cells[c];
    mesh.cells.push_back(cell);
    // Columns swapped, so that the image keeps its sense of rotation.
    std::array<std::size_t, 9> mirrored;
    for (std::size_t i = 0; i < 9; ++i)
      mirrored[i] = image[cell[3 * (i / 3) + 2 - i % 3]];
    mesh.cells.push_back(mirrored);
    mesh.part.insert(mesh.part.end(), 2, picture.cell_part[c]);
  }
  return mesh;
}

/// Boundary polygons of the cells that `belongs` picks: outer boundaries turn left, holes turn right.
std::vector<Polygon> boundaries(const WholeMesh &mesh, const std::function<bool(int)> &belongs)
{
  std::vector<Polygon> polygons;
  for (const auto &loop : boundary_loops(mesh.cells, mesh.part, belongs))
  {
    Polygon &polygon = polygons.emplace_back();
    for (const std::size_t node : loop)
      polygon.push_back(mesh.current[node]);
  }
  return polygons;
}

double signed_area(const Polygon &polygon)
{
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
  {
    const auto &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return twice / 2;
}

/// The part of a stroke that lies in a triangle that turns left, by its undeformed corners; empty when none
/// does. Clipped side by side (Cyrus and Beck).
Polygon inside(const Point &from, const Point &to, const Point (&corner)[3])
{
  double enters = 0, leaves = 1;
  for (std::size_t i = 0; i < 3; ++i)
  {
    const Point &a = corner[i], &b = corner[(i + 1) % 3];
    const auto   left_of = [&](const Point &x) {
      return (b[0] - a[0]) * (x[1] - a[1]) - (b[1] - a[1]) * (x[0] - a[0]);
    };
    const double begins = left_of(from), ends = left_of(to);
    if (begins < 0 && ends < 0)
      return {};
    if (begins < 0)
      enters = std::max(enters, begins / (begins - ends));
    else if (ends < 0)
      leaves = std::min(leaves, begins / (begins - ends));
  }
  const auto at = [&](double t) {
    return Point{(1 - t) * from[0] + t * to[0], (1 - t) * from[1] + t * to[1]};
  };
  return leaves - enters > 1e-9 ? Polygon{at(enters), at(leaves)} : Polygon{};
}

/// Where a point of the undeformed triangle has moved.
Point moved(const Point &x, const Point (&from)[3], const Point (&to)[3])
{
  const double ax = from[1][0] - from[0][0], ay = from[1][1] - from[0][1], bx = from[2][0] - from[0][0],
               by = from[2][1] - from[0][1], dx = x[0] - from[0][0], dy = x[1] - from[0][1];
  const double all = ax * by - ay * bx, u = (dx * by - dy * bx) / all, v = (ax * dy - ay * dx) / all;
  return {to[0][0] + u * (to[1][0] - to[0][0]) + v * (to[2][0] - to[0][0]),
          to[0][1] + u * (to[1][1] - to[0][1]) + v * (to[2][1] - to[0][1])};
}

/// The tiles of a hatch that meet a triangle, cut to it and moved with it.
void add_strokes(const std::vector<Polygon> &lines, const Point (&from)[3], const Point (&to)[3],
                 std::vector<Polygon>       &strokes)
{
  // Off the grid, so that no line runs along the faces between parts or along the diagonals of cells.
  constexpr double scale = tile_size / hatch_tile, off[] = {0.37, 0.61};
  int              first[2], last[2];
  for (std::size_t i = 0; i < 2; ++i)
  {
    const auto [low, high] = std::minmax({from[0][i], from[1][i], from[2][i]});
    first[i] = static_cast<int>(std::floor((low - off[i]) / tile_size));
    last[i] = static_cast<int>(std::floor((high - off[i]) / tile_size));
  }
  for (int column = first[0]; column <= last[0]; ++column)
    for (int row = first[1]; row <= last[1]; ++row)
      for (const auto &line : lines)
        for (std::size_t i = 0; i + 1 < line.size(); ++i)
        {
          const auto place = [&](const Point &x) {
            return Point{off[0] + tile_size * column + scale * x[0], off[1] + tile_size * row + scale * x[1]};
          };
          auto stroke = inside(place(line[i]), place(line[i + 1]), from);
          for (auto &point : stroke)
            point = moved(point, from, to);
          if (!stroke.empty())
            strokes.push_back(std::move(stroke));
        }
}

std::vector<Polygon> hatch_strokes(const WholeMesh &mesh, int part, const Look &look)
{
  // Two triangles in each quarter of a nine-node cell.
  constexpr std::size_t corners[][3] = {{0, 1, 4}, {0, 4, 3}, {1, 2, 5}, {1, 5, 4},
                                        {3, 4, 7}, {3, 7, 6}, {4, 5, 8}, {4, 8, 7}};
  std::vector<Polygon>  strokes;
  for (std::size_t c = 0; c < mesh.cells.size(); ++c)
    for (const auto &triangle : corners)
      if (mesh.part[c] == part)
      {
        Point from[3], to[3];
        for (std::size_t i = 0; i < 3; ++i)
        {
          from[i] = mesh.initial[mesh.cells[c][triangle[i]]];
          to[i] = mesh.current[mesh.cells[c][triangle[i]]];
        }
        add_strokes(hatch_lines(look.hatch), from, to, strokes);
      }
  return strokes;
}

Polygon tup_polygon(const std::vector<std::array<double, 2>> &half, double touch)
{
  Polygon polygon;
  for (const auto &point : half)
    polygon.push_back({mm * point[0], mm * point[1] + touch});
  if (!polygon.empty() && polygon.front()[1] > polygon.back()[1])
    std::reverse(polygon.begin(), polygon.end());
  for (std::size_t i = polygon.size(); i-- > 0;)
    polygon.push_back({-polygon[i][0], polygon[i][1]});
  return polygon;
}
} // namespace

SectionDrawing draw_section(const solver::Picture &picture, const solver::Snapshot &shot,
                            const std::vector<Look> &looks)
{
  const WholeMesh mesh = whole_mesh(picture, shot);
  SectionDrawing  drawing;
  for (int part = 0; part < static_cast<int>(picture.part_names.size()); ++part)
  {
    PartDrawing one;
    one.part = part;
    one.look = looks[static_cast<std::size_t>(part)];
    for (auto &polygon : boundaries(mesh, [&](int p) { return p == part; }))
      if (const double area = signed_area(polygon); area > 0)
      {
        one.area = std::max(one.area, area);
        one.outlines.push_back(std::move(polygon));
      }
    if (one.outlines.empty())
      continue;
    one.hatch = hatch_strokes(mesh, part, one.look);
    drawing.parts.push_back(std::move(one));
  }
  std::stable_sort(drawing.parts.begin(), drawing.parts.end(),
                   [](const auto &a, const auto &b) { return a.area > b.area; });
  for (auto &polygon : boundaries(mesh, [](int) { return true; }))
    if (signed_area(polygon) < 0)
      drawing.cavities.push_back(std::move(polygon));
  for (const auto &node : mesh.current)
  {
    drawing.width = std::max(drawing.width, 2 * node[0]);
    drawing.height = std::max(drawing.height, node[1]);
  }
  drawing.touch = mm * shot.tup_position;
  drawing.tup = tup_polygon(picture.tup_outline, drawing.touch);
  return drawing;
}
} // namespace solemech::tools
