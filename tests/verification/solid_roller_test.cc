// SPDX-License-Identifier: Apache-2.0
// A roller pressed into foam beside the middle: in a solid that cannot widen along the roller it is the
// section in plane strain; contact in a section and in space are held to each other, with and without
// friction.
#include "solver/contributions/solid_contact.h"
#include "solver/models/solid_model.h"
#include "tests/support/hex_mesh.h"

using namespace solemech;
using namespace solemech::tests;
using solver::Freedom;

namespace
{
constexpr double length = 40e-3, depth = 10e-3, height = 15e-3, radius = 8e-3, aside = 17e-3; ///< [m]

template <int dim>
std::unique_ptr<solver::SolidKernelOf<dim>> foam()
{
  materials::Foam foam;
  foam.network = {{0.6e6, 8, 0.125}};
  return solver::make_kernel<dim>(foam);
}

/// Forces on the roller, along x and upwards, at the end of a way down of 3 mm [N/m].
struct Forces
{
  double along = 0, up = 0;
};

template <int dim>
Forces pressed(solver::EquationOfMotion &equation, solver::RigidContact<dim> &contact,
               const solver::RigidBody &roller, double along_roller)
{
  // Down, and a little aside, so that friction has something to do.
  equation.boundary.lead(roller.unknown(0), [](double time) { return 0.3e-3 * time; });
  equation.boundary.lead(roller.unknown(1), [](double time) { return -3e-3 * time; });
  solver::TimeIntegrator integrator(equation, 1.0);
  integrator.start();
  for (double step = 0.01; integrator.time < 1 - 1e-9; step = std::min({0.1, 2 * step, 1 - integrator.time}))
  {
    const auto outcome = integrator.step(step, {.newton = {.tolerance = 1e-9, .n_iterations = 30},
                                                .force_scale = 1e4 * along_roller,
                                                .quasi_static = true,
                                                .along_tangent = true});
    INFO(outcome.reason);
    REQUIRE(outcome.advanced);
  }
  Forces sum;
  for (const auto &touch : contact.touches(integrator.x))
    sum.along += touch.force[0] / along_roller, sum.up += touch.force[dim - 1] / along_roller;
  return sum;
}

solver::RigidBody roller()
{
  return {{Freedom::along_x, Freedom::along_z}, {0, 0}, {}, 0};
}
} // namespace

TEST_CASE("a roller in a solid that cannot widen is the roller of the section", "[solid]")
{
  const Lines x = even_lines(0, length, 10), z = even_lines(0, height, 4);
  for (const double friction : {0.0, 0.4})
  {
    const solver::ContactSettings settings{.penalty = 1e15, .friction = friction, .slip_length = 2e-5};

    StaticProblem flat(grid(x, z), MeshSection::whole_plane,
                       HeldFaces{.axis = {false, false}, .base = {true, true}});
    flat.fill(foam<2>());
    auto                                of_section = flat.equation.add(roller());
    std::vector<geometry::BoundaryFace> top;
    for (const auto &face : flat.mesh.mesh().faces)
      if (face.id == static_cast<int>(geometry::BoundaryId::top))
        top.push_back(face);
    auto &line = flat.equation.contribute<solver::RigidContact<2>>(
      "roller", flat.mesh, surface_points(flat.mesh, top), geometry::RigidSurface(geometry::Sphere(radius)),
      settings, of_section, std::array{aside, height}, false);
    const auto section = pressed<2>(flat.equation, line, of_section, 1);

    auto                           block = hex_grid(x, {0, depth}, z);
    std::vector<solver::SolidPart> parts(1);
    parts[0] = {"foam", all_cells(block), {}, foam<3>(), 0};
    solver::SolidModel             solid(std::move(block), std::move(parts), [](const Point3 &place) {
      const bool base = place[2] < 1e-9;
      return std::array{base, base || place[1] < 1e-9 || place[1] > depth - 1e-9, base};
    });
    auto                           of_solid = solid.equation.add(roller());
    std::vector<solver::SolidFace> above;
    for (const auto &face : outer_faces(*solid.mesh))
      if (face_centre(*solid.mesh, face)[2] > height - 1e-9)
        above.push_back(face);
    auto &area = solid.equation.contribute<solver::SolidContact>(
      "roller", *solid.mesh, above,
      geometry::SweptSurface{geometry::Sphere(radius), geometry::Sweep::along_y}, settings, of_solid,
      Point3{aside, 0, height}, false);
    const auto whole = pressed<3>(solid.equation, area, of_solid, depth);

    // Both in balance to 1e-9 of the force scale; what friction settles is left 1 % of a pass, so both take
    // the same passes.
    constexpr double balance = 1e-6;
    CHECK(section.up > 1e3);
    CHECK(whole.up == Approx(section.up).epsilon(balance));
    CHECK(whole.along == Approx(section.along).epsilon(balance).margin(balance * section.up));
    if (friction > 0)
      CHECK(std::abs(section.along) > 0.05 * section.up);
  }
}
