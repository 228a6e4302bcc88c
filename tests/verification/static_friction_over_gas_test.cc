// SPDX-License-Identifier: Apache-2.0
// A layer on a pressurised air unit under a court with friction: unsymmetric terms, a rank-one term of the
// gas and a rigid body in one tangent. Checked against statics of the whole, Coulomb's bound, balance of
// work, and its own frictionless answer.
#include "materials/hencky.h"
#include "solver/contributions/gas_chamber.h"
#include "solver/contributions/sliding_contact.h"
#include "tests/support/single_body.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, size = 10 * mm, wall = 2 * mm, layer = 3 * mm;
constexpr double gauge = 10e3;        // [Pa]
constexpr double way_down = 1.5 * mm; // of the court, beyond the touch
constexpr double wanted_account = 0.005;

/// Half of a box of film with gas in it, and a layer above; the axis is the middle.
geometry::PlugMesh unit_under_layer()
{
  geometry::PlugOutline outline;
  outline.strips = {
    {.thickness = size, .zones = {{2 * size, 0}}, .chamber = geometry::AirUnitOutline{2 * size, wall, 1}},
    {.thickness = layer, .zones = {{2 * size, 0}}, .chamber = {}}};
  outline.radius = 2 * size;
  outline.part_names = {"layer", "film"};
  outline.tup_contact_radius = 2 * size;
  Lines across = even_lines(0, 2 * size - wall, 9);
  across.push_back(2 * size);
  return geometry::make_plug_mesh(
    outline, geometry::GridLines{across, {0, wall, 0.5 * size, size - wall, size, size + layer}});
}

void fill(StaticProblem &problem)
{
  const double moduli[] = {2e6, 50e6}, ratios[] = {0.3, 0.45};
  for (int part = 0; part < 2; ++part)
  {
    auto kernel = solver::make_kernel(
      materials::IsotropicPlate{materials::hencky_from_young(moduli[part], ratios[part]), {}});
    auto group = problem.mesh.group(part, kernel->n_branches(), problem.mesh.nodes(), {});
    problem.equation.contribute<solver::SolidBody>(std::move(group), std::move(kernel));
  }
}

/// Axis and base are led nowhere instead of held, so that what holds them can be asked for.
struct Grip
{
  std::vector<int> across, upwards; ///< unknowns

  explicit Grip(StaticProblem &problem)
  {
    const auto &mesh = problem.mesh;
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    {
      const bool on_axis = mesh.nodes()[node][0] < 1e-9, on_base = mesh.nodes()[node][1] < 1e-9;
      if (on_axis || on_base)
        across.push_back(mesh.dof(node, 0));
      if (on_base)
        upwards.push_back(mesh.dof(node, 1));
    }
    for (const auto *unknowns : {&across, &upwards})
      problem.equation.boundary.lead(*unknowns, [](double) { return 0.0; });
  }
};

/// Height of the gas on the axis [m].
double height_on_axis(const solver::Discretisation &mesh, const Vector &x)
{
  double height = 0;
  for (unsigned node = 0; node < mesh.n_nodes(); ++node)
    for (const auto &[level, sign] : {std::pair{size - wall, 1.0}, std::pair{wall, -1.0}})
      if (mesh.nodes()[node][0] < 1e-9 && std::abs(mesh.nodes()[node][1] - level) < 1e-9)
        height += sign * (level + x[mesh.dof(node, 1)]);
  return height;
}

struct Pressed
{
  Vector                                 x;
  std::vector<solver::SlidingPointState> points;
  double                                 work = 0, friction = 0, open = 0; ///< per metre of depth [J/m]
  double across = 0, upwards = 0; ///< what is left of all forces from outside, over the load [-]
};

Pressed press(double friction)
{
  StaticProblem problem(unit_under_layer(), MeshSection::plane_strain, HeldFaces{.axis = {false, false}});
  auto         &mesh = problem.mesh;
  auto         &equation = problem.equation;
  const Grip    grip(problem);
  fill(problem);
  auto &gas = equation.contribute<solver::GasChamber>("unit", mesh, mesh.mesh().chambers.front(),
                                                      materials::ChamberGas{}, 0.0, std::nullopt);
  std::vector<geometry::BoundaryFace> top;
  for (const auto &face : mesh.mesh().faces)
    if (face.id == static_cast<int>(geometry::BoundaryId::top))
      top.push_back(face);
  auto &court = equation.contribute<solver::SlidingContact>("court", mesh, top, 1e5 / std::pow(20e-6, 2),
                                                            20e-6, 0, size + layer);
  court.set_shear_law([friction](double pressure) {
    return solver::ShearLimit{friction * pressure, friction};
  });
  equation.add(solver::lifted_body(0));
  const int height = mesh.n_unknowns();

  const solver::StepSettings settings{
    .newton = {.tolerance = 1e-6, .n_iterations = 30}, .force_scale = gauge * 2 * size, .quasi_static = true};
  const auto step = [&](solver::TimeIntegrator &integrator) {
    const auto outcome = integrator.step(1.0, settings);
    INFO("friction " << friction << ": " << outcome.reason);
    REQUIRE(outcome.advanced);
  };
  // The unit gets its pressure with the court high above it, then it is sealed and the account is opened.
  solver::TimeIntegrator inflation(equation, 1.0);
  inflation.x[height] = size;
  equation.boundary.hold(height, size);
  inflation.start();
  for (int k = 1; k <= 5; ++k)
    gas.hold(0.2 * k * gauge), step(inflation);
  gas.seal(inflation.x, gauge);
  double highest = 0;
  for (const auto &point : court.points(inflation.x))
    highest = std::max(highest, point.position[1]);
  const double           touch = highest - size - layer;
  solver::TimeIntegrator pressing(equation, 1.0);
  pressing.x = inflation.x;
  pressing.x[height] = touch;
  pressing.start();
  constexpr int n_steps = 60;
  for (int k = 1; k <= n_steps; ++k)
    equation.boundary.hold(height, touch - way_down * k / n_steps), step(pressing);

  Pressed pressed{pressing.x, court.points(pressing.x)};
  pressed.work = pressing.driven_work();
  pressed.open = std::abs(pressing.numerical_energy()) + std::abs(pressing.residual_energy());
  for (const auto &entry : pressing.energies())
    if (entry.part == "court" && entry.type == solver::EnergyKind::dissipated)
      pressed.friction += entry.value;

  // Half of the section, counted twice: the court from above, the gas of the other half from the left, and
  // what holds axis and base.
  Vector      force;
  std::string failed;
  REQUIRE(equation.forces(pressing.x, force, nullptr, failed));
  const auto   court_now = court.state(pressing.x);
  const double gas_now =
    2 * (gas.state().pressure() - gas.gas().atmospheric_pressure) * height_on_axis(mesh, pressing.x);
  for (const int k : grip.across)
    pressed.across += force[k];
  for (const int k : grip.upwards)
    pressed.upwards += force[k];
  pressed.across += court_now.shear + gas_now;
  pressed.upwards -= court_now.normal;
  pressed.across /= court_now.normal, pressed.upwards /= court_now.normal;
  return pressed;
}

/// Distance of two answers over the way of the court.
double apart(const Pressed &a, const Pressed &b)
{
  return (a.x - b.x).lpNorm<Eigen::Infinity>() / way_down;
}
} // namespace

TEST_CASE(
  "friction over an air unit: forces balance, work is accounted for, and without friction none is left",
  "[friction_over_gas]")
{
  const auto smooth = press(0), rough = press(0.4);
  for (const auto *answer : {&smooth, &rough})
  {
    REQUIRE(answer->work > 0);
    CHECK(answer->open < wanted_account * answer->work);
    constexpr double balance = 1e-5; // residuals of 1e-6 of the force scale, some hundred unknowns
    CHECK(std::abs(answer->across) < balance);
    CHECK(std::abs(answer->upwards) < balance);
  }
  CHECK(smooth.friction == 0);
  CHECK(rough.friction > 0);
  CHECK(apart(rough, smooth) > 1e-3); // the case feels friction at all
  for (const auto &point : rough.points)
    CHECK(std::abs(point.shear) <= 0.4 * point.pressure * (1 + 1e-12)); // Coulomb

  // To first order the answer departs from the frictionless one in proportion to the coefficient.
  double before = apart(press(1e-2), smooth);
  for (const double friction : {1e-3, 1e-4})
  {
    INFO("friction " << friction);
    const double now = apart(press(friction), smooth);
    CHECK(before / now == Approx(10).epsilon(0.1));
    before = now;
  }
}
