// SPDX-License-Identifier: Apache-2.0
// Bodies, shell, weight, support and press: force and tangent as slopes, energies by hand.
#include "solver/contributions/applied_force.h"
#include "solver/contributions/bedding.h"
#include "solver/contributions/rigid_weight.h"
#include "solver/contributions/support.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;

TEST_CASE("a solid body: force is the slope of its energy, tangent the slope of its force", "[contributions]")
{
  Random                random;
  const materials::Foam foam{{{1.05e6, 4, 0.25}}, {0.16, 0.9, 101325, 1}, {0.16, 1e6, 3}, {}};
  for (const auto section : {MeshSection::axisymmetric, MeshSection::plane_strain})
  {
    const auto mesh = cube(section);
    const auto x = random_state(mesh, random);
    // Accepting reads the histories, so each evaluation builds its own body.
    const auto body = [&] {
      return solver::SolidBody(mesh.group(0, 0, mesh.nodes(), {}), solver::make_kernel(foam));
    };
    const auto energy = [&](const Vector &at) {
      auto one = body();
      one.begin_step(Vector::Zero(at.size()), 1);
      one.accept(at, 1);
      std::vector<solver::EnergyEntry> entries;
      one.energies(entries);
      double sum = 0;
      for (const auto &entry : entries)
        sum += entry.value;
      return sum;
    };
    const auto   part = body();
    const Vector force = force_at(part, x);
    Vector       slope(x.size());
    for (int i = 0; i < x.size(); ++i)
    {
      Vector up = x, down = x;
      up[i] += difference_step, down[i] -= difference_step;
      slope[i] = (energy(up) - energy(down)) / (2 * difference_step);
    }
    CHECK((force - slope).cwiseAbs().maxCoeff() < by_differences * force.cwiseAbs().maxCoeff());
    check_tangent(part, mesh, x, 0);
  }
}

TEST_CASE("mixed and branched bodies: tangent is the slope of the force", "[contributions]")
{
  Random     random;
  const auto mesh = cube();
  const auto x = random_state(mesh, random);
  {
    const materials::Rubber rubber{
      {0.6e6, -0.05e6, 0.02e6, 0.1e6}, {1e9}, {materials::RelaxingBranch(0.3e6, 0, 0.02)}};
    solver::SolidBody body(mesh.group(0, 1, mesh.nodes(), {}), solver::make_kernel(rubber));
    body.begin_step(Vector::Zero(x.size()), 0.01);
    check_tangent(body, mesh, x, 0);
  }
  {
    const materials::Foam foam{
      {{1e6, 4, 0}},
      {.closed_share = 0},
      {},
      {materials::RelaxingBranch(0.4e6, 0.3e6, 0.02), materials::SlippingBranch(0.4e6, 0.3e6, 0.01, 5)}};
    solver::SolidBody body(mesh.group(0, 2, mesh.nodes(), {}), solver::make_kernel(foam));
    body.begin_step(Vector::Zero(x.size()), 0.01);
    body.accept(random_state(mesh, random), 0.01);
    body.begin_step(x, 0.01);
    check_tangent(body, mesh, random_state(mesh, random), 0);
  }
}

TEST_CASE("shell, weight and press", "[contributions]")
{
  Random     random;
  const auto mesh = cube();
  const int  n = mesh.n_unknowns();
  SECTION("a shell beds the side like springs over its area")
  {
    const double          stiffness = 3e7;
    const solver::Bedding shell("shell", mesh, faces(mesh, geometry::BoundaryId::side), 0, stiffness);
    const auto            x = random_state(mesh, random);
    check_force(shell, x);
    check_tangent(shell, mesh, x, 0);
    Vector even = Vector::Zero(n);
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      if (const int dof = mesh.dof(node, 0); dof >= 0)
        even[dof] = 1e-4;
    // Pressure k u over the area 2 pi R H.
    CHECK(force_at(shell, even).sum() == Approx(stiffness * 1e-4 * 2 * M_PI * size * size).epsilon(1e-12));
  }
  SECTION("weight is the slope of the height's energy")
  {
    const solver::RigidWeight weight("tup", solver::lifted_body(0, n), 83.4);
    check_force(weight, random_state(mesh, random, {-1e-3}));
  }
  SECTION("a support carries by its spring and its damper")
  {
    solver::Support support(n, 1e5, 200);
    auto            x = random_state(mesh, random, {-1e-3});
    support.begin_step(x, 0.01);
    x[n] = -3e-3;
    CHECK(force_at(support, x)[n] == Approx(-1e5 * 3e-3 - 200 * 2e-3 / 0.01).epsilon(rounding));
    check_tangent(support, mesh, x, 1);
    // Spring k x^2/2 and damper c v way.
    CHECK(energy_at(support, x, 0.01) == Approx(0.5 * 1e5 * 9e-6 + 200 * 4e-6 / 0.01).epsilon(rounding));
  }
  SECTION("a growing press force does the work of its mean")
  {
    solver::AppliedForce press(n);
    Vector               x = Vector::Zero(n + 1);
    press.force = 100;
    press.accept(x, 0);
    press.force = 300;
    x[n] = -2e-3;
    CHECK(force_at(press, x)[n] == 300);
    press.accept(x, 0.1);
    std::vector<solver::EnergyEntry> entries;
    press.energies(entries);
    CHECK(-entries.front().value == Approx(200 * 2e-3).epsilon(1e-14));
  }
}
