// SPDX-License-Identifier: Apache-2.0
// A clamped base under a head wider than the plug: stiffer than a bonded one, never stiffer than the same
// foam without room to the side. Holding more of a body can only stiffen it (principle of least potential
// energy, handbook); the bound is the column without lateral strain, F = pi a^2 (K + 4/3 G) u/h at small
// strain.
#include "solver/rigs/press.h"
#include "solver/run.h"
#include "solver/stack_model.h"
#include "tests/support/catch.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/unit/support/reference_foams.h"

#include <numbers>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double height = 25e-3, radius = 20e-3, peak = 0.05e-3; // small strain

double force(solver::Base base, double level = 1.2, double travel = peak)
{
  auto input = column_case(elastic_foam(), {std::numbers::pi * radius * radius, height});
  input.plug.base = base;
  solver::PressRig rig{.tup = wide_plate(radius),
                       .control = solver::PressControl::displacement,
                       .wave = solver::PressWave::half_sine,
                       .peak = travel,
                       .duration = 1,
                       .table = {}};
  input.rig = rig;
  solver::RunOptions plain;
  plain.pictures = false;
  return reading(solver::run_rig(input, rig, {level, 1}, plain), "peak_force");
}
} // namespace

TEST_CASE("a clamped base lies between a bonded one and a foam without room", "[press]")
{
  const auto   term = elastic_foam().network[0];
  const double bulk = 2 * term.mu * (1. / 3 + term.beta), confined = bulk + 4. / 3 * term.mu;
  const double bound = std::numbers::pi * radius * radius * confined * peak / height;
  const double bonded = force(solver::Base::bonded), clamped = force(solver::Base::clamped);
  CHECK(bonded < clamped);
  CHECK(clamped < bound);
  // The jaws hold the foot alone: most of the plug spreads as before.
  CHECK(clamped < 1.1 * bonded);
  // No edge in the striker's way, so the force has a limit on refinement.
  CHECK(force(solver::Base::clamped, 2.4) == Approx(clamped).epsilon(0.01));
}

TEST_CASE("a clamped plug goes on giving way under a wide head", "[press]")
{
  const double bonded = force(solver::Base::bonded, 1, 5e-3), clamped = force(solver::Base::clamped, 1, 5e-3);
  CHECK(clamped > bonded);
  CHECK(clamped < 1.15 * bonded);
}
