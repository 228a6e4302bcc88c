// SPDX-License-Identifier: Apache-2.0
// Solutions with the factors of an earlier tangent against those with its own; when a tangent is factorised
// anew.
#include "solver/time/correcting_solver.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// A tangent with two bodies and a chamber; `diagonal` makes it definite or not.
solver::Tangent tangent_of(const solver::Discretisation &mesh, Random &random, double diagonal)
{
  const auto     &pattern = mesh.pattern();
  solver::Tangent t;
  t.reset(pattern.nonZeros(), mesh.n_unknowns(), 2);
  for (int column = 0; column < pattern.outerSize(); ++column)
    for (int place = pattern.outerIndexPtr()[column]; place < pattern.outerIndexPtr()[column + 1]; ++place)
      t.values[place] = pattern.innerIndexPtr()[place] == column ? diagonal : random();
  for (int b = 0; b < 2; ++b)
    t.coupling.col(b) = random.vector(mesh.n_unknowns());
  t.bodies.diagonal().setConstant(diagonal);
  t.rank_one.push_back({random.vector(mesh.n_unknowns()), 2.0});
  return t;
}
} // namespace

TEST_CASE("corrections of old factors solve what new factors solve", "[correcting_solver]")
{
  constexpr double         error = 1e-4; // asked for, 1e-5, in another norm
  Random                   random;
  solver::Discretisation   mesh{grid(even_lines(0, 1, 4), even_lines(0, 1, 3)), MeshSection::plane_strain,
                              HeldFaces{}};
  auto                     tangent = tangent_of(mesh, random, 40);
  solver::CorrectingSolver corrected(mesh.pattern());
  REQUIRE(corrected.factorise(tangent));
  const Vector right_side = random.vector(mesh.n_unknowns() + 2);
  const auto   check = [&](const solver::Tangent &now, double tolerance) {
    const auto direct = solver::make_linear_solver(mesh.pattern());
    REQUIRE(corrected.factorise(now));
    REQUIRE(direct->factorise(now));
    const Vector expected = direct->solve(right_side);
    CHECK((corrected.solve(right_side) - expected).norm() < tolerance * expected.norm());
  };
  CHECK(corrected.n_factorisations() == 1);
  auto near = tangent;
  for (auto &value : near.values)
    value *= 1 + 0.1 * random();
  check(near, error);
  CHECK(corrected.n_factorisations() == 1);

  // Far from it, or without a minimum: its own factors.
  const auto far = tangent_of(mesh, random, 30), saddle = tangent_of(mesh, random, 2);
  check(saddle, 1e-9);
  CHECK(corrected.indefinite());
  CHECK(corrected.n_factorisations() == 2);
  check(far, 1e-9); // factors of a saddle are no preconditioner
  CHECK_FALSE(corrected.indefinite());
  CHECK(corrected.n_factorisations() == 3);

  auto skew = far;
  skew.unsymmetric.emplace_back(0, 1, 3.0);
  check(skew, 1e-9);
  CHECK(corrected.n_factorisations() == 4);
}
