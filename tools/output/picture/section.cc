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

/// Strokes along the lines  direction . X = k distance  of the undeformed stack, k whole.
void add_strokes(const WholeMesh &mesh, int part, const Point &direction, double distance,
                 std::vector<Polygon> &strokes)
{
  // Two triangles in each quarter of a nine-node cell.
  constexpr std::size_t corners[][3] = {{0, 1, 4}, {0, 4, 3}, {1, 2, 5}, {1, 5, 4},
                                        {3, 4, 7}, {3, 7, 6}, {4, 5, 8}, {4, 8, 7}};
  for (std::size_t c = 0; c < mesh.cells.size(); ++c)
  {
    if (mesh.part[c] != part)
      continue;
    for (const auto &triangle : corners)
    {
      double level[3];
      Point  place[3];
      for (std::size_t i = 0; i < 3; ++i)
      {
        const std::size_t node = mesh.cells[c][triangle[i]];
        // Half a distance off, so that no line runs along the faces between parts.
        level[i] =
          (direction[0] * mesh.initial[node][0] + direction[1] * mesh.initial[node][1]) / distance + 0.4999;
        place[i] = mesh.current[node];
      }
      const double low = std::min({level[0], level[1], level[2]}),
                   high = std::max({level[0], level[1], level[2]});
      for (double k = std::ceil(low); k < high; ++k)
      {
        Polygon stroke;
        for (std::size_t i = 0; i < 3; ++i)
        {
          const std::size_t j = (i + 1) % 3;
          if ((level[i] < k) != (level[j] < k))
          {
            const double w = (k - level[i]) / (level[j] - level[i]);
            stroke.push_back(
              {(1 - w) * place[i][0] + w * place[j][0], (1 - w) * place[i][1] + w * place[j][1]});
          }
        }
        if (stroke.size() == 2)
          strokes.push_back(std::move(stroke));
      }
    }
  }
}

std::vector<Polygon> hatch_strokes(const WholeMesh &mesh, int part)
{
  const double         half = std::sqrt(0.5), distance = hatch_distance(part);
  const Hatch          hatch = hatch_of(part);
  std::vector<Polygon> strokes;
  if (hatch == Hatch::rising || hatch == Hatch::crossed)
    add_strokes(mesh, part, {-half, half}, distance, strokes);
  if (hatch == Hatch::falling || hatch == Hatch::crossed)
    add_strokes(mesh, part, {half, half}, distance, strokes);
  if (hatch == Hatch::level)
    add_strokes(mesh, part, {0, 1}, distance, strokes);
  if (hatch == Hatch::upright)
    add_strokes(mesh, part, {1, 0}, distance, strokes);
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

Hatch hatch_of(int part)
{
  constexpr Hatch order[] = {Hatch::upright, Hatch::rising, Hatch::falling, Hatch::crossed, Hatch::level};
  return order[part % 5];
}

double hatch_distance(int part)
{
  return part % 2 ? 3.0 : 2.0;
}

SectionDrawing draw_section(const solver::Picture &picture, const solver::Snapshot &shot)
{
  const WholeMesh mesh = whole_mesh(picture, shot);
  SectionDrawing  drawing;
  for (int part = 0; part < static_cast<int>(picture.part_names.size()); ++part)
  {
    PartDrawing one;
    one.part = part;
    for (auto &polygon : boundaries(mesh, [&](int p) { return p == part; }))
      if (const double area = signed_area(polygon); area > 0)
      {
        one.area = std::max(one.area, area);
        one.outlines.push_back(std::move(polygon));
      }
    if (one.outlines.empty())
      continue;
    one.hatch = hatch_strokes(mesh, part);
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
