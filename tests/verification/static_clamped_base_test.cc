// SPDX-License-Identifier: Apache-2.0
// A clamped base under a head wider than the plug: stiffer than a bonded one, never stiffer than the same
// foam without room to the side. Holding more of a body can only stiffen it (principle of least potential
// energy, handbook); the bound is the column without lateral strain, F = pi a^2 (K + 4/3 G) u/h at small
// strain. And a disc of rubber under such a head, from no friction at either face to a bonded foot.
#include "solver/resolution.h"
#include "solver/rigs/press.h"
#include "solver/run.h"
#include "tests/external/check.h"
#include "tests/support/foam_cases.h"
#include "tests/support/result_reading.h"
#include "tests/support/rubber.h"
#include "tests/unit/support/reference_foams.h"

#include <fmt/format.h>

#include <cmath>
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

namespace
{
constexpr double MPa = 1e6, youngs = 1.5 * MPa, bulk = 1000 * MPa;

/// Force over area and strain of a rubber disc under a wide flat head without friction [Pa]. Bonded at its
/// foot it is half of a disc of twice the height that is bonded on both faces: there is no friction in the
/// plane between.
/// @param shape_factor  of the doubled disc, loaded over free face: radius / (4 height)
double disc_modulus(solver::Base base, double shape_factor)
{
  constexpr double strain = 2e-3; // small
  const double     area = std::numbers::pi * radius * radius, thin = radius / (4 * shape_factor);
  solver::Case     input;
  input.layers.resize(1);
  input.layers[0].name = "rubber", input.layers[0].material = rubber(youngs, bulk);
  input.layers[0].thickness = thin;
  input.plug.radius = radius, input.plug.base = base;
  solver::PressRig rig;
  rig.tup = wide_plate(radius), rig.peak = strain * thin;
  input.rig = rig;
  solver::RunOptions plain;
  plain.pictures = false;
  return reading(solver::run_rig(input, rig, {1.2, 1}, plain), "peak_force") / (area * strain);
}
} // namespace

TEST_CASE("a rubber disc without friction at either face is a column", "[external]")
{
  // A contact that sinks in by 4e-4 of the height at the confined modulus takes less than 0.1 % of this
  // travel.
  external_check({"rubber between plates without friction, E (handbook)",
                  "modulus of a disc 40 x 20 mm under a wide flat head", youngs / MPa,
                  disc_modulus(solver::Base::sliding, 0.25) / MPa, 0.005, "MPa"});
}

TEST_CASE("a bonded disc of rubber under a wide flat head", "[external]")
{
  // Gent & Lindley: parabolic bulging of an incompressible disc, and volume change in series. Both are held
  // to 10 % in practice (common practice, no source), for unfilled rubber and shape factors up to about ten.
  for (const double s : {3., 5., 10.})
    external_check(
      {"Gent & Lindley 1959, 1/(E (1 + 2 S^2)) + 1/K, after Koblar et al., J. Mech. Eng. 60 (2014)",
       fmt::format("modulus of a bonded disc of shape factor {:.0f}, E 1.5 MPa, K 1 GPa", s),
       1 / (1 / (youngs * (1 + 2 * s * s)) + 1 / bulk) / MPa, disc_modulus(solver::Base::bonded, s) / MPa,
       0.1, "MPa"});
  // The thin disc whose volume gives way with its pressure, point by point; what it leaves out is of the
  // order of Young's modulus over the result, and of the rim: height over radius.
  const double s = 10, q = 2 * s * std::sqrt(12 * youngs / 3 / bulk);
  external_check({"thin bonded disc, K (1 - 2 I1(q)/(q I0(q))), Chalhoub & Kelly 1990 (from memory)",
                  "modulus of a bonded disc of shape factor 10, E 1.5 MPa, K 1 GPa",
                  bulk * (1 - 2 * std::cyl_bessel_i(1, q) / (q * std::cyl_bessel_i(0, q))) / MPa,
                  disc_modulus(solver::Base::bonded, s) / MPa, 0.04, "MPa"});
}

TEST_CASE("jaws at the foot of a rubber disc hold no more than half of it", "[press]")
{
  // With its lower half rigid the upper one is a bonded disc of half the height that takes all of the travel.
  constexpr double s = 0.5;
  const double     bound = 2 * youngs * (1 + 2 * 4 * s * s);
  const double     bonded = disc_modulus(solver::Base::bonded, s),
               clamped = disc_modulus(solver::Base::clamped, s);
  CHECK(bonded < clamped);
  CHECK(clamped < bound);
}
