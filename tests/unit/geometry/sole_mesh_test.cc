// SPDX-License-Identifier: Apache-2.0
// Shares of cells against closed forms, a whole sole in columns and in section, and what a factorisation is
// expected to cost beside measured ones.
#include "geometry/sole_mesh/cell_shares.h"
#include "geometry/sole_mesh/mesh_cost.h"
#include "geometry/sole_mesh/sole_mesh.h"
#include "tests/support/catch.h"
#include "tests/support/drawn_soles.h"
#include "tests/support/even_lines.h"
#include "tests/unit/geometry/sample_sole.h"

using namespace solemech::geometry;
using namespace solemech::tests;

namespace
{
double covered(const PlanMesh &mesh, const std::vector<double> &shares)
{
  double sum = 0;
  for (unsigned c = 0; c < shares.size(); ++c)
    sum += shares[c] * cell_area(mesh, c);
  return sum;
}
} // namespace

TEST_CASE("shares of straight edges are exact, those of a circle right to a thousandth", "[sole]")
{
  const auto mesh = make_rectangle_plan(even_lines(0, 0.1, 10), even_lines(0, 0.05, 5));
  const auto strip = cell_shares(mesh, [](const PlanPoint &p) { return p[1] > 0.012 && p[1] < 0.0365; });
  for (unsigned c = 0; c < strip.size(); ++c)
  {
    const std::array<double, 5> rows{0, 0.8, 1, 0.65, 0};
    CHECK(strip[c] == Approx(rows[c / 10]).margin(1e-4));
  }
  // quarter of a circle about a corner of a cell: pi/4
  const auto quarter =
    cell_shares(mesh, [](const PlanPoint &p) { return std::hypot(p[0] - 0.05, p[1] - 0.02) < 0.01; });
  CHECK(quarter[25] == Approx(std::numbers::pi / 4).margin(1e-3));
  CHECK(quarter[14] == Approx(std::numbers::pi / 4).margin(1e-3));
  CHECK(quarter[26] == Approx(0).margin(1e-3));

  std::mt19937 random(9);
  const auto   sole = drawn_sole(random);
  const auto   plan = make_plan_mesh(sole.outline, {});
  const double x = 0.6 * sole.length;
  const auto disc = cell_shares(plan, [&](const PlanPoint &p) { return std::hypot(p[0] - x, p[1]) < 0.025; });
  CHECK(covered(plan, disc) == Approx(std::numbers::pi * 0.025 * 0.025).epsilon(5e-4));
}

TEST_CASE("a whole sole in columns has the volumes of its description", "[sole]")
{
  auto shape = sample_sole();
  shape.bottom = {}; // flat, as the description counts volumes
  shape.bottom.toe_spring_start = 0.2;
  shape.layers[1].from = 0.02, shape.layers[1].to = 0.26;
  shape.layers[1].slots = {{.from = 0.19, .to = 0.26, .middle = {0.002, 0}, .width = {0.012, 0.02}}};
  const SoleBody body(shape);
  const auto     sizes = sole_sizes(body, 0.01);
  CHECK(sizes.n_cells == std::vector<unsigned>{3, 1, 1});
  const auto          mesh = make_sole_mesh(body, sizes);
  std::vector<double> volumes(body.n_layers());
  double              drawn = 0, meshed = 0;
  for (unsigned c = 0; c < mesh.columns.cells.size(); ++c)
  {
    double sum = 0;
    for (const auto &[layer, share] : mesh.filling(mesh.columns.cells[c]))
      sum += share, volumes[layer] += share * cell_volume(mesh.columns, c);
    CHECK(sum == Approx(1).epsilon(1e-12));
    meshed += cell_volume(mesh.columns, c);
  }
  for (const double volume : body.volumes())
    drawn += volume;
  // chords of the outline lie inside it, for the most part: half a per cent at these cells
  CHECK(meshed == Approx(drawn).epsilon(6e-3));
  CHECK(meshed < drawn);
  CHECK(volumes[1] == Approx(body.volumes()[1]).epsilon(2e-4)); // its edge lies within cells
  CHECK(corner_quality(mesh.plan) > 0.6);
}

TEST_CASE("a sole with toe spring and heel bevel stands on the floor between them", "[sole]")
{
  const SoleBody body(sample_sole());
  auto           sizes = sole_sizes(body, 0.03);
  sizes.plan.rings = {striker_ring({0.045, 0}, 0.02, 0.02)};
  const auto mesh = make_sole_mesh(body, sizes);
  CHECK(mesh.plan.rings_fitted[0]);
  for (const auto &face : mesh.columns.faces)
    if (face.side == SoleSide::bottom)
      for (const unsigned v : face_vertices(mesh.columns.cells[face.cell], face.face))
      {
        const auto &p = mesh.columns.vertices[v];
        CHECK(p[2] == Approx(body.bottom().lift(p[0])).margin(1e-12));
      }
  const auto          section = make_sole_section(body, sizes, {"foam", "plate", "rubber"}, 0.01, {0.1});
  std::array<bool, 3> has{};
  for (const auto &cell : section.cells)
    has[cell.part] = true;
  CHECK(has == std::array{true, true, true});
  for (const double stop : {0.1, body.ball_line().centre()})
    CHECK(std::any_of(section.vertices.begin(), section.vertices.end(), [&](const auto &p) {
      return std::abs(p[0] - body.bottom().placed(stop, 0)[0]) < 1e-9;
    }));
}

TEST_CASE("the cost of a factorisation is foreseen to a third", "[sole]")
{
  // Measured: blocks of 290 x 105 x 28 mm, supernodal Cholesky factorisation with nested dissection.
  struct Measured
  {
    unsigned n_x, n_y, n_z;
    double   n_unknowns, entries, operations;
  };
  for (const auto &[n_x, n_y, n_z, n_unknowns, entries, operations] : {Measured{24, 8, 3, 17e3, 5.4e6, 2.4e9},
                                                                       {34, 13, 5, 61e3, 34e6, 33e9},
                                                                       {48, 18, 7, 162e3, 130e6, 228e9},
                                                                       {96, 28, 6, 429e3, 395e6, 885e9}})
  {
    const auto cost =
      expected_cost(make_rectangle_plan(even_lines(0, 0.29, n_x), even_lines(0, 0.105, n_y)), n_z);
    CHECK(cost.n_unknowns == Approx(n_unknowns).epsilon(0.03)); // given in thousands
    CHECK(cost.n_unknowns == 3.0 * (2 * n_x + 1) * (2 * n_y + 1) * (2 * n_z + 1));
    CHECK(cost.factor_bytes == Approx(8 * entries).epsilon(0.34));
    CHECK(cost.operations == Approx(operations).epsilon(0.34));
  }
}
