// SPDX-License-Identifier: Apache-2.0
// A whole sole cut along its length: volumes against its body, laminates against classical laminate theory,
// and how hard it bends against published ranges.
#include "geometry/errors.h"
#include "solver/models/sole_section.h"
#include "solver/rigs/sole_benches.h"
#include "tests/external/check.h"
#include "tests/support/section_block.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

using namespace solemech;
using namespace solemech::tests;
using solver::degree;

namespace
{
constexpr double mm = 1e-3, MPa = 1e6;

/// A sole of no shoe: 290 mm of foam, a plate between foam and rubber where wanted.
solver::Sole sole(bool with_plate)
{
  solver::Sole made;
  made.outline.length = 0.290;
  made.outline.half_widths = {{0.024, 0.033, 0.031, 0.036, 0.044, 0.046, 0.032},
                              {0.024, 0.034, 0.036, 0.043, 0.050, 0.047, 0.030}};
  made.bottom = {0.030, 0.004, 0.193, 0.012, 0};
  made.layers.resize(with_plate ? 3 : 2);
  made.layers[0] = {"foam", elastic_foam(0.6 * MPa, 6, 0.1), {}, {}, {}};
  made.layers[0].shape.thickness = {20 * mm, 22 * mm, 18 * mm, 12 * mm, 8 * mm};
  if (with_plate)
  {
    made.layers[1] = {"plate", elastic_plate(30e3 * MPa, 0.3), {}, {}, {}};
    made.layers[1].shape.thickness.fill(1 * mm);
    made.layers[1].shape.inset.fill(6 * mm);
  }
  made.layers.back() = {"outsole", elastic_rubber(1.2 * MPa, 600 * MPa), {}, {}, {}};
  made.layers.back().shape.thickness.fill(3 * mm);
  return made;
}
} // namespace

TEST_CASE("the section of a sole has the volume of its layers", "[section]")
{
  auto whole = sole(true);
  whole.bottom = {}; // what a curve does to the volume is no matter here
  const geometry::SoleBody body(shape_of(whole));
  const auto               section = long_section(whole, body, geometry::sole_sizes(body, 0.002));
  const auto               volumes = body.volumes();
  for (std::size_t layer = 0; layer < 3; ++layer)
  {
    const auto &part = section.parts[layer];
    CHECK(part.name == whole.layers[layer].name);
    double volume = 0;
    for (std::size_t i = 0; i < part.cells.size(); ++i)
    {
      const auto  &v = section.mesh.cells[part.cells[i]].vertices;
      const auto   at = [&](unsigned k) { return section.mesh.vertices[v[k]]; };
      const auto   a = at(0), b = at(1), c = at(2), d = at(3); // d lies across from a
      const double area = 0.5 * ((d[0] - a[0]) * (c[1] - b[1]) - (c[0] - b[0]) * (d[1] - a[1]));
      CHECK(area > 0);
      volume += area * part.widths[i];
    }
    CHECK(volume == Approx(volumes[layer]).epsilon(0.01)); // the section ends short of the round ends
  }
}

TEST_CASE("a laminate counts with its bending stiffness along the foot", "[external]")
{
  struct Layup
  {
    const char         *name;
    std::vector<double> angles; ///< foot side first [degrees]
    double              D11;    ///< of 1 mm in all [N mm]
  };
  for (const auto &[name, angles, D11] : {Layup{"[0]4", {0, 0, 0, 0}, 10060.4},
                                          {"[0/90]s", {0, 90, 90, 0}, 8886.7},
                                          {"[90/0]s", {90, 0, 0, 90}, 1844.4},
                                          {"[0/45/-45/90]s", {0, 45, -45, 90, 90, -45, 45, 0}, 7109.7},
                                          {"[45/-45]s", {45, -45, -45, 45}, 3158.4}})
  {
    solver::SoleLayer layer{"plate", elastic_plate(1e9, 0.3), {}, {}, {}};
    for (const double angle : angles)
      layer.plies.push_back({120e3 * MPa, 8e3 * MPa, 4.5e3 * MPa, 0.3, 1 * mm / double(angles.size()),
                             angle * std::numbers::pi / 180});
    const auto   material = material_in_section(layer);
    const auto  &data = std::get<materials::PlateData>(material.data);
    const double nu = data.poisson_ratio;
    external_check({"classical laminate theory, E1 120, E2 8, G12 4.5 GPa, Poisson ratio 0.3, 1 mm in all",
                    fmt::format("D11 of {}, as the plate of a section", name), D11,
                    data.youngs_modulus / (1 - nu * nu) * std::pow(1 * mm, 3) / 12 * 1e3, 1e-4, "N mm"});
  }
}

TEST_CASE("a sole bends within what soles do, and a plate makes it stiffer", "[section]")
{
  double bend[2], flexion[2];
  for (const bool with_plate : {false, true})
  {
    const auto bent = bend_of(sole(with_plate), {}, 0.6);
    CHECK(bent.rig.plate == (with_plate ? "plate" : ""));
    const auto outcome = run_bend(bent.section, {}, bent.rig, {});
    INFO(outcome.record.stop_reason);
    REQUIRE(outcome.record.complete);
    bend[with_plate] = *outcome.stiffness;

    solver::FlexionRig arm;
    arm.greatest_angle = 35 * degree;
    const auto flexed = flexion_of(sole(with_plate), arm, 0.6);
    const auto turned = run_flexion(flexed.section, {}, flexed.rig, {});
    INFO(turned.record.stop_reason);
    REQUIRE(turned.record.complete);
    flexion[with_plate] = *turned.stiffness * degree;
    CHECK(std::abs(turned.flex_line) < 30 * mm);
  }
  // Three-point bend of running shoes with flat plates 13 to 84 N/mm (Beck et al. 2020, Sci. Rep. 10:17154,
  // quoted from memory), of others 8 to 120; flexion 0.02 to 0.8 N m a degree.
  // Those are whole shoes: a bare sole of foam without a plate may lie below, and only has to be softer.
  CHECK(bend[1] > 8e3);
  CHECK(bend[1] < 120e3);
  for (const double stiffness : flexion)
  {
    CHECK(stiffness > 0.02);
    CHECK(stiffness < 0.8);
  }
  CHECK(bend[1] > 1.2 * bend[0]);
  CHECK(flexion[1] > 2 * flexion[0]);
}

TEST_CASE("supports that would stand beyond a sole are refused", "[section]")
{
  solver::BendRig rig;
  rig.span = 300 * mm;
  CHECK_THROWS_AS(bend_of(sole(true), rig, 1), geometry::InvalidGeometry);
}
