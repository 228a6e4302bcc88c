// SPDX-License-Identifier: Apache-2.0
// The mesh beside a bulge: a linear field is harmonic, so a graded grid carries it to the last digit; a cell
// that is turned inside out is seen.
#include "solver/models/bulge.h"
#include "tests/support/catch.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;
using solver::Point;

namespace
{
solver::Discretisation graded_grid()
{
  constexpr std::array free{false, false};
  return {grid({0, 0.0001, 0.0003, 0.001, 0.005}, {0, 0.0002, 0.001, 0.004}), MeshSection::whole_plane,
          HeldFaces{free, free, free, free}};
}

std::vector<bool> for_all(const solver::Discretisation &mesh, bool value)
{
  return std::vector<bool>(mesh.n_nodes(), value);
}
} // namespace

TEST_CASE("a graded mesh follows a linear displacement of its edge exactly", "[inflation]")
{
  const auto mesh = graded_grid();
  const auto wanted = field(mesh, [](const Point &p) {
    return Point{0.2 * p[0] - 0.1 * p[1], 0.05 * p[0] + 0.3 * p[1]};
  });
  auto       on_edge = for_all(mesh, false);
  for (const auto &face : mesh.mesh().faces)
    for (const unsigned node : mesh.edge(face))
      on_edge[node] = true;
  auto followed = wanted;
  for (std::size_t i = 0; i < followed.size(); ++i)
    if (!on_edge[i])
      followed[i] = {0, 0};
  solver::follow_bulge(mesh, on_edge, followed);
  for (std::size_t i = 0; i < followed.size(); ++i)
    for (unsigned c = 0; c < 2; ++c)
      CHECK(followed[i][c] == Approx(wanted[i][c]).margin(1e-14));
}

TEST_CASE("a cell that is turned inside out is seen, but for those of a film", "[inflation]")
{
  const auto mesh = graded_grid();
  const auto shear = field(mesh, [](const Point &p) { return Point{2 * p[1], 0}; });
  CHECK(solver::keeps_cells(mesh, for_all(mesh, false), shear));
  const auto turned = field(mesh, [](const Point &p) { return Point{-1.5 * p[0], 0}; });
  CHECK_FALSE(solver::keeps_cells(mesh, for_all(mesh, false), turned));
  CHECK(solver::keeps_cells(mesh, for_all(mesh, true), turned));
}
