// SPDX-License-Identifier: Apache-2.0
// The gate of the energy account: what it tightens, when it refuses, and that it points at the part whose
// forces and energies disagree.
#include "solver/closed_run.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// A run whose errors fall with step and tolerance as those of the scheme and of Newton's method do.
solver::Result made_up(const solver::Resolution &resolution, double numerical, double residual)
{
  solver::Result result;
  result.input_energy = 2;
  result.facts.ledger_numerical = numerical * resolution.step_tolerance * resolution.step_tolerance;
  result.facts.ledger_residual = residual * resolution.newton_tolerance;
  return result;
}

/// A spring between a node and the ground that forgets a third of what it stores.
class Liar : public solver::Contribution
{
public:
  bool add(const Vector &x, Vector &force, solver::Tangent *tangent) const override
  {
    force[x.size() - 1] += stiffness * x[x.size() - 1];
    if (tangent)
      tangent->bodies(0, 0) += stiffness;
    return true;
  }
  void accept(const Vector &x, double) override { height_ = x[x.size() - 1]; }
  void energies(std::vector<solver::EnergyEntry> &entries) const override
  {
    entries.push_back({"liar", "spring", solver::EnergyKind::stored, stiffness * height_ * height_ / 3});
  }
  std::string name() const override { return "liar"; }

  static constexpr double stiffness = 1000; ///< [N/m]

private:
  double height_ = 0;
};
} // namespace

TEST_CASE("an open account is closed by what leaves it open", "[account]")
{
  int        n_runs = 0;
  double     steps = 1, newton = 1;
  const auto run = [&](double numerical, double residual) {
    n_runs = 0;
    return solver::closed_run({1, 1}, [&, numerical, residual](const solver::Resolution &now) {
      ++n_runs, steps = now.step_tolerance, newton = now.newton_tolerance;
      return made_up(now, numerical, residual);
    });
  };
  CHECK(solver::open_share(run(0.004, 0)) <= solver::most_open);
  CHECK(n_runs == 1);
  CHECK(solver::open_share(run(0.02, 0)) <= solver::most_open);
  CHECK(newton == 1);
  CHECK(steps == 0.5);
  CHECK(solver::open_share(run(0, 0.03)) <= solver::most_open);
  CHECK(steps == 1);
  CHECK(newton == Approx(0.1).epsilon(1e-12));
  try
  {
    run(1000, 0);
    FAIL("an open account passed");
  }
  catch (const solver::RunFailed &failure)
  {
    CHECK_FALSE(failure.partial.complete);
    CHECK(failure.partial.input_energy == 2); // what was computed is kept
    CHECK_THAT(failure.what(), Catch::Matchers::Contains("the energy account is off by"));
  }
}

TEST_CASE("an open account names the part that leaves it open", "[account]")
{
  constexpr double size = 0.02, way = 1e-3;
  StaticProblem    problem{grid(even_lines(0, size, 1), even_lines(0, size, 1)), MeshSection::axisymmetric,
                        HeldFaces{.base = {true, true}}};
  problem.fill(solver::make_kernel(materials::IsotropicPlate{{1e6, 2e6}, {}}));
  problem.equation.add(solver::lifted_body(1));
  problem.equation.contributions.push_back(std::make_unique<Liar>());
  solver::TimeIntegrator integrator(problem.equation, 1.0);
  solver::OpenParts      open;
  integrator.book_parts(&open);
  integrator.start();
  problem.equation.boundary.hold(problem.equation.n_unknowns(), -way);
  REQUIRE(integrator.step(1, {.quasi_static = true}).advanced);
  // Work 1/2 k w^2, of which a third more than half is missing in its books: k w^2 (1/2 - 1/3).
  CHECK(open["liar"] == Approx(Liar::stiffness * way * way / 6).epsilon(1e-9));
  CHECK(std::abs(open["body"]) < 1e-12);
  solver::Result result;
  result.input_energy = 0.5 * Liar::stiffness * way * way;
  CHECK_THAT(solver::open_account_text(result, open),
             Catch::Matchers::Contains("most of it in liar: 33.3 %"));
}
