// SPDX-License-Identifier: Apache-2.0
// A slide as a case, from Case to readings, at any heading: Coulomb's law along the slide, work of friction,
// heat of the face, balance of the account, a bar that folds.
#include "tests/support/catch.h"
#include "tests/support/result_reading.h"
#include "tests/support/slide_case.h"

#include <cmath>
#include <numbers>

using namespace solemech;
using tests::alone;
using tests::reading;

namespace
{
constexpr double mm = 1e-3;

solver::Case bar(double mu, double heading_degrees, double width = 4 * mm, double height = 3 * mm)
{
  auto data = tests::sliding_bar(mu, width, height, 2 * width + 1 * mm);
  std::get<solver::SlideRig>(data.rig).heading = heading_degrees * std::numbers::pi / 180;
  return data;
}

solver::RunOptions with_error()
{
  solver::RunOptions options;
  options.n_refinements = 0;
  return options;
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
  // Skin, draft and rounded edges give way as well: 10 % either way.
  CHECK(reading(result, "lug_shear_stiffness") == Approx(1 / (1 / bend + 1 / shear)).epsilon(0.1));
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
  // mu p is concave in p, so that by Jensen's inequality an uneven pressure on the touching face carries less
  // than an even one; the same for both directions of the slide.
  for (const double heading : {0.0, 90.0})
  {
    auto  data = bar(0.6, heading);
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
  const double flux = 0.6 * rig.pressure / reading(result, "contact_share") * rig.speed,
               time = rig.distance / rig.speed;
  const double all =
    2 * flux * std::sqrt(time / std::numbers::pi) / rig.lug_heat.effusivity(); // Carslaw & Jaeger
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
