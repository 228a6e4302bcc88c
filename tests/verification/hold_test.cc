// SPDX-License-Identifier: Apache-2.0
// Long holds of a homogeneous column between frictionless plates. A small squeeze against the closed form of
// linear relaxing branches (generalised Maxwell model: J.D. Ferry, Viscoelastic Properties of Polymers, from
// memory), a load against the creep and recovery of one branch beside a spring (Zener's solid, same source);
// a small strain leaves out what the law does at a large one. And a unit that leaks under a load.
#include "solver/resolution.h"
#include "solver/rigs/hold.h"
#include "solver/run.h"
#include "solver/time/account.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/unit/support/reference_foams.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double hour = 3600, share = 0.5, slow = hour; // of the branch: modulus over that at rest, time [s]
constexpr double at_rest = 0.6e6;                       // shear modulus at rest [Pa]
constexpr double small = 1e-3;                          // squeeze over the height
// What the law at that squeeze departs from a straight line, and a ramp of 1 s from a step, is less:
// relative.
constexpr double         of_line = 0.01;
const Column             column{2e-3, 25e-3};
const solver::Resolution fine{0.5, 0.25};
const solver::RunOptions plain{.progress = {}, .pictures = false};

ColumnFoam foam_with(std::vector<ColumnFoam::Relaxing> branches)
{
  ColumnFoam foam;
  foam.network = {{at_rest, 2, 0.125}};
  foam.relaxing = std::move(branches);
  return foam;
}

solver::Result held(const ColumnFoam &foam, solver::HoldRig rig)
{
  auto input = column_case(foam, column);
  rig.tup = wide_plate(input.plug.radius);
  input.rig = rig;
  auto result = solver::run_rig(input, rig, fine, plain);
  CHECK(solver::open_share(result) <= solver::most_open);
  return result;
}

bool warns(const solver::Result &result)
{
  return std::any_of(result.warnings.begin(), result.warnings.end(),
                     [](const solver::Warning &warning) { return warning.reading == "compression_set"; });
}
} // namespace

TEST_CASE("the force of a held squeeze fades as the sum of its branches", "[hold]")
{
  const std::vector<ColumnFoam::Relaxing> branches{{0.3, 10}, {0.2, 600}, {0.4, 2 * hour}};
  solver::HoldRig                         rig;
  rig.squeeze = small, rig.duration = hour, rig.rest = 60;
  const auto result = held(foam_with(branches), rig);
  double     first = 1, last = 1; // over the force at rest; the squeeze comes on at one speed
  for (const auto &[g, tau] : branches)
  {
    const double come_on = g * tau / rig.ramp * (1 - std::exp(-rig.ramp / tau));
    first += come_on;
    last += come_on * std::exp(-rig.duration / tau);
  }
  CHECK(reading(result, "force_left") == Approx(last / first).epsilon(of_line));
}

TEST_CASE(
  "the set after a squeeze is what one branch has left in the stack, fading with its time of recovery",
  "[hold]")
{
  solver::HoldRig rig;
  rig.squeeze = small, rig.duration = hour, rig.rest = 0.5 * hour;
  const auto   result = held(foam_with({{share, slow}}), rig);
  const double faded = 1 - std::exp(-rig.duration / slow);
  const double set = share * faded / (1 + share) * std::exp(-rig.rest / (slow * (1 + share)));
  CHECK(reading(result, "compression_set") == Approx(set).epsilon(of_line));
  CHECK(reading(result, "height_set") == Approx(set * small).epsilon(of_line));
  CHECK_FALSE(warns(result));
}

TEST_CASE("one branch beside a spring creeps under a load and comes back with one time", "[hold]")
{
  constexpr double poisson = 0.1, modulus = 2 * at_rest * (1 + poisson);
  solver::HoldRig  rig;
  rig.load = modulus * column.area * small, rig.duration = 2 * hour, rig.rest = hour;
  const auto   result = held(foam_with({{share, slow}}), rig);
  const double first = small * column.height / (1 + share);
  const double creep = first * share * (1 - std::exp(-rig.duration / (slow * (1 + share))));
  CHECK(reading(result, "creep") == Approx(creep).epsilon(of_line));
  CHECK(reading(result, "greatest_compression") == Approx(first + creep).epsilon(of_line));
  CHECK(reading(result, "set_left") ==
        Approx(creep * std::exp(-rig.rest / (slow * (1 + share)))).epsilon(of_line));
}

TEST_CASE("a foam of quick branches comes back whole, and the run says that it could not do otherwise",
          "[hold]")
{
  solver::HoldRig rig;
  rig.squeeze = 0.5;
  const auto result = held(full_foam(), rig);
  CHECK(std::abs(reading(result, "compression_set")) < of_line);
  CHECK(warns(result));
}

namespace
{
/// An unblown unit without fibres between two elastic foams.
solver::Result stood_on(solver::ChamberState state)
{
  constexpr double      film_modulus = 24e6;
  materials::Material   film;
  materials::RubberData rubber;
  rubber.c10 = film_modulus / 6, rubber.bulk_modulus = 300 * 2 * rubber.c10;
  film.name = film.family = "film", film.density = 1150, film.data = rubber;
  auto input = column_case(foam_with({}), {2.8e-3, 6e-3});
  input.plug.base = solver::Base::bonded;
  input.layers.insert(input.layers.begin(), 2, input.layers[0]);
  for (const int i : {0, 1, 2})
    input.layers[i].name = std::array{"topper", "unit", "base"}[i];
  auto &unit = input.layers[1].unit.emplace();
  unit.diameter = 40e-3, unit.film_thickness = 0.5e-3, unit.film = film;
  unit.state = state, unit.leak_diameter = state == solver::ChamberState::leaking ? 0.02e-3 : 0;
  unit.has_fibres = false, unit.heat_time = 0; // isothermal
  solver::HoldRig rig;
  rig.load = 5, rig.duration = 600, rig.rest = 60, rig.tup = wide_plate(input.plug.radius);
  input.rig = rig;
  auto result = solver::run_rig(input, rig, fine, plain);
  CHECK(solver::open_share(result) <= solver::most_open);
  return result;
}
} // namespace

TEST_CASE("under a load a unit goes flat as fast as its hole lets the air out, and then is as an open one",
          "[hold]")
{
  // Bernoulli's flow through a hole, rho = p/(R T), discharge 0.6; that the jet expands takes 3/(4 gamma) of
  // the excess pressure over the atmospheric one from it, less than a hundredth here. Any textbook, from
  // memory.
  constexpr double of_jet = 0.01, air = 287.05, temperature = 296.15, atmosphere = 101325;
  const double     hole = 0.25 * std::numbers::pi * 0.02e-3 * 0.02e-3;
  const auto       result = stood_on(solver::ChamberState::leaking);
  const auto      &excess = curve(result, "unit.gauge_pressure"), &volume = curve(result, "unit.volume");
  const auto mass = [&](std::size_t i) { return (atmosphere + excess[i]) * volume[i] / (air * temperature); };
  const auto flow = [&](std::size_t i) {
    return 0.6 * hole *
           std::sqrt(2 * (atmosphere + excess[i]) / (air * temperature) * std::max(0.0, excess[i]));
  };
  const auto  top = std::max_element(excess.begin(), excess.end()) - excess.begin();
  double      let_out = 0;
  std::size_t i = top;
  for (; i + 1 < excess.size() && excess[i] > 0.5 * excess[top]; ++i)
    let_out += 0.5 * (flow(i) + flow(i + 1)) * (result.time[i + 1] - result.time[i]);
  REQUIRE(excess[i] <= 0.5 * excess[top]);
  REQUIRE(excess[top] < of_jet * atmosphere);
  CHECK(mass(top) - mass(i) == Approx(let_out).epsilon(of_jet));
  const auto open = stood_on(solver::ChamberState::open);
  CHECK(reading(result, "greatest_compression") ==
        Approx(reading(open, "greatest_compression")).epsilon(of_jet));
  CHECK(reading(open, "creep") < of_jet * reading(result, "creep"));
}
