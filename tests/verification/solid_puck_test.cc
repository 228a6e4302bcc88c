// SPDX-License-Identifier: Apache-2.0
// A block of two foams with a strip of plate in it, pressed slowly by a puck that overhangs its
// end, against values of two independent codes, one of them written with a general-purpose finite-element
// library.
#include "solver/contributions/rigid_weight.h"
#include "solver/results/metrics.h"
#include "tests/external/check.h"
#include "tests/support/puck_block.h"

#include <cmath>
#include <map>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3;

/// Readings at a depth.
struct Pressed
{
  double                        force, lever, moment;
  std::map<std::string, double> energy;
};

/// Goes down and reads at each whole millimetre, in steps that grow from where little touches and are cut
/// where the edge takes in too much at once.
std::map<int, Pressed> press(PuckBlock &block, int deepest)
{
  constexpr double longest = 0.2; // [mm]
  auto            &model = *block.model;
  model.equation.boundary.lead(block.puck.unknown(0), [](double time) { return -mm * time; });
  solver::TimeIntegrator integrator(model.equation, 1.0);
  integrator.start();
  std::map<int, Pressed> all;
  for (double step = 0.02; integrator.time < deepest - 1e-9; step = std::min(longest, 2.4 * step))
  {
    const double whole = std::floor(integrator.time + 1e-9) + 1;
    step = std::min(step, whole - integrator.time);
    while (!integrator
              .step(step, {.newton = {.tolerance = 1e-6, .n_iterations = 30},
                           .force_scale = 50,
                           .quasi_static = true,
                           .along_tangent = true})
              .advanced)
    {
      REQUIRE(integrator.n_failures < 2);
      step *= 0.5;
    }
    if (std::abs(integrator.time - std::round(integrator.time)) > 1e-9)
      continue;
    auto &now = all[std::lround(integrator.time)] = {
      block.force(integrator.x), block.lever(integrator.x), block.moment(integrator.x), {}};
    for (const auto &entry : integrator.energies())
      now.energy[std::string(entry.part)] += 2 * entry.value;
  }
  return all;
}

} // namespace

namespace
{
const std::string two_codes =
  "two independent codes, one of them on a general-purpose finite-element library, "
  "extrapolated over their meshes";

void check(const std::string &what, double expected, double obtained, double tolerance, const char *unit)
{
  external_check({two_codes, what, expected, obtained, tolerance, unit});
}

/// Common gate of these values; of the lever, which is a small difference, the error stated for it and as
/// much again.
constexpr double gate = 0.015;
} // namespace

TEST_CASE("a block with a strip of plate under a puck that overhangs its end", "[external]")
{
  auto       block = puck_block({}, 0, 12 * mm);
  const auto read = press(block, 4);
  check("block with a strip of plate, force at 2 mm", 131.0, read.at(2).force, gate, "N");
  check("block with a strip of plate, force at 4 mm", 249.0, read.at(4).force, gate, "N");
  check("block with a strip of plate, force off the axis at 2 mm", 1.70, read.at(2).lever / mm, 0.04, "mm");
  check("block with a strip of plate, force off the axis at 4 mm", 1.93, read.at(4).lever / mm, 0.04, "mm");
  const auto  &energy = read.at(4).energy;
  const double all = energy.at("A") + energy.at("plate") + energy.at("B");
  CHECK(energy.at("A") / all == Approx(0.287).margin(0.015));
  CHECK(energy.at("B") / all == Approx(0.708).margin(0.015));
}

namespace
{
/// What a drop reads, of the whole puck.
struct Dropped
{
  std::vector<double> time{0}, force{0}, travel{0}, speed;
  double              contact_time = 0, speed_then = 0, left_open = 0, lost = 0;
};

/// Lets a guided puck go at its first touch, until it has left.
Dropped drop(PuckBlock &block, double mass, double speed)
{
  constexpr double gravity = 9.81, longest = 0.4e-3;
  auto            &model = *block.model;
  const int        puck = block.puck.unknown(0);
  model.equation.contribute<solver::RigidWeight>("puck", block.puck, 0.5 * mass * gravity);
  solver::TimeIntegrator integrator(model.equation, 0.6);
  integrator.v[puck] = -speed, integrator.a[puck] = -gravity;
  integrator.start();
  Dropped out;
  out.speed = {speed};
  const double start = integrator.kinetic_energy();
  for (double step = 0.02e-3; out.force.back() > 0 || out.time.size() < 10;
       step = std::min(longest, 2 * step))
  {
    while (
      !integrator
         .step(step,
               {.newton = {.tolerance = 1e-4, .n_iterations = 30}, .force_scale = 50, .extrapolate = 0.5})
         .advanced)
    {
      REQUIRE(step > 1e-6);
      step *= 0.5;
    }
    out.time.push_back(integrator.time), out.force.push_back(block.force(integrator.x));
    out.travel.push_back(-integrator.x[puck]), out.speed.push_back(-integrator.v[puck]);
  }
  // The force of the last two steps in contact, drawn on to nought.
  const std::size_t n = out.time.size() - 2;
  const double      slope = (out.force[n] - out.force[n - 1]) / (out.time[n] - out.time[n - 1]);
  out.contact_time = out.time[n] - out.force[n] / slope;
  out.speed_then = out.speed[n] + (out.speed[n + 1] - out.speed[n]) * (out.contact_time - out.time[n]) /
                                    (out.time[n + 1] - out.time[n]);
  for (const auto &entry : integrator.energies())
    if (entry.type == solver::EnergyKind::dissipated)
      out.lost += 2 * entry.value;
  out.left_open = (std::abs(integrator.numerical_energy()) + std::abs(integrator.residual_energy())) / start;
  return out;
}
} // namespace

TEST_CASE("a weight dropped on the block, foams that creep", "[drop]")
{
  constexpr double  mass = 8.5, speed = 0.9701; // 4 J
  auto              block = puck_block({}, 0, 12 * mm, mass);
  const auto        read = drop(block, mass, speed);
  const std::string what = "drop of 8.5 kg, 4 J, on a block with a strip of plate: ";
  check(what + "smoothed peak force", 1004, solver::smoothed_peak(read.time, read.force, 4e-3), gate, "N");
  check(what + "greatest travel", 9.79, solver::peak_of(read.time, read.travel).value / mm, gate, "mm");
  check(what + "contact time", 31.05, 1e3 * read.contact_time, gate, "ms");
  check(what + "kinetic return", 0.509, std::pow(read.speed_then / speed, 2), 0.01 / 0.509, "-");
  check(what + "dissipated", 1828, 1e3 * read.lost, 0.02, "mJ");
  CHECK(read.left_open < 0.005);
}
