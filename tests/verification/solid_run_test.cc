// SPDX-License-Identifier: Apache-2.0
// Hexahedra in runs: through the same model, equation of motion, Newton's method and time steps as a section.
// A block under a bonded head against the section in plane strain; free compression, torsion and a bar that
// swings against closed forms; a rigid body that swings about an axis of its own choice in space.
#include "materials/hencky.h"
#include "solver/contributions/rigid_weight.h"
#include "solver/model.h"
#include "solver/part_law.h"
#include "tests/external/check.h"
#include "tests/support/closed_forms.h"
#include "tests/support/hex_mesh.h"

#include <cmath>
#include <numbers>

using namespace solemech;
using namespace solemech::tests;
using solver::Freedom;

namespace
{
constexpr double size = 20e-3; ///< of a block [m]

struct Solid : solver::ModelOf<HexMesh>
{
  solver::SolidBodyOf<3> *body;

  template <typename Held>
  Solid(HexMesh grid, Held &&held, std::unique_ptr<solver::SolidKernelOf<3>> kernel, double density = 0)
  {
    hold(grid, held);
    stand_on(std::make_unique<HexMesh>(std::move(grid)));
    auto group = mesh->group("body", all_cells(*mesh), kernel->n_branches(), mesh->nodes(), {});
    if (density > 0)
      mesh->add_mass(group, density, equation.mass.data());
    body = &equation.contribute<solver::SolidBodyOf<3>>(std::move(group), std::move(kernel));
  }

  /// Unknowns of a component of the nodes at a level, where they are free.
  std::vector<int> unknowns_at(double level, unsigned component) const
  {
    std::vector<int> unknowns;
    for (unsigned node = 0; node < mesh->n_nodes(); ++node)
      if (const int dof = mesh->dof(node, component);
          dof >= 0 && std::abs(mesh->nodes()[node][2] - level) < 1e-9)
        unknowns.push_back(dof);
    return unknowns;
  }
};

/// Sum of the forces that unknowns are led with.
double sum_of_forces(const solver::EquationOfMotion &equation, const Vector &x, const std::vector<int> &led)
{
  Vector      force;
  std::string failed;
  REQUIRE(equation.forces(x, force, nullptr, failed));
  double sum = 0;
  for (const int k : led)
    sum += force[k];
  return sum;
}

solver::StepSettings static_step(double force_scale)
{
  return {
    .newton = {.tolerance = 1e-11, .n_iterations = 30}, .force_scale = force_scale, .quasi_static = true};
}

/// A foam that creeps and slips, so that a step depends on those before it.
template <int dim>
std::unique_ptr<solver::SolidKernelOf<dim>> lossy_foam()
{
  materials::FoamData data;
  data.network = {{0.9e6, 4, 0.25}, {0.3e6, -2, 0}};
  data.relative_density = 0.16, data.closed_cells = 0.8, data.gas_exponent = 1.2;
  data.densification_modulus = 2e6;
  data.relaxing = {{0.4, 0.02}};
  data.slipping = {{0.3, 0.05}};
  materials::Material material;
  material.data = data;
  return solver::make_part_kernel<dim>(material, 1.0, solver::Case());
}

/// What a bench would read of a block under a bonded head that goes down and half way up again, step by step.
struct Loop
{
  std::vector<double> force;                   ///< per metre of depth [N/m]
  double              stored = 0, lost = 0;    ///< at the end, per metre of depth [J/m]
  double              work = 0, left_open = 0; ///< of the head; of the energy account
};

template <typename Model>
Loop run_loop(Model &model, const std::vector<int> &head, double depth)
{
  constexpr double   deepest = 0.2 * size, duration = 0.05;
  constexpr unsigned n_steps = 12;
  const auto         way = [](double time) {
    const double share = time / duration;
    return -deepest * (share < 2.0 / 3 ? 1.5 * share : 1 - 1.5 * (share - 2.0 / 3));
  };
  model.equation.boundary.lead(head, way);
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.start();
  Loop loop;
  for (unsigned i = 0; i < n_steps; ++i)
  {
    const auto outcome = integrator.step(duration / n_steps, static_step(1e6 * size * depth));
    INFO(outcome.reason);
    REQUIRE(outcome.advanced);
    loop.force.push_back(-sum_of_forces(model.equation, integrator.x, head) / depth);
  }
  for (const auto &entry : integrator.energies())
    (entry.type == solver::EnergyKind::stored ? loop.stored : loop.lost) += entry.value / depth;
  loop.work = integrator.driven_work() / depth;
  loop.left_open = integrator.numerical_energy() / depth;
  return loop;
}
} // namespace

TEST_CASE("a block of hexahedra that cannot widen along its length is the section in plane strain", "[solid]")
{
  const Lines      x = even_lines(0, size, 3), z = even_lines(0, size, 3);
  constexpr double length = 0.6 * size;

  StaticProblem flat(grid(x, z), MeshSection::plane_strain,
                     HeldFaces{.base = {true, true}, .top = {true, false}});
  flat.fill(lossy_foam<2>());
  std::vector<int> head;
  for (unsigned node = 0; node < flat.mesh.n_nodes(); ++node)
    if (flat.mesh.nodes()[node][1] > size - 1e-9)
      head.push_back(flat.mesh.dof(node, 1));
  const Loop section = run_loop(flat, head, 2); // a half section counts twice

  Solid solid(
    hex_grid(x, even_lines(0, length, 1), z),
    [](const Point3 &p) {
      const bool base = p[2]<1e-9, top = p[2]> size - 1e-9, end = p[1] < 1e-9 || p[1] > length - 1e-9;
      return std::array{p[0] < 1e-9 || base || top, base || top || end, base};
    },
    lossy_foam<3>());
  const Loop block = run_loop(solid, solid.unknowns_at(size, 2), length);

  // Both are in balance to 1e-11 of the force scale; what the middle of the block moves along its length is
  // 0.
  constexpr double balance = 1e-8;
  for (std::size_t i = 0; i < section.force.size(); ++i)
    CHECK(block.force[i] == Approx(section.force[i]).epsilon(balance));
  CHECK(block.stored == Approx(section.stored).epsilon(balance));
  CHECK(block.lost == Approx(section.lost).epsilon(balance));
  CHECK(block.work == Approx(section.work).epsilon(balance));
  CHECK(section.lost > 0.05 * section.stored);         // histories matter
  CHECK(std::abs(block.left_open) < 0.1 * block.lost); // of twelve steps
}

TEST_CASE("a free block of foam in compression", "[external]")
{
  const double    mu = 0.5e6, alpha = 4, nu = 0.2, strain = 0.4;
  materials::Foam foam;
  foam.network = {{mu, alpha, nu / (1 - 2 * nu)}};
  Solid solid(
    hex_grid(even_lines(0, size, 2), even_lines(0, size, 2), even_lines(0, size, 2)),
    [](const Point3 &p) {
      return std::array{p[0] < 1e-9, p[1] < 1e-9, p[2] < 1e-9};
    },
    solver::make_kernel<3>(foam));
  const auto head = solid.unknowns_at(size, 2);
  solid.equation.boundary.lead(head, [strain](double time) { return -strain * size * time; });
  solver::TimeIntegrator integrator(solid.equation, 1.0);
  integrator.start();
  constexpr unsigned n_steps = 8;
  for (unsigned i = 0; i < n_steps; ++i)
    REQUIRE(integrator.step(1.0 / n_steps, static_step(mu * size * size)).advanced);
  external_check(
    {.source = "free compression of a foam block by 40 %, Ogden-Hill law (Hill 1978, closed form)",
     .what = "nominal stress, hexahedra",
     .expected = foam_stress_free(mu, alpha, nu, strain),
     .obtained = -sum_of_forces(solid.equation, integrator.x, head) / (size * size),
     .relative_tolerance = 1e-7, // iterations and a homogeneous state: no error of the mesh
     .unit = "Pa"});
}

TEST_CASE("a square bar in torsion, its ends free to warp", "[external]")
{
  const double G = 1e6, length = 0.5 * size, angle = 1e-4;
  Solid        bar(
           hex_grid(even_lines(-0.5 * size, 0.5 * size, 4), even_lines(-0.5 * size, 0.5 * size, 4), {0, length}),
           [](const Point3 &p) {
      const bool foot = p[2] < 1e-9, middle = std::hypot(p[0], p[1]) < 1e-9;
      return std::array{foot, foot, foot && middle};
    },
           solver::make_kernel<3>(materials::IsotropicPlate{materials::hencky_from_young(2.6 * G, 0.3), {}}));
  // The head turns as a disc, z free.
  std::vector<std::pair<int, double>> levers; // unknown, way by the angle
  for (unsigned node = 0; node < bar.mesh->n_nodes(); ++node)
    if (const auto &p = bar.mesh->nodes()[node]; p[2] > length - 1e-9)
      for (const auto &[component, lever] : {std::pair{0u, -p[1]}, std::pair{1u, p[0]}})
      {
        bar.equation.boundary.hold(bar.mesh->dof(node, component), angle * lever);
        levers.emplace_back(bar.mesh->dof(node, component), lever);
      }
  const double           expected = 0.1406 * G * std::pow(size, 4) / length;
  solver::TimeIntegrator integrator(bar.equation, 1.0);
  integrator.start();
  REQUIRE(integrator.step(1, static_step(expected * angle / size)).advanced);
  Vector      force;
  std::string failed;
  REQUIRE(bar.equation.forces(integrator.x, force, nullptr, failed));
  double moment = 0;
  for (const auto &[unknown, lever] : levers)
    moment += force[unknown] * lever;
  external_check(
    {.source = "square bar in torsion, warping free: M = 0.1406 G a^4 theta/l (Saint-Venant; Timoshenko & "
               "Goodier, Theory of Elasticity, art. 109, from memory)",
     .what = "torsional stiffness, hexahedra, side 20 mm, G 1 MPa",
     .expected = expected,
     .obtained = moment / angle,
     .relative_tolerance = 3e-3, // four elements a side
     .unit = "N m"});
}

namespace
{
constexpr double bar_length = 0.1, density = 150, modulus = 2e6; ///< of the bar that swings [m, kg/m3, Pa]

/// Keeps what passed: how the head of the bar moved.
class Listener : public solver::Observer
{
public:
  explicit Listener(int unknown) : unknown_(unknown) {}
  std::optional<solver::Objection> look(const solver::AcceptedStep &step) override
  {
    const double now = step.state.x[unknown_];
    if (last_ * now < 0)
      through.push_back(step.time - (step.time - last_time_) * now / (now - last_));
    last_ = now, last_time_ = step.time;
    return {};
  }
  std::vector<double> through; ///< times of passing the middle [s]

private:
  int    unknown_;
  double last_ = 0, last_time_ = 0;
};

/// Period of the first mode of a bar held at its foot and all round, let go in its shape.
double bar_period(double expected, int n_steps)
{
  Solid bar(
    hex_grid({0, 0.1 * bar_length}, {0, 0.1 * bar_length}, even_lines(0, bar_length, 8)),
    [](const Point3 &p) {
      return std::array{true, true, p[2] < 1e-9};
    },
    // Without contraction Young's modulus is that of the confined bar.
    solver::make_kernel<3>(materials::IsotropicPlate{materials::hencky_from_young(modulus, 0), {}}), density);
  const int              head = bar.unknowns_at(bar_length, 2).front();
  const double           first = 1e-6 * bar_length, omega = 2 * std::numbers::pi / expected;
  solver::TimeIntegrator integrator(bar.equation, 1.0);
  for (unsigned node = 0; node < bar.mesh->n_nodes(); ++node)
    if (const int dof = bar.mesh->dof(node, 2); dof >= 0)
    {
      integrator.x[dof] = first * std::sin(0.5 * std::numbers::pi * bar.mesh->nodes()[node][2] / bar_length);
      integrator.a[dof] = -omega * omega * integrator.x[dof];
    }
  integrator.start();
  Listener listener(head);
  bar.observers = {&listener};
  const solver::StepSettings settings{.newton = {.tolerance = 1e-9},
                                      .force_scale = modulus * 1e-6 * std::pow(0.1 * bar_length, 2)};
  while (listener.through.size() < 3)
  {
    REQUIRE(integrator.step(expected / n_steps, settings).advanced);
    REQUIRE_FALSE(bar.show({integrator, integrator.time}));
  }
  return listener.through[2] - listener.through[0];
}
} // namespace

TEST_CASE("a bar of hexahedra swings along its length", "[external]")
{
  const double expected = 4 * bar_length * std::sqrt(density / modulus);
  const double fine = bar_period(expected, 120), coarse = bar_period(expected, 60);
  external_check({.source = "bar held at one end: T = 4 l sqrt(rho/E) (handbook)",
                  .what = "period of the first mode, hexahedra, 100 mm, E 2 MPa, 150 kg/m3",
                  .expected = expected,
                  .obtained = fine,
                  .relative_tolerance = 1e-3,
                  .unit = "s"});
  CHECK(std::log2((coarse - expected) / (fine - expected)) == Approx(2).margin(0.1)); // order of the scheme
}

TEST_CASE("a pendulum swings about an inclined axis in space", "[external]")
{
  constexpr double gravity = 9.81, length = 0.5, mass = 2, angle = 1.2, incline = 0.6;
  // One element at rest, whose middle alone is free: an equation wants a mesh.
  Solid solid(
    hex_grid({0, size}, {0, size}, {0, size}),
    [](const Point3 &p) {
      const bool held = std::hypot(p[0] - 0.5 * size, p[1] - 0.5 * size, p[2] - 0.5 * size) > 1e-9;
      return std::array{held, held, held};
    },
    solver::make_kernel<3>(materials::IsotropicPlate{{1e6, 2e6}, {}}), density);
  // Six freedoms, five of them held; the outer turns set the axis, the innermost one swings about it.
  const auto body = solid.equation.add({{Freedom::along_x, Freedom::along_y, Freedom::along_z,
                                         Freedom::about_z, Freedom::about_x, Freedom::about_y},
                                        {mass, mass, mass, 0, 0, mass * length * length},
                                        {0.1, 0.2, 0.3},
                                        0});
  solid.equation.contribute<solver::RigidWeight>("body", body, mass * gravity,
                                                 solver::Place{0.1, 0.2, 0.3 - length});
  solver::TimeIntegrator integrator(solid.equation, 0.9);
  const double           held[] = {0.01, -0.02, 0.03, 0.4, incline};
  for (std::size_t k = 0; k < std::size(held); ++k)
  {
    solid.equation.boundary.hold(body.unknown(k), held[k]);
    integrator.x[body.unknown(k)] = held[k];
  }
  // About an axis that rises by the incline, weight pulls with its cosine.
  const double pull = gravity * std::cos(incline);
  const int    turn = body.unknown(5);
  integrator.x[turn] = angle;
  integrator.a[turn] = -pull / length * std::sin(angle);
  integrator.start();
  Listener listener(turn);
  solid.observers = {&listener};
  const double expected = 4 * std::sqrt(length / pull) * std::comp_ellint_1(std::sin(0.5 * angle));
  while (listener.through.size() < 3)
  {
    REQUIRE(integrator.step(expected / 400, {.newton = {.tolerance = 1e-11}, .force_scale = mass * gravity})
              .advanced);
    REQUIRE_FALSE(solid.show({integrator, integrator.time}));
  }
  external_check({.source =
                    "pendulum of 0.5 m about an axis at 0.6 rad to the horizontal, let go at 1.2 rad: "
                    "T = 4 sqrt(l/(g cos(incline))) K(sin(angle/2)) (handbook)",
                  .what = "period, six freedoms",
                  .expected = expected,
                  .obtained = listener.through[2] - listener.through[0],
                  .relative_tolerance = 5e-4,
                  .unit = "s"});
}
