// SPDX-License-Identifier: Apache-2.0
// Rigid bodies that tilt, against closed forms: a bed on an elastic layer, a pendulum, a body in flight.
#include "materials/hencky.h"
#include "solver/contributions/contact.h"
#include "solver/contributions/rigid_weight.h"
#include "tests/external/check.h"
#include "tests/support/single_body.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

using namespace solemech;
using namespace solemech::tests;
using solver::Freedom;

namespace
{
constexpr double E = 1e6, nu = 0.3, width = 40e-3;
constexpr double strain = 1e-4; ///< under the middle of the bed: small, so that the linear theory applies

/// Moment over tilt of a bed that covers a layer of the width above, per metre of depth [N m/m].
double roll_stiffness(double thickness, double poisson, bool bonded, unsigned n_across, unsigned n_up)
{
  StaticProblem problem(grid(even_lines(0, width, n_across), even_lines(0, thickness, n_up)),
                        MeshSection::whole_plane, HeldFaces{.axis = {false, false}, .base = {bonded, true}});
  problem.fill(solver::make_kernel(materials::IsotropicPlate{materials::hencky_from_young(E, poisson), {}}));
  std::vector<geometry::BoundaryFace> top;
  for (const auto &face : problem.mesh.mesh().faces)
    if (face.id == static_cast<int>(geometry::BoundaryId::top))
      top.push_back(face);
  // Pressed down evenly first, so that nothing lifts off; sinks in by a thousandth of that.
  const double sink = strain * thickness, tilt = 0.5 * sink / (0.5 * width);
  const auto   bed =
    problem.equation.add({{Freedom::along_z, Freedom::about_y}, {0, 0}, {0.5 * width, thickness}, 0});
  problem.equation.contributions.push_back(std::make_unique<solver::Contact>(
    "bed", problem.mesh, top, geometry::Plane(),
    solver::ContactSettings{.penalty = E * strain / std::pow(1e-3 * sink, 2)}, bed, thickness, false));
  if (!bonded) // the middle of the base is led nowhere: the tilted bed would push the layer away
    for (unsigned node = 0; node < problem.mesh.n_nodes(); ++node)
      if (std::hypot(problem.mesh.nodes()[node][0] - 0.5 * width, problem.mesh.nodes()[node][1]) < 1e-9)
        problem.equation.boundary.hold(problem.mesh.dof(node, 0), 0);
  Vector guess = Vector::Zero(problem.equation.size());
  guess[bed.unknown(0)] = -sink;
  guess[bed.unknown(1)] = tilt;
  const Vector x = problem.solve(guess, E * strain * width, 1e-8);
  Vector       force = Vector::Zero(x.size());
  problem.equation.contributions[1]->add(x, force, nullptr);
  return force[bed.unknown(1)] / tilt;
}
} // namespace

TEST_CASE("a bed that tilts on a layer between slippery faces", "[external]")
{
  // That is pure bending: exact for any thickness. 0.3 %: a tenth for the penetration, a strain of 1e-4.
  const double thickness = 0.25 * width;
  external_check({.source =
                    "bed on a layer between slippery faces, E 1 MPa, Poisson ratio 0.3: pure bending, "
                    "M = E/(1 - nu^2) b^3/(12 t) theta (handbook)",
                  .what = "roll stiffness, width 40 mm, thickness 10 mm",
                  .expected = E / (1 - nu * nu) * std::pow(width, 3) / (12 * thickness),
                  .obtained = roll_stiffness(thickness, nu, false, 12, 4),
                  .relative_tolerance = 3e-3,
                  .unit = "N m/m"});
}

TEST_CASE("a bed that tilts on a thin bonded layer", "[external]")
{
  const std::string source = "bed on a thin bonded layer, E 1 MPa: columns under confinement, "
                             "M = E_oed/t b^3/12 theta (Johnson, Contact Mechanics, 5.8, from memory)";
  const double      thickness = width / 80;
  for (const auto &[poisson, tolerance] : {std::pair{0.0, 0.005}, std::pair{0.3, 0.02}})
  {
    // Without contraction a column is a column. With it the two free ends, about as wide as the layer is
    // thick, give way: 2 % at a width of 80 thicknesses.
    const double modulus = E * (1 - poisson) / ((1 + poisson) * (1 - 2 * poisson));
    external_check(
      {source, fmt::format("roll stiffness, width 40 mm, thickness 0.5 mm, Poisson ratio {:.1f}", poisson),
       modulus * std::pow(width, 3) / (12 * thickness), roll_stiffness(thickness, poisson, true, 80, 2),
       tolerance, "N m/m"});
  }
}

namespace
{
constexpr double gravity = 9.81;

/// A body and a block at rest that it never meets: an equation wants a mesh.
struct Swinging
{
  StaticProblem     problem{grid(even_lines(0, 0.01, 1), even_lines(0, 0.01, 1)), MeshSection::whole_plane,
                        all_held};
  solver::RigidBody body;
  solver::TimeIntegrator integrator;
  solver::StepSettings   settings;

  Swinging(solver::RigidBody the_body, double mass, const Point &centre, double spectral_radius)
    : body(prepared(std::move(the_body), mass, centre)), integrator(problem.equation, spectral_radius)
  {
    settings.newton.tolerance = 1e-11;
    settings.force_scale = mass * gravity;
  }

private:
  solver::RigidBody prepared(solver::RigidBody the_body, double mass, const Point &centre)
  {
    problem.fill(solver::make_kernel(materials::IsotropicPlate{{1e6, 2e6}, {}}));
    auto taken = problem.equation.add(std::move(the_body));
    problem.equation.contributions.push_back(
      std::make_unique<solver::RigidWeight>("body", taken, mass * gravity, centre));
    return taken;
  }
};

/// Period of a pendulum that is let go at `angle` [rad], in `n_steps` of the period that is expected [s].
double period(double length, double angle, double expected, int n_steps)
{
  const double mass = 2;
  Swinging     swinging({{Freedom::about_y}, {mass * length * length}, {}, 0}, mass, {0, -length}, 0.9);
  auto        &integrator = swinging.integrator;
  const int    turn = swinging.body.first;
  integrator.x[turn] = angle;
  integrator.a[turn] = -gravity / length * std::sin(angle);
  integrator.start();
  // Swings through twice at the middle of a period apart; the middle is found on a straight line.
  std::vector<double> through;
  while (through.size() < 3)
  {
    const double before = integrator.x[turn];
    REQUIRE(integrator.step(expected / n_steps, swinging.settings).advanced);
    const double now = integrator.x[turn];
    if (before * now < 0)
      through.push_back(integrator.time - expected / n_steps * now / (now - before));
  }
  return through[2] - through[0];
}
} // namespace

TEST_CASE("a pendulum swings as long as the elliptic integral says", "[external]")
{
  const double length = 0.5, angle = 2;
  const double expected = 4 * std::sqrt(length / gravity) * std::comp_ellint_1(std::sin(0.5 * angle));
  const double fine = period(length, angle, expected, 800), coarse = period(length, angle, expected, 400);
  external_check({.source = "pendulum of 0.5 m let go at 2 rad: T = 4 sqrt(l/g) K(sin(angle/2)) (handbook)",
                  .what = "period",
                  .expected = expected,
                  .obtained = fine,
                  .relative_tolerance = 1e-4,
                  .unit = "s"});
  CHECK(std::log2((coarse - expected) / (fine - expected)) == Approx(2).margin(0.1)); // order of the scheme
}

TEST_CASE("a body in flight keeps its angular momentum and falls along the parabola", "[rigid]")
{
  const double mass = 2, moment = 0.01, spin = 30, v_x = 1.5, v_z = 2, end = 0.3;
  const Point  centre{0.2, 0.1};
  Swinging  flying({{Freedom::along_x, Freedom::along_z, Freedom::about_y}, {mass, mass, moment}, centre, 0},
                   mass, centre, 0.5);
  auto     &integrator = flying.integrator;
  const int first = flying.body.first;
  integrator.v.segment(first, 3) << v_x, v_z, spin;
  integrator.a[first + 1] = -gravity;
  integrator.start();
  constexpr int n_steps = 50;
  for (int i = 0; i < n_steps; ++i)
    REQUIRE(integrator.step(end / n_steps, flying.settings).advanced);
  // The scheme is exact under a constant force; iterations end at 1e-11 of the weight.
  constexpr double rounding = 1e-9;
  CHECK(integrator.v[first + 2] == Approx(spin).epsilon(rounding));
  CHECK(integrator.x[first + 2] == Approx(spin * end).epsilon(rounding)); // one and a half turns
  CHECK(integrator.x[first] == Approx(v_x * end).epsilon(rounding));
  CHECK(integrator.x[first + 1] == Approx(v_z * end - 0.5 * gravity * end * end).epsilon(rounding));
  const double speed = integrator.v[first + 1];
  CHECK(speed == Approx(v_z - gravity * end).epsilon(rounding));
  CHECK(integrator.body_kinetic_energy(0) ==
        Approx(0.5 * (mass * (v_x * v_x + speed * speed) + moment * spin * spin)).epsilon(rounding));
}
