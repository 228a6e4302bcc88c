// SPDX-License-Identifier: Apache-2.0
// Strips of laminate, one layer of hexahedra, in three-point bending: their stiffness lies between that of a
// strip that is free to bend across its width, with 1/d11, and that of one that is not, with D11. Shear adds
// a share of 1.2 E t^2/(G L^2) to what they give way.
#include "materials/laminate.h"
#include "solver/models/solid_model.h"
#include "tests/external/check.h"
#include "tests/support/hex_mesh.h"

#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, GPa = 1e9, span = 80 * mm, width = 60 * mm, thickness = 1 * mm;

materials::Plies plies(const std::vector<double> &degrees)
{
  materials::Plies out;
  for (const double angle : degrees)
    out.push_back(
      {120 * GPa, 8 * GPa, 4.5 * GPa, 0.3, thickness / degrees.size(), angle * std::numbers::pi / 180});
  return out;
}

/// Force at the middle over its way, of a strip on two lines that hold it both ways [N/m].
double stiffness(const materials::Plies &plies, unsigned n_along)
{
  auto grid =
    hex_grid(even_lines(-0.5 * span, 0.5 * span, n_along), even_lines(0, width, n_along / 2), {0, thickness});
  std::vector<solver::SolidPart> parts(1);
  parts[0] = {"strip", all_cells(grid), {}, solver::make_kernel<3>(materials::make_laminate(plies)), 0};
  solver::SolidModel strip(std::move(grid), std::move(parts), [](const Point3 &p) {
    const bool edge = p[1] < 1e-9 && p[2] < 1e-9, middle = std::abs(p[0]) < 1e-9;
    const bool support = std::abs(p[0]) > 0.5 * span - 1e-9;
    return std::array{edge && middle, edge && (middle || support), p[2] < 1e-9 && support};
  });
  std::vector<int>   nose;
  for (unsigned node = 0; node < strip.mesh->n_nodes(); ++node)
    if (const auto &p = strip.mesh->nodes()[node]; std::abs(p[0]) < 1e-9 && p[2] > thickness - 1e-9)
      nose.push_back(strip.mesh->dof(node, 2));
  const double way = 1e-3 * mm;
  strip.equation.boundary.lead(nose, [way](double time) { return -way * time; });
  solver::TimeIntegrator integrator(strip.equation, 1.0);
  integrator.start();
  REQUIRE(integrator
            .step(1, {.newton = {.tolerance = 1e-8, .n_iterations = 30},
                      .force_scale = 0.01,
                      .quasi_static = true,
                      .along_tangent = true})
            .advanced);
  Vector      force;
  std::string failed;
  REQUIRE(strip.equation.forces(integrator.x, force, nullptr, failed));
  double sum = 0;
  for (const int unknown : nose)
    sum -= force[unknown];
  return sum / way;
}
} // namespace

TEST_CASE("strips of laminate bend between free and held across their width", "[external]")
{
  struct Case
  {
    const char         *name;
    std::vector<double> degrees;
    double              held, free; ///< [N/mm]
  };
  // 48 D b/L^3 with D11 and 1/d11 of classical laminate theory (R.M. Jones, Mechanics of Composite Materials,
  // ch. 4), worked out apart from this program.
  for (const auto &[name, degrees, held, free] :
       {Case{"[0]4", {0, 0, 0, 0}, 56.59, 56.25}, Case{"[90/0]s", {90, 0, 0, 90}, 10.375, 10.349},
        Case{"[45/-45]s", {45, -45, -45, 45}, 17.77, 6.82}})
  {
    const double shear = 1.2 * 120 / 4.5 * std::pow(thickness / span, 2); // as of fibres along the strip
    const double obtained = stiffness(plies(degrees), 12) / 1e3;
    INFO(name);
    // The bounds meet for the first two; what lies between counts from their middle.
    const double middle = 0.5 * (held + free), half = 0.5 * (held - free);
    external_check({.source =
                      "classical laminate theory: three-point bending of a strip 60 x 1 mm over 80 mm, "
                      "between 48 b/(d11 L^3) and 48 b D11/L^3 (Jones, Mechanics of Composite "
                      "Materials, ch. 4)",
                    .what = std::string("stiffness of ") + name + ", middle of both and half their distance",
                    .expected = middle,
                    .obtained = obtained,
                    .relative_tolerance = half / middle + shear + 1e-3, // of the mesh
                    .unit = "N/mm"});
  }
}
