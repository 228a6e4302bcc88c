// SPDX-License-Identifier: Apache-2.0
// Fibres of the air unit: derivatives, the slack range, the straight part of the pull and the packed pile by
// hand.
#include "materials/tensile_fibre.h"
#include "tests/support/catch.h"

#include "dual.h"
#include "lanes.h"

using namespace solemech::materials;
using namespace solemech::tests;

namespace
{
// 20 kN/m fibres every 3 mm, 10 mm long, packed to 1 mm.
const TensileFibres fibres{20e3 / 9e-6, 10e-3, 1e-3, 10e6};
} // namespace

TEST_CASE("Tension and stiffness are derivatives of the energy", "[fibre]")
{
  for (const double length : {0.1e-3, 0.5e-3, 0.99e-3, 5e-3, 10.005e-3, 10.0199e-3, 10.3e-3})
  {
    CAPTURE(length);
    const auto plain = fibres.response(length);
    const auto slope = fibres.response(Dual::variable(length, 0));
    CHECK(slope.energy.d[0] == Approx(plain.tension).epsilon(1e-10).margin(1e-6));
    CHECK(slope.tension.d[0] == Approx(plain.stiffness).epsilon(1e-10).margin(1e-6));
    CHECK(fibres.response(Lanes(length)).tension.lane[2] == plain.tension);
  }
}

TEST_CASE("Fibres pull above their length, rest below, and pile up", "[fibre]")
{
  for (const double length : {1e-3, 4e-3, 10e-3})
  {
    CHECK(fibres.response(length).tension == 0);
    CHECK(fibres.response(length).energy == 0);
  }
  // Beyond the smooth start the pull is a straight line through rest length + w/2 (w = 0.2 %: 20 um).
  const double k = fibres.tension_stiffness;
  CHECK(fibres.response(10.1e-3).tension == Approx(k * 90e-6).epsilon(1e-9));
  CHECK(fibres.response(10.1e-3).stiffness == Approx(k).epsilon(1e-12));
  // Continuous where the pieces meet.
  CHECK(fibres.response(10.02e-3 * (1 + 1e-12)).energy ==
        Approx(fibres.response(10.02e-3 * (1 - 1e-12)).energy).epsilon(1e-8));
  // Packed to half its height: push = k_p (1/4)/(1/2).
  CHECK(fibres.response(0.5e-3).tension == Approx(-5e6).epsilon(1e-12));
  CHECK(fibres.response(0.5e-3).energy == Approx(10e6 * 1e-3 * (std::log(2.0) - 0.5 - 0.125)).epsilon(1e-12));
}

TEST_CASE("Fibres balance the gauge pressure on flat faces", "[fibre]")
{
  // Sum of fibre tension = p_g A (statics): per area the tension equals the pressure; stretch below 1 %.
  const double length = 10e-3 + 0.5 * fibres.smoothing() + 150e3 / fibres.tension_stiffness;
  CHECK(fibres.response(length).tension == Approx(150e3).epsilon(1e-10));
  CHECK(length / 10e-3 - 1 < 0.01);
}

TEST_CASE("Fibres refuse a pile as high as they are long", "[fibre]")
{
  CHECK_NOTHROW(check(fibres));
  CHECK_THROWS_AS(check(TensileFibres{1e9, 10e-3, 10e-3}), InvalidParameter);
  CHECK_THROWS_AS(check(TensileFibres{1e9, 0, 0}), InvalidParameter);
}
