// SPDX-License-Identifier: Apache-2.0
// Every contribution: force against the slope of its energy, tangent against the slope of its force, and the
// forces between striker and stack against each other.
#include "solver/contributions/applied_force.h"
#include "solver/contributions/contact.h"
#include "solver/contributions/fibre_bundle.h"
#include "solver/contributions/gas_chamber.h"
#include "solver/contributions/rigid_weight.h"
#include "solver/contributions/side_shell.h"
#include "solver/contributions/support.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;
using solver::Contribution;

namespace
{
/// Central differences of a smooth function with the step below: truncation 1e-9, rounding 1e-8 of the largest.
constexpr double by_differences = 1e-6;
constexpr double difference_step = 1e-8; ///< [m], against lengths of 1e-2 m

constexpr double rounding = 1e-12;        ///< of sums of some hundred terms

constexpr double size = 0.01; ///< of a test body [m]

/// A cube-like body of 3 x 2 elements, nothing held but the axis.
solver::Discretisation cube(MeshSection section = MeshSection::axisymmetric)
{
  return {grid(even_lines(0, size, 3), even_lines(0, size, 2)), section, HeldFaces{}};
}

std::vector<geometry::BoundaryFace> faces(const solver::Discretisation &mesh, geometry::BoundaryId id)
{
  std::vector<geometry::BoundaryFace> out;
  for (const auto &face : mesh.mesh().faces)
    if (face.id == static_cast<int>(id))
      out.push_back(face);
  return out;
}

struct Evaluation
{
  Vector          force;
  Eigen::MatrixXd tangent; ///< completed from the lower triangle, coupling and rank-one terms
};

Evaluation evaluate(const Contribution &part, const solver::Discretisation &mesh, const Vector &x, int n_bodies)
{
  const int       n = mesh.n_unknowns();
  solver::Tangent tangent;
  tangent.reset(mesh.pattern().nonZeros(), n, n_bodies);
  Evaluation out{Vector::Zero(n + n_bodies), Eigen::MatrixXd::Zero(n + n_bodies, n + n_bodies)};
  REQUIRE(part.add(x, out.force, &tangent));
  solver::SparseMatrix matrix = mesh.pattern();
  std::copy_n(tangent.values.begin(), matrix.nonZeros(), matrix.valuePtr());
  out.tangent.topLeftCorner(n, n) = Eigen::MatrixXd(matrix).selfadjointView<Eigen::Lower>();
  for (const auto &term : tangent.rank_one)
    out.tangent.topLeftCorner(n, n) += term.c * term.g * term.g.transpose();
  out.tangent.topRightCorner(n, n_bodies) = tangent.coupling;
  out.tangent.bottomLeftCorner(n_bodies, n) = tangent.coupling.transpose();
  out.tangent.bottomRightCorner(n_bodies, n_bodies) = tangent.bodies;
  return out;
}

Vector force_at(const Contribution &part, const Vector &x)
{
  Vector force = Vector::Zero(x.size());
  REQUIRE(part.add(x, force, nullptr));
  return force;
}

void check_tangent(const Contribution &part, const solver::Discretisation &mesh, const Vector &x, int n_bodies)
{
  INFO(part.name());
  const auto      here = evaluate(part, mesh, x, n_bodies);
  Eigen::MatrixXd slope(x.size(), x.size());
  for (int i = 0; i < x.size(); ++i)
  {
    Vector up = x, down = x;
    up[i] += difference_step, down[i] -= difference_step;
    slope.col(i) = (force_at(part, up) - force_at(part, down)) / (2 * difference_step);
  }
  CHECK(here.tangent.cwiseAbs().maxCoeff() > 0);
  CHECK((here.tangent - slope).cwiseAbs().maxCoeff() < by_differences * here.tangent.cwiseAbs().maxCoeff());
}

/// Sum of all entries when the state x has been accepted by a copy.
template <typename Part>
double energy_at(Part copy, const Vector &x, double dt)
{
  copy.accept(x, dt);
  std::vector<solver::EnergyEntry> entries;
  copy.energies(entries);
  double sum = 0;
  for (const auto &entry : entries)
    sum += entry.value;
  return sum;
}

template <typename Part>
void check_force(const Part &part, const Vector &x, double dt = 1)
{
  INFO(part.name());
  const Vector force = force_at(part, x);
  Vector       slope(x.size());
  for (int i = 0; i < x.size(); ++i)
  {
    Vector up = x, down = x;
    up[i] += difference_step, down[i] -= difference_step;
    slope[i] = (energy_at(part, up, dt) - energy_at(part, down, dt)) / (2 * difference_step);
  }
  CHECK(force.cwiseAbs().maxCoeff() > 0);
  CHECK((force - slope).cwiseAbs().maxCoeff() < by_differences * force.cwiseAbs().maxCoeff());
}

/// Sum of the vertical components on the mesh.
double vertical_sum(const solver::Discretisation &mesh, const Vector &force)
{
  double sum = 0;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    if (const int dof = mesh.dof(node, 1); dof >= 0)
      sum += force[dof];
  return sum;
}

/// A moderate random shape and heights of the rigid bodies [m].
Vector random_state(const solver::Discretisation &mesh, Random &random, std::vector<double> bodies = {})
{
  Vector x(mesh.n_unknowns() + bodies.size());
  x.head(mesh.n_unknowns()) = 0.01 * size * random.vector(mesh.n_unknowns());
  for (std::size_t i = 0; i < bodies.size(); ++i)
    x[mesh.n_unknowns() + i] = bodies[i];
  return x;
}
} // namespace

TEST_CASE("a solid body: force is the slope of its energy, tangent the slope of its force", "[contributions]")
{
  Random random;
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
  Random random;
  const auto mesh = cube();
  const auto x = random_state(mesh, random);
  {
    const materials::Rubber rubber{{0.6e6, -0.05e6, 0.02e6, 0.1e6}, {1e9}, {materials::RelaxingBranch(0.3e6, 0, 0.02)}};
    solver::SolidBody body(mesh.group(0, 1, mesh.nodes(), {}), solver::make_kernel(rubber));
    body.begin_step(Vector::Zero(x.size()), 0.01);
    check_tangent(body, mesh, x, 0);
  }
  {
    const materials::Foam foam{{{1e6, 4, 0}},
                               {.closed_share = 0},
                               {},
                               {materials::RelaxingBranch(0.4e6, 0.3e6, 0.02),
                                materials::SlippingBranch(0.4e6, 0.3e6, 0.01, 5)}};
    solver::SolidBody body(mesh.group(0, 2, mesh.nodes(), {}), solver::make_kernel(foam));
    body.begin_step(Vector::Zero(x.size()), 0.01);
    body.accept(random_state(mesh, random), 0.01);
    body.begin_step(x, 0.01);
    check_tangent(body, mesh, random_state(mesh, random), 0);
  }
}

TEST_CASE("contact: slopes at face, edge, wall and ball, moving and fixed", "[contributions]")
{
  Random     random;
  const auto section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const auto mesh = cube(section);
  const auto top = faces(mesh, geometry::BoundaryId::top), base = faces(mesh, geometry::BoundaryId::base);
  const solver::ContactSettings settings{.penalty = 1e12};
  using solver::Contact;
  SECTION("flat face and rounded edge")
  {
    const Contact part("tup", mesh, top, geometry::FlatPuck(0.8 * size, 0.2 * size), settings, 0, size, false);
    const auto    x = random_state(mesh, random, {-0.1 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
  SECTION("side wall of a puck that has sunk in deeply")
  {
    // Outermost nodes stand beside the wall, so that it is the nearest boundary.
    const Contact part("tup", mesh, top, geometry::FlatPuck(0.95 * size, 0.1 * size), settings, 0, size, false);
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
    const Contact part("tup", mesh, top, geometry::Sphere(2 * size), settings, 0, size, false);
    const auto    x = random_state(mesh, random, {-0.1 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
  SECTION("fixed ground")
  {
    const Contact part("base", mesh, base, geometry::Plane(), settings, -1, 0.005 * size, true);
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
    Contact part("tup", mesh, top, geometry::Sphere(2 * size), rubbing, 0, size, false);
    const auto first = random_state(mesh, random, {-0.05 * size});
    part.settle(first);
    CHECK(part.settle(first) == 0);
    const auto x = random_state(mesh, random, {-0.06 * size});
    check_force(part, x);
    check_tangent(part, mesh, x, 1);
  }
}

TEST_CASE("friction never gives energy back that it took", "[contributions]")
{
  const auto mesh = cube();
  solver::ContactSettings settings{.penalty = 1e12, .friction = 0.5, .slip_length = 1e-6};
  solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top), geometry::Plane(), settings, 0, size, false);
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
  const int  n = mesh.n_unknowns();
  for (const double friction : {0.0, 0.5})
  {
    solver::Contact part("tup", mesh, faces(mesh, geometry::BoundaryId::top),
                         geometry::FlatPuck(0.8 * size, 0.2 * size), {.penalty = 1e12, .friction = friction}, 0, size,
                         false);
    const auto x = random_state(mesh, random, {-0.1 * size});
    part.settle(x);
    const Vector force = force_at(part, x);
    CHECK(force[n] < 0);
    CHECK(vertical_sum(mesh, force) == Approx(-force[n]).epsilon(rounding));
    CHECK(part.state(x).force == Approx(-force[n]).epsilon(rounding));
    // On a support that moves, the support feels the striker's force the other way.
    part.stand_on(1);
    Vector both = Vector::Zero(n + 2);
    both.head(n + 1) = x;
    both[n + 1] = 0.01 * size;
    check_tangent(part, mesh, both, 2);
    check_force(part, both);
    const Vector supported = force_at(part, both);
    CHECK(supported[n] + supported[n + 1] == Approx(0).margin(rounding * std::abs(supported[n])));
  }
}

namespace
{
/// A box with a void: film round a chamber in one strip, a layer above.
geometry::PlugMesh boxed_chamber()
{
  geometry::PlugOutline outline;
  outline.strips = {{.thickness = size, .zones = {{2 * size, 0}}, .chamber = geometry::AirUnitOutline{2 * size, 0.1 * size, 1}},
                    {.thickness = 0.3 * size, .zones = {{2 * size, 0}}, .chamber = {}}};
  outline.radius = 2 * size;
  outline.part_names = {"foam", "film"};
  outline.tup_contact_radius = 2 * size;
  return geometry::make_plug_mesh(
    outline, geometry::GridLines{{0, size, 1.9 * size, 2 * size}, {0, 0.1 * size, 0.5 * size, 0.9 * size, size, 1.3 * size}});
}
} // namespace

TEST_CASE("gas of a chamber: volume, work, stiffness", "[contributions]")
{
  Random     random;
  const auto section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const solver::Discretisation mesh(boxed_chamber(), section, HeldFaces{});
  const auto &chamber = mesh.mesh().chambers.front();
  const Vector zero = Vector::Zero(mesh.n_unknowns());
  const auto  x = random_state(mesh, random);
  const materials::ChamberGas adiabatic{.heat_time = std::numeric_limits<double>::infinity()};
  solver::GasChamber gas("unit", mesh, chamber, adiabatic, 2e-6, std::nullopt);

  const double drawn = section == MeshSection::axisymmetric ? chamber.drawn_volume : 2 * chamber.drawn_area;
  CHECK(gas.volume(zero) == Approx(drawn).epsilon(1e-12)); // a sum of few terms
  SECTION("sealed")
  {
    gas.seal(zero, 150e3);
    gas.begin_step(zero, 1e-6);
    // Exergy counts from the sealed state and the walls are never reached: its slope is the load.
    check_force(gas, x, 1e-6);
    check_tangent(gas, mesh, x, 0);
  }
  SECTION("held")
  {
    gas.hold(150e3);
    const Vector force = force_at(gas, x);
    for (int i = 0; i < x.size(); ++i)
    {
      Vector up = x, down = x;
      up[i] += difference_step, down[i] -= difference_step;
      CHECK(force[i] == Approx(-150e3 * (gas.volume(up) - gas.volume(down)) / (2 * difference_step))
                          .epsilon(by_differences)
                          .margin(by_differences * force.cwiseAbs().maxCoeff()));
    }
    check_tangent(gas, mesh, x, 0);
  }
}

TEST_CASE("fibres: pulled, slack and packed", "[contributions]")
{
  Random     random;
  const auto section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const solver::Discretisation mesh(boxed_chamber(), section, HeldFaces{});
  const auto                  &chamber = mesh.mesh().chambers.front();
  const double                 height = 0.8 * size;
  const solver::FibreBundle    fibres("unit", mesh, chamber, {2e9, 0.9 * height, 0.1 * height});
  SECTION("pulled")
  {
    const auto x = random_state(mesh, random);
    check_force(fibres, x);
    check_tangent(fibres, mesh, x, 0);
  }
  const auto pressed = [&](double remaining) {
    auto x = random_state(mesh, random);
    x *= 0.1;
    for (const auto &face : mesh.mesh().chambers.front().facing)
      for (const unsigned node : mesh.edge(mesh.mesh().faces[face.second]))
        x[mesh.dof(node, 1)] = (remaining - 1) * height;
    return x;
  };
  SECTION("packed")
  {
    const auto x = pressed(0.06);
    check_force(fibres, x);
    check_tangent(fibres, mesh, x, 0);
    CHECK(fibres.smallest_height(x) == Approx(0.06 * height).epsilon(0.2)); // random part
  }
  SECTION("slack")
  {
    CHECK(force_at(fibres, pressed(0.5)).cwiseAbs().maxCoeff() == 0);
  }
  SECTION("pressed through")
  {
    Vector force = Vector::Zero(mesh.n_unknowns());
    CHECK_FALSE(fibres.add(pressed(-0.01), force, nullptr));
  }
}

TEST_CASE("shell, weight and press", "[contributions]")
{
  Random     random;
  const auto mesh = cube();
  const int  n = mesh.n_unknowns();
  SECTION("a shell beds the side like springs over its area")
  {
    const double            stiffness = 3e7;
    const solver::SideShell shell(mesh, faces(mesh, geometry::BoundaryId::side), stiffness);
    const auto              x = random_state(mesh, random);
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
    const solver::RigidWeight weight("tup", n, 83.4);
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
