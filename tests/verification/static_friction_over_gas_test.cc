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

/// The unit on its base, the court above.
struct UnderCourt
{
  StaticProblem problem{unit_under_layer(), MeshSection::plane_strain, HeldFaces{.axis = {false, false}}};
  solver::EquationOfMotion &equation = problem.equation;
  Grip                      grip{problem};
  solver::GasChamber       *gas;
  solver::SlidingContact   *court;

  explicit UnderCourt(double friction)
  {
    const auto &mesh = problem.mesh;
    fill(problem);
    gas = &equation.contribute<solver::GasChamber>("unit", mesh, mesh.mesh().chambers.front(),
                                                   materials::ChamberGas{}, 0.0, std::nullopt);
    std::vector<geometry::BoundaryFace> top;
    for (const auto &face : mesh.mesh().faces)
      if (face.id == static_cast<int>(geometry::BoundaryId::top))
        top.push_back(face);
    court = &equation.contribute<solver::SlidingContact>("court", mesh, top, 1e5 / std::pow(20e-6, 2), 20e-6,
                                                         0, size + layer);
    court->set_shear_law([friction](double pressure) {
      return solver::ShearLimit{friction * pressure, friction};
    });
    equation.add(solver::lifted_body(0));
  }

  int height() const { return problem.mesh.n_unknowns(); } ///< of the court

  static void step(solver::TimeIntegrator &integrator)
  {
    const auto outcome = integrator.step(1.0, {.newton = {.tolerance = 1e-6, .n_iterations = 30},
                                               .force_scale = gauge * 2 * size,
                                               .quasi_static = true});
    INFO(outcome.reason);
    REQUIRE(outcome.advanced);
  }

  /// Gives the unit its pressure with the court high above it, and seals it.
  Vector inflated()
  {
    solver::TimeIntegrator integrator(equation, 1.0);
    integrator.x[height()] = size;
    equation.boundary.hold(height(), size);
    integrator.start();
    for (int k = 1; k <= 5; ++k)
      gas->hold(0.2 * k * gauge), step(integrator);
    gas->seal(integrator.x, gauge);
    return integrator.x;
  }

  /// Presses the court down from where it touches.
  void press(solver::TimeIntegrator &integrator)
  {
    double highest = 0;
    for (const auto &point : court->points(integrator.x))
      highest = std::max(highest, point.position[1]);
    const double touch = highest - size - layer;
    integrator.x[height()] = touch;
    integrator.start();
    constexpr int n_steps = 60;
    for (int k = 1; k <= n_steps; ++k)
      equation.boundary.hold(height(), touch - way_down * k / n_steps), step(integrator);
  }

  /// What is left of all forces from outside on the half that is drawn, counted twice, over the load: the
  /// court from above, the gas of the other half from the left, and what holds axis and base. Across, upwards
  /// [-].
  std::array<double, 2> left_over(const Vector &x) const
  {
    Vector      force;
    std::string failed;
    REQUIRE(equation.forces(x, force, nullptr, failed));
    const auto   now = court->state(x);
    const double pressure = gas->state().pressure() - gas->gas().atmospheric_pressure;
    double       across = now.shear + 2 * pressure * height_on_axis(problem.mesh, x), upwards = -now.normal;
    for (const int k : grip.across)
      across += force[k];
    for (const int k : grip.upwards)
      upwards += force[k];
    return {across / now.normal, upwards / now.normal};
  }
};

struct Pressed
{
  Vector                                 x;
  std::vector<solver::SlidingPointState> points;
  std::array<double, 2>                  left_over; ///< of the forces from outside, over the load [-]
  double                                 work = 0, friction = 0, open = 0; ///< per metre of depth [J/m]
};

Pressed press(double friction)
{
  UnderCourt             unit(friction);
  const Vector           before = unit.inflated();
  solver::TimeIntegrator integrator(unit.equation, 1.0); // its account is open from here on
  integrator.x = before;
  unit.press(integrator);
  Pressed pressed{integrator.x, unit.court->points(integrator.x), unit.left_over(integrator.x)};
  pressed.work = integrator.driven_work();
  pressed.open = std::abs(integrator.numerical_energy()) + std::abs(integrator.residual_energy());
  for (const auto &entry : integrator.energies())
    if (entry.part == "court" && entry.type == solver::EnergyKind::dissipated)
      pressed.friction += entry.value;
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
    CHECK(std::abs(answer->left_over[0]) < balance);
    CHECK(std::abs(answer->left_over[1]) < balance);
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
