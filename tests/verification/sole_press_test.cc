// SPDX-License-Identifier: Apache-2.0
// A whole sole of foams without lateral strain, pressed by a rigid plate: every place is a column of layers
// in series with the contact, whatever the mesh and the shares of its cells. Closed form of a column from the
// energy 2 mu/alpha^2 (l^alpha - 1 - alpha ln l) of Ogden-Hill foam with beta = 0 (Hill, in Advances in
// Applied Mechanics 18, 1978): P = 2 mu/alpha (l^(alpha-1) - 1/l).
#include "materials/foam.h"
#include "solver/models/sole_model.h"
#include "tests/support/catch.h"
#include "tests/unit/geometry/sample_sole.h"

#include "numerics/rising_root.h"

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double penalty = 1e11, exponent = 6; ///< [Pa/m2], [-]

double modulus_of(std::size_t layer)
{
  return layer == 2 ? 0.6e6 : 0.3e6;
}

solver::Sole flat_sole()
{
  const auto   shape = sample_sole();
  solver::Sole sole;
  sole.outline = shape.outline;
  sole.bottom = {.toe_spring_start = 0.2};
  for (const auto &layer : shape.layers)
  {
    auto &added = sole.layers.emplace_back();
    added.name = "layer " + std::to_string(sole.layers.size());
    added.shape = layer;
  }
  // The second one is drawn in by 6 mm, and its host is of the same foam.
  const std::array<double, 3> thickness{12e-3, 3e-3, 5e-3};
  for (std::size_t layer = 0; layer < 3; ++layer)
    sole.layers[layer].shape.thickness.fill(thickness[layer]);
  return sole;
}

std::unique_ptr<solver::SolidKernelOf<3>> foam(const solver::SoleLayer &layer)
{
  materials::Foam foam;
  foam.network = {{modulus_of(layer.name.back() - '1'), exponent, 0}};
  return solver::make_kernel<3>(foam);
}

/// How far the plate goes until it presses like this [m]: into the contact, and each layer closer.
double way_of(const solver::Sole &sole, double pressure)
{
  double way = std::sqrt(pressure / penalty);
  for (std::size_t layer = 0; layer < 3; ++layer)
  {
    const double stretch = numerics::rising_root(
      [&](double l) {
        return 2 * modulus_of(layer) / exponent * (std::pow(l, exponent - 1) - 1 / l) + pressure;
      },
      0.01, 1);
    way += sole.layers[layer].shape.thickness[0] * (1 - stretch);
  }
  return way;
}
} // namespace

TEST_CASE("a whole sole without lateral strain is so many columns under a plate", "[sole]")
{
  const auto               sole = flat_sole();
  const geometry::SoleBody body(shape_of(sole));
  const auto               meshed = geometry::make_sole_mesh(
                  body, {.plan = {.along = 30e-3, .across = 25e-3, .n_rim = 1}, .n_cells = {2, 1, 1}});
  double area = 0;
  for (unsigned c = 0; c < meshed.plan.cells.size(); ++c)
    area += geometry::cell_area(meshed.plan, c);
  const double top = body.height(0.1);

  solver::SolidModel model(solver::solid_of(meshed.columns), solver::parts_of(sole, meshed, foam),
                           [](const auto &place) {
                             const bool base = place[2] < 1e-9;
                             return std::array{base, base, base};
                           });
  CHECK(model.bodies.size() == 3);
  auto  plate = model.equation.add(solver::lifted_body(0));
  auto &contact = model.equation.contribute<solver::SolidContact>(
    "plate", *model.mesh, solver::faces_on(meshed.columns, geometry::SoleSide::top),
    geometry::SweptSurface{geometry::Plane()}, solver::ContactSettings{.penalty = penalty}, plate,
    std::array<double, 3>{0, 0, top}, false);

  constexpr double way = 6e-3;
  model.equation.boundary.lead(plate.unknown(0), [](double time) { return -way * time; });
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.start();
  for (double step = 0.02; integrator.time < 1 - 1e-9; step = std::min({0.2, 2 * step, 1 - integrator.time}))
  {
    const auto outcome = integrator.step(step, {.newton = {.tolerance = 1e-10, .n_iterations = 30},
                                                .force_scale = 1e5 * area,
                                                .quasi_static = true,
                                                .along_tangent = true});
    INFO(outcome.reason);
    REQUIRE(outcome.advanced);
  }
  const double pressure = numerics::rising_root([&](double p) { return way_of(sole, p) - way; }, 0, 1e7);
  const auto   state = contact.state(integrator.x);
  CHECK(state.force[2] == Approx(area * pressure).epsilon(1e-8)); // balance to 1e-10 of the force scale
  CHECK(state.area == Approx(area).epsilon(1e-8));
  CHECK(state.deepest == Approx(std::sqrt(pressure / penalty)).epsilon(1e-8));
}
