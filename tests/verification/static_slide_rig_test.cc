// SPDX-License-Identifier: Apache-2.0
// A slide as a case, from Case to readings, at any heading: Coulomb's law along the slide, work of friction, heat of
// the face, balance of the account, a bar that folds.
#include "solver/run.h"
#include "tests/support/catch.h"
#include "tests/support/rubber.h"

#include <cmath>
#include <numbers>

using namespace solemech;

namespace
{
constexpr double mm = 1e-3;

solver::Case bar(double mu, double heading_degrees, double width = 4 * mm, double height = 3 * mm)
{
  solver::SlideRig rig;
  rig.lug = {.width = width, .height = height, .spacing = 2 * width + 1 * mm, .skin = 1.5 * mm, .draft = 0.05,
             .edge_radius = 0.25 * mm, .fillet = 0.5 * mm, .worn_face = {}};
  rig.tup.diameter = rig.lug.spacing;
  rig.friction.mu_ref = mu;
  rig.court_heat = {0.18, 705, 1700}, rig.lug_heat = {0.2, 1150, 1900};
  rig.pressure = 0.2e6, rig.speed = 0.5, rig.distance = 20 * mm;
  rig.heading = heading_degrees * std::numbers::pi / 180;
  solver::Case data;
  data.label = "bar";
  data.layers.resize(2);
  data.layers[0].name = "skin", data.layers[0].material = tests::rubber(3.6e6), data.layers[0].thickness = rig.lug.skin;
  data.layers[1].name = "lug", data.layers[1].material = tests::rubber(3.6e6), data.layers[1].thickness = height;
  data.plug.section = solver::Section::plane_strain, data.plug.radius = 0.5 * rig.lug.spacing;
  data.rig = rig;
  return data;
}

solver::RunOptions with_error()
{
  solver::RunOptions options;
  options.n_refinements = 0;
  return options;
}

solver::RunOptions alone()
{
  solver::RunOptions options;
  options.estimate_error = false;
  return options;
}

double reading(const solver::Result &result, const char *name)
{
  const auto *found = result.find(name);
  REQUIRE(found != nullptr);
  return found->value;
}
} // namespace

TEST_CASE("with a constant coefficient the grip is that coefficient at every heading", "[slide]")
{
  const double mu = 0.6;
  for (const double heading : {0.0, 30.0, 60.0, 89.5, 90.0})
  {
    INFO(heading);
    const auto result = solver::run(bar(mu, heading), with_error());
    CHECK(result.warnings.empty());
    // Coulomb: friction of a steady slide points along the slide and is mu times the force.
    CHECK(reading(result, "effective_grip") == Approx(mu).epsilon(1e-3));
    // Work over way and face: mu p, whatever the heading.
    CHECK(reading(result, "friction_work") == Approx(mu * 0.2e6).epsilon(0.01));
    CHECK(result.facts.ledger_numerical + result.facts.ledger_residual < 0.005);
    CHECK(result.find("effective_grip")->error >= 0);
  }
}

TEST_CASE("along the bar nothing bends it", "[slide]")
{
  const auto along = solver::run(bar(0.6, 90), alone());
  const auto across = solver::run(bar(0.6, 0), alone());
  CHECK(std::abs(reading(along, "deflection")) < 0.02 * reading(across, "deflection"));
  CHECK(reading(along, "trailing_lift") < 0.01);
  CHECK(along.find("lug_shear_stiffness") == nullptr);
  CHECK(reading(across, "trailing_lift") > reading(along, "trailing_lift"));
}

TEST_CASE("bending and shearing in series are the short beam, near the stiffness that the lug has", "[slide]")
{
  // Worked for 6 x 4 mm of 4 MPa per mm of bar: h^3/(12 E' I) = 64/(12 x 5.3333 x 18), h/(5/6 G A) = 4/(5/6
  // x 1.3333 x 6) (handbook).
  auto data = bar(0.6, 0, 6 * mm, 4 * mm);
  for (auto &layer : data.layers)
    layer.material = tests::rubber(4e6);
  const auto   result = solver::run(data, alone());
  const double bend = reading(result, "bending_stiffness"), shear = reading(result, "shearing_stiffness");
  CHECK(6 * mm * bend == Approx(12 * 5.3333e6 * 18 / 64.0).epsilon(1e-4));
  CHECK(6 * mm * shear == Approx(5. / 6 * 1.3333e6 * 6 / 4).epsilon(1e-4));
  // Skin, draft and rounded edges give way as well: 40 % either way.
  CHECK(reading(result, "lug_shear_stiffness") == Approx(1 / (1 / bend + 1 / shear)).epsilon(0.4));
}

TEST_CASE("a pad is softer than the bar it is cut from, by 3/4 to 1 (Lindley 1979)", "[slide]")
{
  auto pad = bar(0.6, 0);
  std::get<solver::SlideRig>(pad.rig).pad_length = 4 * mm;
  const auto   of_bar = solver::run(bar(0.6, 0), alone()), of_pad = solver::run(pad, alone());
  const double ratio = reading(of_bar, "lug_shear_stiffness") / reading(of_pad, "lug_shear_stiffness");
  CHECK(ratio > 1.05);
  CHECK(ratio < 4. / 3);
  CHECK(reading(of_pad, "effective_grip") == Approx(0.6).epsilon(1e-3));
}

TEST_CASE("friction that falls with pressure grips less than at the mean pressure", "[slide]")
{
  // mu p is concave in p, so that by Jensen's inequality an uneven pressure on the touching face carries less than an
  // even one; the same for both directions of the slide.
  for (const double heading : {0.0, 90.0})
  {
    auto data = bar(0.6, heading);
    auto &rig = std::get<solver::SlideRig>(data.rig);
    rig.friction.pressure_exponent = 1.0 / 9, rig.friction.reference_pressure = rig.pressure;
    const auto   result = solver::run(data, alone());
    const double even = rig.pressure / reading(result, "contact_share");
    const double most = materials::CourtFriction(rig.friction).at(even, rig.speed, data.temperature).mu;
    CHECK(reading(result, "effective_grip") < most * (1 + 2e-3));
    CHECK(reading(result, "effective_grip") > 0.8 * most);
  }
}

TEST_CASE("the face warms as a half-space under constant heating, at most", "[slide]")
{
  const auto   data = bar(0.6, 0);
  const auto  &rig = std::get<solver::SlideRig>(data.rig);
  const auto   result = solver::run(data, alone());
  const double flux = 0.6 * rig.pressure / reading(result, "contact_share") * rig.speed, time = rig.distance / rig.speed;
  const double all = 2 * flux * std::sqrt(time / std::numbers::pi) / rig.lug_heat.effusivity(); // Carslaw & Jaeger
  CHECK(reading(result, "temperature_rise") > 0.02 * all);
  CHECK(reading(result, "temperature_rise") < all * materials::heat_share(rig.lug_heat, rig.court_heat));
}

TEST_CASE("a bar that does not come to a steady slide is a result that says so", "[slide]")
{
  const auto result = solver::run(bar(1.2, 0, 1.2 * mm, 3.5 * mm), alone());
  CHECK(result.complete);
  REQUIRE(!result.warnings.empty());
  CHECK(result.warnings.front().reading == "effective_grip");
  CHECK(result.find("effective_grip") != nullptr);
}
