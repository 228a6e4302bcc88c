// SPDX-License-Identifier: Apache-2.0
// Contact and friction: slopes everywhere on a striker, and the forces between striker, stack and support.
#include "solver/contributions/contact.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;

TEST_CASE("contact: slopes at face, edge, wall and ball, moving and fixed", "[contributions]")
{
  Random     random;
  const auto section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const auto mesh = cube(section);
  const auto striker = solver::lifted_body(0, mesh.n_unknowns());
  const auto top = faces(mesh, geometry::BoundaryId::top), base = faces(mesh, geometry::BoundaryId::base);
  const solver::ContactSettings settings{.penalty = 1e12};
  using solver::Contact;
  SECTION("flat face and rounded edge")
  {
    const Contact part("tup", mesh, top, geometry::FlatPuck(0.8 * size, 0.2 * size), settings, striker, size,
                       false);
    const auto    x = random_state(mesh, random, {-0.1 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
  SECTION("side wall of a puck that has sunk in deeply")
  {
    // Outermost nodes stand beside the wall, so that it is the nearest boundary.
    const Contact part("tup", mesh, top, geometry::FlatPuck(0.95 * size, 0.1 * size), settings, striker, size,
                       false);
    auto          x = random_state(mesh, random, {-0.4 * size});
    for (const auto &face : top)
      for (const unsigned node : mesh.edge(face))
        if (mesh.nodes()[node][0] < 0.9 * size)
          x[mesh.dof(node, 1)] -= 0.39 * size;
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
  SECTION("ball")
  {
    const Contact part("tup", mesh, top, geometry::Sphere(2 * size), settings, striker, size, false);
    const auto    x = random_state(mesh, random, {-0.1 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
  SECTION("fixed ground")
  {
    const Contact part("base", mesh, base, geometry::Plane(), settings, {}, 0.005 * size, true);
    const auto    x = random_state(mesh, random);
    check_force(part, x);
    check_tangent(part, mesh, x, 0);
    // The ground is pressed down by what pushes the stack up.
    CHECK(part.state(x).force == Approx(vertical_sum(mesh, force_at(part, x))).epsilon(rounding));
    CHECK(part.state(x).force < 0);
  }
  SECTION("friction, part of the points sticking, part slipping")
  {
    auto rubbing = settings;
    rubbing.friction = 0.5;
    rubbing.slip_length = 0.004 * size;
    Contact    part("tup", mesh, top, geometry::Sphere(2 * size), rubbing, striker, size, false);
    const auto first = random_state(mesh, random, {-0.05 * size});
    part.settle(first);
    CHECK(part.settle(first) == 0);
    const auto x = random_state(mesh, random, {-0.06 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
}

TEST_CASE("what has touched sticks: slopes, and the striker feels what the stack feels", "[contributions]")
{
  Random          random;
  const auto      mesh = cube();
  const auto      striker = solver::lifted_body(0, mesh.n_unknowns());
  solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top), geometry::Sphere(2 * size),
                       {.penalty = 1e12, .stick = 1e9}, striker, size, false);
  part.accept(random_state(mesh, random, {-0.05 * size}), 1);
  const auto x = random_state(mesh, random, {-0.06 * size});
  check_force(part, x);
  check_tangent(part, mesh, x, 1);
  const Vector force = force_at(part, x);
  CHECK(vertical_sum(mesh, force) == Approx(-force[mesh.n_unknowns()]).epsilon(rounding));
  CHECK(part.state(x).force == Approx(-force[mesh.n_unknowns()]).epsilon(rounding));
}

TEST_CASE("friction never gives energy back that it took", "[contributions]")
{
  const auto              mesh = cube();
  const auto              striker = solver::lifted_body(0, mesh.n_unknowns());
  solver::ContactSettings settings{.penalty = 1e12, .friction = 0.5, .slip_length = 1e-6};
  solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top), geometry::Plane(), settings,
                       striker, size, false);
  Vector          x = Vector::Zero(mesh.n_unknowns() + 1);
  x[mesh.n_unknowns()] = -1e-5;
  part.settle(x);
  const auto lost = [&] {
    std::vector<solver::EnergyEntry> entries;
    part.energies(entries);
    return entries.back().value;
  };
  double last = 0;
  for (const double spread : {1e-3, 3e-3, 2e-3, -1e-3, -1e-3, 0.0})
  {
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      if (const int dof = mesh.dof(node, 0); dof >= 0)
        x[dof] = spread * mesh.nodes()[node][0];
    part.accept(x, 1);
    CHECK(lost() >= last);
    last = lost();
  }
  CHECK(last > 0);
}

TEST_CASE("what the striker feels is what the stack feels", "[contributions]")
{
  Random     random;
  const auto mesh = cube();
  const auto striker = solver::lifted_body(0, mesh.n_unknowns());
  const int  n = mesh.n_unknowns();
  for (const double friction : {0.0, 0.5})
  {
    solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top),
                         geometry::FlatPuck(0.8 * size, 0.2 * size), {.penalty = 1e12, .friction = friction},
                         striker, size, false);
    const auto      x = random_state(mesh, random, {-0.1 * size});
    part.settle(x);
    const Vector force = force_at(part, x);
    CHECK(force[n] < 0);
    CHECK(vertical_sum(mesh, force) == Approx(-force[n]).epsilon(rounding));
    CHECK(part.state(x).force == Approx(-force[n]).epsilon(rounding));
    // On a support that moves, the support feels the striker's force the other way.
    part.stand_on(solver::lifted_body(0, n + 1));
    Vector both = Vector::Zero(n + 2);
    both.head(n + 1) = x;
    both[n + 1] = 0.01 * size;
    check_tangent(part, mesh, both, 2);
    check_force(part, both);
    const Vector supported = force_at(part, both);
    CHECK(supported[n] + supported[n + 1] == Approx(0).margin(rounding * std::abs(supported[n])));
  }
}
