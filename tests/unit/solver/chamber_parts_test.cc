// SPDX-License-Identifier: Apache-2.0
// Gas and fibres of a chamber: volume, work, slopes, the limits of the fibres.
#include "solver/contributions/fibre_bundle.h"
#include "solver/contributions/gas_chamber.h"
#include "tests/unit/solver/slopes.h"

using namespace solemech;
using namespace solemech::tests;

namespace
{
/// A box with a void: film round a chamber in one strip, a layer above.
geometry::PlugMesh boxed_chamber()
{
  geometry::PlugOutline outline;
  outline.strips = {{.thickness = size,
                     .zones = {{2 * size, 0}},
                     .chamber = geometry::AirUnitOutline{2 * size, 0.1 * size, 1}},
                    {.thickness = 0.3 * size, .zones = {{2 * size, 0}}, .chamber = {}}};
  outline.radius = 2 * size;
  outline.part_names = {"foam", "film"};
  outline.tup_contact_radius = 2 * size;
  return geometry::make_plug_mesh(
    outline, geometry::GridLines{{0, size, 1.9 * size, 2 * size},
                                 {0, 0.1 * size, 0.5 * size, 0.9 * size, size, 1.3 * size}});
}
} // namespace

TEST_CASE("gas of a chamber: volume, work, stiffness", "[contributions]")
{
  Random                       random;
  const auto                   section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
  const solver::Discretisation mesh(boxed_chamber(), section, HeldFaces{});
  const auto                  &chamber = mesh.mesh().chambers.front();
  const Vector                 zero = Vector::Zero(mesh.n_unknowns());
  const auto                   x = random_state(mesh, random);
  const materials::ChamberGas  adiabatic{.heat_time = std::numeric_limits<double>::infinity()};
  solver::GasChamber           gas("unit", mesh, chamber, adiabatic, 2e-6, std::nullopt);

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
  Random                       random;
  const auto                   section = GENERATE(MeshSection::axisymmetric, MeshSection::plane_strain);
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
