// SPDX-License-Identifier: Apache-2.0
// Columns over a plan and long sections: volumes in closed form (constant layers, a wedge, a stack on an
// arc), a closed surface with its normals outwards, what is refused.
#include "geometry/errors.h"
#include "geometry/sole_mesh/column_mesh.h"
#include "geometry/sole_mesh/section_mesh.h"
#include "tests/support/catch.h"
#include "tests/support/drawn_soles.h"
#include "tests/support/even_lines.h"

#include <map>

using namespace solemech::geometry;
using namespace solemech::tests;

namespace
{
double volume(const ColumnMesh &mesh)
{
  double sum = 0;
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
    sum += cell_volume(mesh, c);
  return sum;
}

double area(const PlugMesh &mesh)
{
  double sum = 0;
  for (const auto &cell : mesh.cells)
  {
    const auto &v = cell.vertices;
    const auto  at = [&](unsigned k) { return mesh.vertices[v[k]]; };
    sum +=
      0.5 * ((at(3)[0] - at(0)[0]) * (at(2)[1] - at(1)[1]) - (at(3)[1] - at(0)[1]) * (at(2)[0] - at(1)[0]));
  }
  return sum;
}

/// A stack bent upwards about a line at this height: x of the flat stack is that of its underside.
CarriedBy on_an_arc(double radius)
{
  return [=](double x, double z) -> std::array<double, 2> {
    const double angle = std::asin(x / radius);
    return {(radius - z) * std::sin(angle), radius - (radius - z) * std::cos(angle)};
  };
}

/// Volume of such a stack over an angle, per width: ring between two circles.
double ring_area(double radius, double height, double angle)
{
  return angle * (radius * height - 0.5 * height * height);
}

/// Half the cross product of the diagonals: area and direction of a face, also of a twisted one.
SolidPoint area_vector(const ColumnMesh &mesh, const HexFace &face)
{
  const auto v = face_vertices(mesh.cells[face.cell], face.face);
  SolidPoint a{}, b{};
  for (unsigned c = 0; c < 3; ++c)
  {
    a[c] = mesh.vertices[v[2]][c] - mesh.vertices[v[0]][c];
    b[c] = mesh.vertices[v[3]][c] - mesh.vertices[v[1]][c];
  }
  return {0.5 * (a[1] * b[2] - a[2] * b[1]), 0.5 * (a[2] * b[0] - a[0] * b[2]),
          0.5 * (a[0] * b[1] - a[1] * b[0])};
}
} // namespace

TEST_CASE("layers of constant thickness have area times thickness", "[sole]")
{
  const auto plan =
    make_plan_mesh(ellipse(0.14, 0.05), {.rings = {ring_along_circle({0.02, 0}, 0.02, 3e-3)}});
  double covered = 0;
  for (unsigned c = 0; c < plan.cells.size(); ++c)
    covered += cell_area(plan, c);
  const std::vector<double> faces{0, 3e-3, 4.2e-3, 20e-3};
  const auto mesh = make_column_mesh(plan, [&](const PlanPoint &) { return faces; }, {1, 1, 2});
  CHECK(mesh.cells.size() == 4 * plan.cells.size());
  std::array<double, 3> by_layer{};
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
  {
    CHECK(cell_volume(mesh, c) > 0);
    by_layer[mesh.cells[c].layer] += cell_volume(mesh, c);
  }
  for (unsigned layer = 0; layer < 3; ++layer)
    CHECK(by_layer[layer] == Approx(covered * (faces[layer + 1] - faces[layer])).epsilon(1e-12));
}

TEST_CASE("a wedge has its mean thickness", "[sole]")
{
  const auto plan = make_rectangle_plan(even_lines(0, 0.2, 9), even_lines(-0.04, 0.05, 4),
                                        {ring_along_circle({0.1, 0}, 0.02, 3e-3)});
  REQUIRE(plan.rings_fitted[0]);
  const auto   mesh = make_column_mesh(plan,
                                       [](const PlanPoint &p) -> std::vector<double> {
                                       return {0, 0.01 + 0.05 * p[0] + 0.03 * p[1]};
                                     },
                                       {3});
  const double mean = 0.01 + 0.05 * 0.1 + 0.03 * 0.005; // at the middle of the rectangle
  CHECK(volume(mesh) == Approx(0.2 * 0.09 * mean).epsilon(1e-12));
}

TEST_CASE("the surface of the columns is closed and looks outwards", "[sole]")
{
  std::mt19937 random(2);
  const auto   sole = drawn_sole(random);
  const auto   plan = make_plan_mesh(sole.outline, {});
  const auto   mesh = make_column_mesh(
      plan,
      [](const PlanPoint &p) -> std::vector<double> {
      return {0, 4e-3, 0.03 - 0.05 * p[0]};
    },
      {1, 2},
      [](double x, double z) -> std::array<double, 2> {
      return {x, z + x * x};
    });
  SolidPoint            sum{};
  std::array<double, 3> size{};
  for (const auto &face : mesh.faces)
  {
    const auto a = area_vector(mesh, face);
    for (unsigned c = 0; c < 3; ++c)
      sum[c] += a[c];
    size[static_cast<unsigned>(face.side)] += std::hypot(a[0], a[1], a[2]);
    if (face.side != SoleSide::side)
      CHECK((face.side == SoleSide::top ? a[2] : -a[2]) > 0);
  }
  for (const double component : sum)
    CHECK(std::abs(component) < 1e-12 * size[0]);
  CHECK(mesh.faces.size() == 2 * plan.cells.size() + 3 * plan.rim.size());

  // each inner face is shared by two cells that see it from either side
  std::map<std::array<unsigned, 4>, unsigned> seen;
  for (const auto &cell : mesh.cells)
    for (unsigned face = 0; face < 6; ++face)
    {
      auto vertices = face_vertices(cell, face);
      std::sort(vertices.begin(), vertices.end());
      ++seen[vertices];
    }
  unsigned n_outer = 0;
  for (const auto &[vertices, n] : seen)
    n_outer += n == 1;
  CHECK(n_outer == mesh.faces.size());
}

TEST_CASE("a stack carried by an arc keeps the volume of a piece of a ring", "[sole]")
{
  constexpr double radius = 0.3, height = 0.02, length = 0.1;
  const double     exact = ring_area(radius, height, std::asin(length / radius));
  const auto       error = [&](unsigned n) {
    const auto mesh = make_column_mesh(
            make_rectangle_plan(even_lines(0, length, n), {0, 0.05}),
            [](const PlanPoint &) {
        return std::vector<double>{0, height};
      },
            {2}, on_an_arc(radius));
    return std::abs(volume(mesh) / (0.05 * exact) - 1);
  };
  CHECK(error(10) < 2.5e-4); // a chord over 2 degrees is short by that angle squared over 6, 1.9e-4
  CHECK(error(10) / error(20) == Approx(4).epsilon(0.02)); // chords: second order
}

TEST_CASE("a section is a slice of the columns", "[sole]")
{
  constexpr double radius = 0.3, height = 0.02, length = 0.1;
  const auto       lines = section_lines(0, length, 2e-3, {{0.04, 0.06, 1e-3}}, {0.0333});
  CHECK(std::count(lines.begin(), lines.end(), 0.0333) == 1);
  for (std::size_t i = 1; i < lines.size(); ++i)
  {
    CHECK(lines[i] > lines[i - 1]);
    CHECK(lines[i] - lines[i - 1] <= 2e-3 * (1 + 1e-9));
    if (lines[i - 1] > 0.04 && lines[i] < 0.06)
      CHECK(lines[i] - lines[i - 1] <= 1e-3 * (1 + 1e-3)); // sizes are summed in a thousand steps
  }
  const auto heights = [](double) { return std::vector<double>{0, 5e-3, height}; };
  const auto parts = [](unsigned layer, double x) {
    return layer == 1 && x > 0.05 ? 0 : static_cast<int>(layer);
  };
  const auto flat = make_section_mesh(lines, heights, {1, 2}, {"rubber", "foam"}, parts);
  CHECK(area(flat) == Approx(length * height).epsilon(1e-12));
  CHECK(flat.faces.size() == 2 * (lines.size() - 1) + 6);
  double foam = 0;
  for (const auto &cell : flat.cells)
    foam += cell.part == 1 ? flat.vertices[cell.vertices[1]][0] - flat.vertices[cell.vertices[0]][0] : 0;
  CHECK(foam == Approx(2 * 0.05).epsilon(0.02)); // two rows, up to the line nearest to the place
  const auto bent = make_section_mesh(lines, heights, {1, 2}, {"rubber", "foam"}, parts, on_an_arc(radius));
  CHECK(area(bent) == Approx(ring_area(radius, height, std::asin(length / radius))).epsilon(1e-5));
}

TEST_CASE("layers without thickness and stacks bent too sharply are refused with the place", "[sole]")
{
  const auto plan = make_rectangle_plan(even_lines(0, 0.1, 10), {0, 0.05});
  const auto thinning = [](const PlanPoint &p) -> std::vector<double> { return {0, 0.01 - 0.12 * p[0]}; };
  CHECK_THROWS_WITH(make_column_mesh(plan, thinning, {1}),
                    Catch::Contains("layer 1") && Catch::Contains("from the heel"));
  const auto thick = [](const PlanPoint &) { return std::vector<double>{0, 0.2}; };
  CHECK_THROWS_AS(make_column_mesh(plan, thick, {1}, on_an_arc(0.15)), InvalidGeometry);
  CHECK_THROWS_AS(make_section_mesh(
                    {0, 0.05, 0.1},
                    [](double) {
                      return std::vector<double>{0, 0.2};
                    },
                    {1}, {"foam"}, [](unsigned, double) { return 0; }, on_an_arc(0.15)),
                  InvalidGeometry);
}
