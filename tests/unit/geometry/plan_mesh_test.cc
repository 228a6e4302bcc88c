// SPDX-License-Identifier: Apache-2.0
// Plan meshes: area and moments of an ellipse (closed forms), corners of cells over many outlines, lines and
// rings that were asked for, a ring that leaves a rectangle, outlines that are refused.
#include "geometry/errors.h"
#include "geometry/sole_mesh/plan_mesh.h"
#include "tests/support/catch.h"
#include "tests/support/drawn_soles.h"

#include <set>

using namespace solemech::geometry;
using namespace solemech::tests;

namespace
{
double area(const PlanMesh &mesh)
{
  double sum = 0;
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
    sum += cell_area(mesh, c);
  return sum;
}

double length(const PlanPoint &a, const PlanPoint &b)
{
  return std::hypot(b[0] - a[0], b[1] - a[1]);
}

/// Vertices less edges plus cells: 1 for what is in one piece without a hole.
int euler_number(const PlanMesh &mesh)
{
  std::set<std::set<unsigned>> edges;
  for (const auto &[v] : mesh.cells)
    edges.insert({{v[0], v[1]}, {v[1], v[3]}, {v[3], v[2]}, {v[2], v[0]}});
  return static_cast<int>(mesh.vertices.size()) - static_cast<int>(edges.size()) +
         static_cast<int>(mesh.cells.size());
}

/// Greatest distance of the rim's vertices from the outline.
double off_outline(const PlanMesh &mesh, const ClosedCurve &outline)
{
  constexpr unsigned     n = 20000;
  std::vector<PlanPoint> drawn;
  for (unsigned i = 0; i < n; ++i)
    drawn.push_back(outline(static_cast<double>(i) / n));
  double farthest = 0;
  for (const auto &[cell, face] : mesh.rim)
  {
    constexpr unsigned first_corner[4] = {0, 1, 0, 2};
    const auto        &p = mesh.vertices[mesh.cells[cell].vertices[first_corner[face]]];
    double             nearest = 1;
    for (const auto &q : drawn)
      nearest = std::min(nearest, length(p, q));
    farthest = std::max(farthest, nearest);
  }
  return farthest;
}
} // namespace

TEST_CASE("the plan of an ellipse has its area, with an error that falls with the square of the cells",
          "[sole]")
{
  constexpr double a = 0.14, b = 0.045, exact = std::numbers::pi * a * b; // area of an ellipse
  const auto       error = [&](double size) {
    return 1 - area(make_plan_mesh(ellipse(a, b), {.along = size, .across = size})) / exact;
  };
  const double coarse = error(6e-3), fine = error(3e-3);
  CHECK(fine > 0); // chords lie inside
  CHECK(fine < 3e-4);
  CHECK(coarse / fine > 3.5); // 4, were it not for whole numbers of cells
}

TEST_CASE("cells of all kinds of soles have corners well above the least", "[sole]")
{
  std::mt19937 random(11);
  for (unsigned i = 0; i < 20; ++i)
  {
    const auto sole = drawn_sole(random);
    PlanSizes  sizes{.n_rim = 1 + i % 3, .finer = {{0.5 * sole.length, 0.85 * sole.length, 9e-3}}};
    sizes.lines = {{0.64 * sole.length, 0.73 * sole.length}};
    const auto mesh = make_plan_mesh(sole.outline, sizes);
    CHECK(corner_quality(mesh) > 0.6);
    CHECK(euler_number(mesh) == 1);
    CHECK(off_outline(mesh, sole.outline) < 3e-5); // it is looked at every 0.06 mm or closer
    std::swap(sizes.lines[0].low, sizes.lines[0].high);
    const auto mirrored = make_plan_mesh(sole.mirrored, sizes);
    CHECK(mirrored.cells.size() == mesh.cells.size());
    CHECK(area(mirrored) == Approx(area(mesh)).epsilon(3e-3)); // shaped in another order
  }
}

TEST_CASE("a line that is asked for is one of the mesh from side to side", "[sole]")
{
  std::mt19937    random(3);
  const auto      sole = drawn_sole(random);
  const CrossLine ball{0.64 * sole.length, 0.73 * sole.length};
  const auto mesh = make_plan_mesh(sole.outline, {.lines = {{0.2 * sole.length, 0.2 * sole.length}, ball}});
  const auto side_at = [&](double x, bool low) {
    double    best = 1;
    PlanPoint found{};
    for (const auto &p : mesh.vertices)
      if ((p[1] < 0) == low && std::abs(p[0] - x) < best - 1e-12)
        best = std::abs(p[0] - x), found = p;
    return found;
  };
  const auto from = side_at(ball.low, true), to = side_at(ball.high, false);
  CHECK(from[0] == Approx(ball.low).epsilon(1e-9));
  CHECK(to[0] == Approx(ball.high).epsilon(1e-9));
  unsigned n_on_line = 0;
  for (const auto &p : mesh.vertices)
    n_on_line += std::abs(length(from, p) + length(p, to) - length(from, to)) < 1e-9;
  CHECK(n_on_line >= 7);
}

TEST_CASE("rings of cells follow the edge of a striker wherever it hits", "[sole]")
{
  std::mt19937 random(5);
  unsigned     n_fitted = 0;
  for (unsigned i = 0; i < 40; ++i)
  {
    const auto sole = drawn_sole(random);
    const auto draw = [&](double low, double high) {
      return std::uniform_real_distribution<>(low, high)(random);
    };
    const PlanPoint centre{draw(0.1, 0.85) * sole.length, draw(-0.02, 0.02)};
    const double    radius = draw(0.015, 0.0225);
    const auto      mesh = make_plan_mesh(sole.outline, {.rings = {ring_along_circle(centre, radius, 3e-3)}});
    CHECK(corner_quality(mesh) > least_corner);
    CHECK(euler_number(mesh) == 1);
    if (!mesh.rings_fitted[0])
      continue;
    ++n_fitted;
    unsigned n_on_circle = 0;
    for (const auto &p : mesh.vertices)
      n_on_circle += std::abs(length(centre, p) - radius) < 1e-9;
    CHECK(n_on_circle >= 5); // fewer than all round where the outline is in the way
  }
  CHECK(n_fitted >= 38);
}

TEST_CASE("a ring in the middle goes all round", "[sole]")
{
  const auto mesh =
    make_plan_mesh(ellipse(0.14, 0.05), {.rings = {ring_along_circle({0.03, 0.005}, 0.02, 3e-3)}});
  REQUIRE(mesh.rings_fitted[0]);
  for (const double radius : {17e-3, 20e-3, 23e-3}) // and on both sides, 3 mm away
  {
    std::vector<double> angles;
    for (const auto &[x, y] : mesh.vertices)
      if (std::abs(std::hypot(x - 0.03, y - 0.005) - radius) < 1e-8)
        angles.push_back(std::atan2(y - 0.005, x - 0.03));
    std::sort(angles.begin(), angles.end());
    REQUIRE(angles.size() >= 12);
    for (std::size_t i = 1; i < angles.size(); ++i)
      CHECK(angles[i] - angles[i - 1] < 0.7);
  }
}

TEST_CASE("a ring that leaves a rectangle ends where circle and side meet", "[sole]")
{
  // 12, 16 and 20 mm are the sides of a right triangle, so that the circle meets the end 12 mm off the
  // middle.
  const std::vector<double> x{-60e-3, -50e-3, -40e-3, -30e-3, -20e-3, -10e-3, 0,
                              10e-3,  20e-3,  30e-3,  40e-3,  50e-3,  60e-3};
  const std::vector<double> y{0, 5e-3, 10e-3, 15e-3, 20e-3, 25e-3, 30e-3};
  const auto                mesh = make_rectangle_plan(x, y, {ring_along_circle({44e-3, 0}, 20e-3, 3e-3)});
  REQUIRE(mesh.rings_fitted[0]);
  CHECK(area(mesh) == Approx(0.12 * 0.03).epsilon(1e-12));
  CHECK(corner_quality(mesh) > 0.5);
  const auto nearest = [&](const PlanPoint &p) {
    double least = 1;
    for (const auto &q : mesh.vertices)
      least = std::min(least, length(p, q));
    return least;
  };
  CHECK(nearest({60e-3, 12e-3}) < 1e-9);
  CHECK(nearest({24e-3, 0}) < 1e-9);
  CHECK(make_rectangle_plan(x, y).cells.size() == 72);
}

TEST_CASE("outlines and lines that leave no mesh are refused", "[sole]")
{
  const auto bean = [](double place) -> PlanPoint { // turns back along the foot
    const double angle = 2 * std::numbers::pi * place;
    return {0.1 * std::cos(angle) + 0.08 * std::sin(angle) * std::sin(angle) * std::cos(3 * angle),
            0.05 * std::sin(angle)};
  };
  CHECK_THROWS_AS(make_plan_mesh(bean, {}), InvalidGeometry);
  CHECK_THROWS_AS(make_plan_mesh(ellipse(0.14, 0.045), {.lines = {{0.139, 0.139}}}), InvalidGeometry);
  CHECK_THROWS_AS(make_plan_mesh(ellipse(0.14, 0.045), {.lines = {{0.01, 0.05}, {0.02, 0.04}}}),
                  InvalidGeometry);
}
