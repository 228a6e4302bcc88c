// SPDX-License-Identifier: Apache-2.0
// The time integrator: coefficients worked by hand, order of accuracy on a vibrating body against its exact
// solution, and the books of energy of bodies that lose some.
#include "materials/hencky.h"
#include "solver/time/generalised_alpha.h"
#include "tests/support/single_body.h"

#include <Eigen/Eigenvalues>

using namespace solemech;
using namespace solemech::tests;

TEST_CASE("coefficients follow from the spectral radius", "[time]")
{
  // Worked by hand from Chung & Hulbert 1993: a_m = (2 rho - 1)/(rho + 1), a_f = rho/(rho + 1),
  // gamma = 1/2 - a_m + a_f, beta = (1 - a_m + a_f)^2/4.
  struct Row
  {
    double rho, alpha_m, alpha_f, gamma, beta;
  };
  for (const auto &[rho, alpha_m, alpha_f, gamma, beta] :
       {Row{1, 0.5, 0.5, 0.5, 0.25}, Row{0, -1, 0, 1.5, 1}, Row{0.5, 0, 1. / 3, 5. / 6, 4. / 9},
        Row{0.8, 1. / 3, 4. / 9, 11. / 18, 25. / 81}})
  {
    const auto c = solver::alpha_coefficients(rho);
    CHECK(c.alpha_m == Approx(alpha_m).margin(1e-15));
    CHECK(c.alpha_f == Approx(alpha_f).margin(1e-15));
    CHECK(c.gamma == Approx(gamma).epsilon(1e-15));
    CHECK(c.beta == Approx(beta).epsilon(1e-15));
  }
  CHECK_THROWS_AS(solver::alpha_coefficients(1.1), std::invalid_argument);
  CHECK_THROWS_AS(solver::alpha_coefficients(-0.1), std::invalid_argument);
}

namespace
{
constexpr double size = 0.02, density = 150;

/// A foam cylinder on a bonded base, ready to vibrate.
struct Vibration
{
  StaticProblem problem{grid(even_lines(0, size, 2), even_lines(0, size, 2)), MeshSection::axisymmetric,
                        HeldFaces{.base = {true, true}}};

  explicit Vibration(std::unique_ptr<solver::SolidKernel> kernel)
  {
    problem.fill(std::move(kernel));
    problem.mesh.add_mass(problem.body->group(), density, problem.equation.mass.data());
  }

  Eigen::MatrixXd dense(const double *values) const
  {
    solver::SparseMatrix matrix = problem.mesh.pattern();
    std::copy_n(values, matrix.nonZeros(), matrix.valuePtr());
    return Eigen::MatrixXd(matrix).selfadjointView<Eigen::Lower>();
  }
};

std::unique_ptr<solver::SolidKernel> elastic()
{
  return solver::make_kernel(materials::IsotropicPlate{{1e6, 2e6}, {}});
}
} // namespace

TEST_CASE("the scheme is of second order on a vibrating body", "[time]")
{
  // Small enough for the quadratic part of the energy alone: the strain enters at 1e-7.
  constexpr double amplitude = 1e-7 * size;
  constexpr double least_order = 1.9;
  Vibration        body(elastic());
  const int        n = body.problem.mesh.n_unknowns();
  solver::Tangent  tangent;
  std::string      failed;
  Vector           force;
  body.problem.equation.begin_step(Vector::Zero(n), 0);
  REQUIRE(body.problem.equation.forces(Vector::Zero(n), force, &tangent, failed));
  const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> modes(
    body.dense(tangent.values.data()), body.dense(body.problem.equation.mass.data()));
  const double frequency = std::sqrt(modes.eigenvalues()[0]);
  const Vector shape = amplitude * modes.eigenvectors().col(0).normalized();
  const double end = 3.0 / frequency; // about half a cycle

  for (const double rho : {1.0, 0.8, 0.0})
  {
    std::vector<double> errors;
    for (const int n_steps : {20, 40, 80})
    {
      solver::TimeIntegrator integrator(body.problem.equation, rho);
      integrator.x = shape;
      integrator.a = -frequency * frequency * shape;
      const solver::StepSettings settings{.newton = {.tolerance = 1e-9},
                                          .force_scale = frequency * frequency *
                                                         body.problem.equation.inertia(shape).norm()};
      integrator.start();
      for (int i = 0; i < n_steps; ++i)
        REQUIRE(integrator.step(end / n_steps, settings).advanced);
      errors.push_back((integrator.x - std::cos(frequency * end) * shape).norm() / shape.norm());
    }
    INFO("spectral radius " << rho << ", errors " << errors[0] << " " << errors[1] << " " << errors[2]);
    CHECK(std::log2(errors[0] / errors[1]) > least_order);
    CHECK(std::log2(errors[1] / errors[2]) > least_order);
  }
}

TEST_CASE("a column whose top is led as a function of time follows its standing wave", "[time]")
{
  // u = U sin(kz)/sin(kL) sin(wt) with w = k sqrt(E/rho): one-dimensional wave equation, held below, led
  // above.
  constexpr double youngs_modulus = 1e6, amplitude = 1e-7 * size, least_order = 1.9;
  const double     k = 1 / size, frequency = k * std::sqrt(youngs_modulus / density), end = 2 / frequency;
  const auto       column = [&](double z) { return amplitude * std::sin(k * z) / std::sin(k * size); };
  const auto       run = [&](int n_steps) {
    StaticProblem problem{grid(even_lines(0, size, 1), even_lines(0, size, 4)), MeshSection::axisymmetric,
                          HeldFaces{.base = {true, true}, .side = {true, false}}};
    problem.fill(
            solver::make_kernel(materials::IsotropicPlate{materials::hencky_from_young(youngs_modulus, 0), {}}));
    const auto &mesh = problem.mesh;
    mesh.add_mass(problem.body->group(), density, problem.equation.mass.data());
    std::vector<int> top;
    for (unsigned node = 0; node < mesh.n_nodes(); ++node)
      if (mesh.nodes()[node][1] > 0.999 * size)
        top.push_back(mesh.dof(node, 1));
    problem.equation.boundary.lead(top, [&](double time) { return amplitude * std::sin(frequency * time); });
    solver::TimeIntegrator integrator(problem.equation, 1.0);
    integrator.v = unknown_values(mesh, field(mesh, [&](const Point &p) {
                                    return Point{0, frequency * column(p[1])};
                                  }));
    const solver::StepSettings settings{.newton = {.tolerance = 1e-9},
                                              .force_scale = youngs_modulus * amplitude * size};
    integrator.start();
    const double at_start = integrator.kinetic_energy();
    for (int i = 0; i < n_steps; ++i)
      REQUIRE(integrator.step(end / n_steps, settings).advanced);
    // What leads the top has given what the column holds now.
    CHECK(integrator.driven_work() ==
                Approx(integrator.kinetic_energy() + problem.stored_energy() - at_start).epsilon(1e-5));
    CHECK(integrator.x[top.front()] == Approx(amplitude * std::sin(frequency * end)).epsilon(1e-12));
    const Vector exact = std::sin(frequency * end) * unknown_values(mesh, field(mesh, [&](const Point &p) {
                                                                      return Point{0, column(p[1])};
                                                                    }));
    return (integrator.x - exact).norm() / exact.norm();
  };
  const double coarse = run(20), middle = run(40), fine = run(80);
  INFO("errors " << coarse << " " << middle << " " << fine);
  CHECK(std::log2(coarse / middle) > least_order);
  CHECK(std::log2(middle / fine) > least_order);
}

TEST_CASE("without losses the scheme of radius one keeps the energy of a small vibration", "[time]")
{
  Vibration              body(elastic());
  const auto            &mesh = body.problem.mesh;
  solver::TimeIntegrator integrator(body.problem.equation, 1.0);
  integrator.v = unknown_values(mesh, field(mesh, [](const Point &p) {
                                  return Point{0, -1e-4 * p[1] / size};
                                }));
  const solver::StepSettings settings{.newton = {.tolerance = 1e-9}, .force_scale = 1e-4};
  integrator.start();
  const double start = integrator.kinetic_energy();
  for (int i = 0; i < 50; ++i)
    REQUIRE(integrator.step(2e-4, settings).advanced);
  double stored = 0;
  for (const auto &entry : integrator.energies())
    stored += entry.value;
  // Mean forces of a nearly linear body do its exact work; strain here is 1e-5.
  CHECK(integrator.kinetic_energy() + stored == Approx(start).epsilon(1e-4));
  CHECK(std::abs(integrator.numerical_energy()) < 1e-4 * start);
  CHECK(std::abs(integrator.residual_energy()) < 1e-6 * start);
}

TEST_CASE("a body with branches loses energy, never gains it, and the books close with the step", "[time]")
{
  const materials::Foam foam{
    {{1.05e6, 4, 0.25}},
    {0.16, 0.9, 101325, 1},
    {0.16, 1e6, 3},
    {materials::RelaxingBranch(0.3e6, 0.3e6, 2e-3), materials::SlippingBranch(0.3e6, 0.3e6, 0.02, 0.05)}};
  const auto gap = [&](int n_steps) {
    Vibration              body(solver::make_kernel(foam));
    const auto            &mesh = body.problem.mesh;
    solver::TimeIntegrator integrator(body.problem.equation, 0.9);
    integrator.v = unknown_values(mesh, field(mesh, [](const Point &p) {
                                    return Point{0, -15.0 * p[1] / size};
                                  }));
    const solver::StepSettings settings{.newton = {.tolerance = 1e-8}, .force_scale = 100};
    integrator.start();
    const double start = integrator.kinetic_energy();
    double       last_loss = 0;
    const double end = 2e-3;
    for (int i = 0; i < n_steps; ++i)
    {
      REQUIRE(integrator.step(end / n_steps, settings).advanced);
      double loss = 0;
      for (const auto &entry : integrator.energies())
        if (entry.type == solver::EnergyKind::dissipated)
          loss += entry.value;
      REQUIRE(loss >= last_loss);
      last_loss = loss;
    }
    double sum = integrator.kinetic_energy();
    for (const auto &entry : integrator.energies())
      sum += entry.value;
    CHECK(last_loss > 0.05 * start); // it is a foam that loses
    return std::abs(sum - start) / start;
  };
  const double coarse = gap(100), fine = gap(200);
  INFO(coarse << " " << fine);
  // What the books lack is the scheme's: second order in the step, less near the kinks of slip.
  CHECK(std::log2(coarse / fine) > 1.5);
}
