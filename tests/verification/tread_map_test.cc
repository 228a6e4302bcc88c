// SPDX-License-Identifier: Apache-2.0
// A whole sole on a court: turning moment and tilted contact against closed forms, its grip against Coulomb's
// law and against single slides of its bars.
#include "solver/rigs/tread.h"
#include "solver/sole_on_court.h"
#include "tests/support/catch.h"
#include "tests/support/result_reading.h"
#include "tests/support/slide_case.h"

#include <cmath>
#include <numbers>

using namespace solemech;
using solver::Movement;
using tests::alone;
using tests::reading;

namespace
{
constexpr double mm = 1e-3, degree = std::numbers::pi / 180;

solver::TreadZone zone(const char *name, double x, double y, double length, double width)
{
  solver::TreadZone zone;
  zone.name = name, zone.x = x, zone.y = y, zone.length = length, zone.width = width;
  return zone;
}

solver::Tread sole(std::vector<solver::TreadZone> zones)
{
  solver::Tread tread;
  tread.force = 800, tread.foot_length = 290 * mm, tread.foot_width = 110 * mm, tread.ball = 200 * mm;
  tread.give = 3 * mm, tread.n_headings = 8, tread.highest_moment = 100;
  tread.zones = std::move(zones);
  return tread;
}

solver::Case on_court(solver::Tread tread, double mu)
{
  auto data = tests::sliding_bar(mu, 4 * mm, 3 * mm, 8 * mm);
  std::get<solver::SlideRig>(data.rig).tread = std::move(tread);
  return data;
}
} // namespace

TEST_CASE("friction against turning: square and disc in closed form", "[tread]")
{
  const double mu = 0.7, side = 60 * mm;
  const auto   constant = [&](std::size_t, double) { return mu; };
  const auto   square = sole({zone("square", 100 * mm, 0, side, side)});
  // Mean distance from the middle of a square: side (sqrt 2 + ln(1 + sqrt 2))/6, by integration.
  const double distance = side * (std::numbers::sqrt2 + std::log(1 + std::numbers::sqrt2)) / 6;
  CHECK(solver::pivot_moment(square, {800}, 100 * mm, 0, constant) ==
        Approx(mu * 800 * distance).epsilon(1e-3));

  // Even disc of strips: M = 2/3 mu F R (from memory; by integration of mu p r over the disc).
  const double                   radius = 40 * mm;
  const int                      n = 40;
  std::vector<solver::TreadZone> strips;
  for (int i = 0; i < n; ++i)
  {
    const double at = radius * ((2 * i + 1.0) / n - 1);
    strips.push_back(
      zone("strip", 100 * mm + at, 0, 2 * radius / n, 2 * std::sqrt(radius * radius - at * at)));
  }
  const auto disc = sole(strips);
  CHECK(solver::pivot_moment(disc, solver::zone_forces(disc, Movement::even), 100 * mm, 0, constant) ==
        Approx(2.0 / 3 * mu * 800 * radius).epsilon(3e-3));

  // What slides towards the pivot or away from it does not turn: a point turns across its arm.
  const auto far_off = sole({zone("far", 280 * mm, 0, 2 * mm, 2 * mm)});
  double     seen = 0;
  solver::pivot_moment(far_off, {800}, 0, 0, [&](std::size_t, double heading) { return seen = heading, mu; });
  CHECK(std::abs(seen) == Approx(90 * degree).epsilon(0.01));
}

TEST_CASE("a tilted plate on an even bed of springs", "[tread]")
{
  const double width = 100 * mm, give = 3 * mm;
  const auto   plate = sole({zone("plate", 145 * mm, 0, 200 * mm, width)});
  const auto   flat = solver::tilted_sole(plate, 0, 0);
  CHECK(flat.contact_share == Approx(1));
  CHECK(flat.pressure_rise == Approx(1).epsilon(1e-6));
  // Winkler's bed, as for an eccentric footing with no tension (from memory): whole while tan(roll) width/2 <
  // give, then triangular over c = sqrt(2 give width / tan(roll)); greatest pressure 2 width/c.
  const double part = 2 * degree, steep = 20 * degree;
  CHECK(solver::tilted_sole(plate, part, 0).contact_share == Approx(1));
  CHECK(solver::tilted_sole(plate, part, 0).pressure_rise ==
        Approx(1 + std::tan(part) * width / 2 / give).epsilon(0.03));
  const double touching = std::sqrt(2 * give * width / std::tan(steep));
  for (const double roll : {steep, -steep})
  {
    // The share is counted in cells of a fortieth of the width.
    CHECK(solver::tilted_sole(plate, roll, 0).contact_share == Approx(touching / width).margin(0.0251));
    CHECK(solver::tilted_sole(plate, roll, 0).pressure_rise == Approx(2 * width / touching).epsilon(0.04));
  }
  const auto pads =
    sole({zone("heel", 40 * mm, 0, 50 * mm, 60 * mm), zone("toe", 260 * mm, 0, 30 * mm, 60 * mm)});
  CHECK(solver::tilted_sole(pads, 0, 20 * degree).n_zones == 1);
}

TEST_CASE("angle to a bar by its symmetry", "[tread]")
{
  for (const double angle : {30.0, -30.0, 150.0, 210.0, 330.0})
    CHECK(solver::angle_to_bar(angle * degree, 0) == Approx(30 * degree));
  CHECK(solver::angle_to_bar(90 * degree, 60 * degree) == Approx(30 * degree));
}

TEST_CASE("with a constant coefficient a sole grips alike all round, turning follows", "[tread]")
{
  const double mu = 0.6;
  auto         herringbone = zone("ball", 200 * mm, 0, 60 * mm, 60 * mm);
  herringbone.arm_angle = 45 * degree;
  const auto result = solver::run(on_court(sole({herringbone}), mu), alone());
  // Coulomb: friction of a steady slide is mu times the force, whatever the pattern.
  for (const char *name :
       {"effective_grip", "lowest_grip", "highest_grip", "grip_push_off", "grip_braking", "grip_side_cut"})
    CHECK(reading(result, name) == Approx(mu).epsilon(2e-3));
  const double distance = 60 * mm * (std::numbers::sqrt2 + std::log(1 + std::numbers::sqrt2)) / 6;
  CHECK(reading(result, "pivot_moment") == Approx(mu * 800 * distance).epsilon(3e-3));
}

TEST_CASE("the grip of a sole is that of its bars, by the load on each zone", "[tread]")
{
  auto toe = zone("toe", 260 * mm, 0, 40 * mm, 60 * mm), heel = zone("heel", 40 * mm, 0, 60 * mm, 60 * mm);
  toe.rubber = tests::rubber(6e6, 1e9, "harder");
  heel.bar_heading = 90 * degree;
  toe.push_off = 3, heel.push_off = 1;
  auto  data = on_court(sole({toe, heel}), 0.6);
  auto &rig = std::get<solver::SlideRig>(data.rig);
  rig.friction.pressure_exponent = 1.0 / 9, rig.friction.reference_pressure = rig.pressure;
  const auto map = solver::run(data, alone());
  // Each zone by a slide of its own: pressure from its load over its bars, at its angle to a slide straight
  // back.
  const auto single = [&](double force, double area, double heading,
                          const std::optional<materials::Material> &own) {
    auto  one = data;
    auto &slide = std::get<solver::SlideRig>(one.rig);
    slide.tread.reset();
    slide.pressure = force / (0.5 * area), slide.heading = heading;
    if (own)
      one.layers[1].material = *own;
    return reading(solver::run(one, alone()), "effective_grip");
  };
  const double expected =
    0.75 * single(600, 24e-4, 0, toe.rubber) + 0.25 * single(200, 36e-4, 90 * degree, {});
  // The map slides on a coarser mesh than a single bar does, and both ask for 1 %.
  CHECK(reading(map, "grip_push_off") == Approx(expected).epsilon(0.01));
  CHECK(reading(map, "lowest_grip") < reading(map, "highest_grip"));
  // One definition: no movement lies beyond the ends.
  for (const char *name : {"effective_grip", "grip_push_off", "grip_braking", "grip_side_cut"})
  {
    CHECK(reading(map, name) >= reading(map, "lowest_grip"));
    CHECK(reading(map, name) <= reading(map, "highest_grip"));
  }
}
