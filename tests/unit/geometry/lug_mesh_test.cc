// SPDX-License-Identifier: Apache-2.0
// Lug sections: the outline's closed forms, area of the mesh against that of the drawing, no folded cell,
// worn faces.
#include "geometry/errors.h"
#include "geometry/lug_mesh.h"
#include "tests/support/catch.h"

#include <cmath>
#include <numbers>

using namespace solemech::geometry;

namespace
{
LugOutline sample()
{
  return {.width = 4e-3,
          .height = 3e-3,
          .spacing = 8e-3,
          .skin = 2e-3,
          .draft = 0.1,
          .edge_radius = 0.25e-3,
          .fillet = 0.5e-3,
          .worn_face = {}};
}

double area_of(const PlugMesh &mesh, double &least)
{
  double area = 0;
  least = 1e300;
  for (const auto &cell : mesh.cells)
  {
    const auto &v = cell.vertices;
    const auto  at = [&](unsigned i) { return mesh.vertices[v[i]]; };
    const auto  cross = [&](unsigned a, unsigned b, unsigned c) {
      return (at(b)[0] - at(a)[0]) * (at(c)[1] - at(a)[1]) - (at(b)[1] - at(a)[1]) * (at(c)[0] - at(a)[0]);
    };
    area += 0.5 * (cross(0, 1, 2) + cross(3, 2, 1));
    // Determinant of the cell's map, at its four inner integration points relative to its size.
    for (const double s : {0.113, 0.5, 0.887})
      for (const double t : {0.113, 0.5, 0.887})
      {
        double j[2][2];
        for (unsigned c = 0; c < 2; ++c)
        {
          j[c][0] = (1 - t) * (at(1)[c] - at(0)[c]) + t * (at(3)[c] - at(2)[c]);
          j[c][1] = (1 - s) * (at(2)[c] - at(0)[c]) + s * (at(3)[c] - at(1)[c]);
        }
        const double sides = std::hypot(j[0][0], j[1][0]) * std::hypot(j[0][1], j[1][1]);
        least = std::min(least, (j[0][0] * j[1][1] - j[0][1] * j[1][0]) / sides);
      }
  }
  return area;
}

/// Section area of the drawing by the trapezoid rule over its height.
double drawn_area(const LugOutline &outline)
{
  constexpr int n = 40000;
  double        area = outline.skin * outline.spacing;
  for (int i = 0; i < n; ++i)
    area += 2 * half_width_at(outline, outline.skin + (i + 0.5) / n * outline.height) * outline.height / n;
  return area;
}
} // namespace

TEST_CASE("an upright lug has the width, height and arcs that are asked for", "[lug]")
{
  auto outline = sample();
  outline.draft = 0;
  const auto wall = lug_wall(outline);
  CHECK(wall.edge_center[0] == Approx(1.75e-3).epsilon(1e-12));
  CHECK(wall.wall_top[1] == Approx(4.75e-3).epsilon(1e-12));
  CHECK(wall.toe[0] == Approx(2.5e-3).epsilon(1e-12));
  CHECK(half_width_at(outline, 3.5e-3) == Approx(2e-3).epsilon(1e-12));
  CHECK(surface_height_at(outline, 0) == Approx(5e-3).epsilon(1e-12));
  CHECK(surface_height_at(outline, 3e-3) == Approx(2e-3).epsilon(1e-12));
  // On the 45 degrees of the edge arc.
  const double x = 1.75e-3 + 0.25e-3 / std::numbers::sqrt2;
  CHECK(surface_height_at(outline, x) == Approx(4.75e-3 + 0.25e-3 / std::numbers::sqrt2).epsilon(1e-12));
}

TEST_CASE("height and half width are inverse to each other on wall and arcs", "[lug]")
{
  const auto outline = sample();
  for (const double z : {2.1e-3, 2.4e-3, 3e-3, 4e-3, 4.8e-3, 4.95e-3})
    CHECK(surface_height_at(outline, half_width_at(outline, z)) == Approx(z).epsilon(1e-9));
}

TEST_CASE("the mesh of a lug fills its outline without folded cells", "[lug]")
{
  const auto outline = sample();
  double     last = 1;
  for (const double level : {0.5, 1.0, 2.0, 4.0})
  {
    double       least = 0;
    const auto   lug = make_lug_mesh(outline, level);
    const double error = std::abs(area_of(lug.mesh, least) / drawn_area(outline) - 1);
    INFO("level " << level << ", " << lug.mesh.cells.size() << " cells, area off by " << error
                  << ", least sine " << least);
    // The corner of the lug's block lies half way round an arc, where sides meet at nearly 180 degrees: the
    // sine at the integration point next to it tends to about 0.1.
    CHECK(least > 0.05);
    CHECK(error < 2e-3 / (level * level)); // chords of arcs: second order
    CHECK(error < last);
    last = error;
  }
}

TEST_CASE("an edge arc has at least two face cells at the default size", "[lug]")
{
  const auto outline = sample();
  const auto lug = make_lug_mesh(outline, 1);
  const auto wall = lug_wall(outline);
  unsigned   n_on_arc = 0;
  for (const unsigned f : lug.face)
  {
    const auto &face = lug.mesh.faces[f];
    const auto  v = face_vertices(lug.mesh.cells[face.cell], face.face);
    n_on_arc += 0.5 * (lug.mesh.vertices[v[0]][0] + lug.mesh.vertices[v[1]][0]) > wall.edge_center[0];
  }
  CHECK(n_on_arc >= 2);
}

TEST_CASE("a worn face replaces the drawn one and shortens the walls", "[lug]")
{
  auto         outline = sample();
  const double left = half_width_at(outline, 4.2e-3), right = half_width_at(outline, 4.6e-3);
  outline.worn_face = {{-left, 4.2e-3}, {0, 4.5e-3}, {right, 4.6e-3}};
  double       least = 0;
  const auto   lug = make_lug_mesh(outline, 2);
  const double area = area_of(lug.mesh, least);
  CHECK(least > 0.1);
  // Fresh area below the chord's ends minus trapezoids: shoelace over the drawn outline.
  constexpr int n = 20000;
  double        expected = outline.skin * outline.spacing;
  for (int i = 0; i < n; ++i)
  {
    const double x = -outline.spacing / 2 + outline.spacing * (i + 0.5) / n;
    double       top = surface_height_at(outline, x);
    const auto  &w = outline.worn_face;
    for (std::size_t k = 1; k < w.size(); ++k)
      if (x >= w[k - 1][0] && x <= w[k][0])
        top =
          std::min(top, w[k - 1][1] + (w[k][1] - w[k - 1][1]) * (x - w[k - 1][0]) / (w[k][0] - w[k - 1][0]));
    expected += (top - outline.skin) * outline.spacing / n;
  }
  CHECK(area == Approx(expected).epsilon(1e-3));
}

TEST_CASE("lugs that cannot be built are refused with the dimension and its range", "[lug]")
{
  auto outline = sample();
  outline.edge_radius = 0;
  CHECK_THROWS_WITH(make_lug_mesh(outline, 1), Catch::Contains("edge radius of the lug is 0 mm"));
  outline = sample(), outline.spacing = 4.5e-3;
  CHECK_THROWS_WITH(make_lug_mesh(outline, 1), Catch::Contains("lug spacing"));
  outline = sample(), outline.draft = 1;
  CHECK_THROWS_AS(make_lug_mesh(outline, 1), InvalidGeometry);
  outline = sample(), outline.worn_face = {{-2e-3, 1.9e-3}, {2e-3, 1.9e-3}};
  CHECK_THROWS_WITH(make_lug_mesh(outline, 1), Catch::Contains("worn off"));
}
