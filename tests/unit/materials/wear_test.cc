// SPDX-License-Identifier: Apache-2.0
// Wear and abrasion benches against hand arithmetic of the sources named at each check.
#include "materials/abrasion_bench.h"
#include "tests/support/catch.h"

#include <type_traits>

using namespace solemech::materials;

namespace
{
constexpr double mm = 1e-3, mm3 = 1e-9, printed = 1e-3;
} // namespace

TEST_CASE("rotating drum")
{
  // ISO 4649 / ISO 20871 drum: 150 mm, 40 rpm, 10 N, 40 m (formula from memory), by hand.
  const DrumBench drum;
  CHECK(drum.rim_speed() == Approx(0.31416).epsilon(printed));
  CHECK(drum.turns() == Approx(84.883).epsilon(printed));
  CHECK(drum.duration() == Approx(127.32).epsilon(printed));
  CHECK(drum.turns() * drum.traverse == Approx(356.5 * mm).epsilon(printed));
  CHECK(drum.load / drum.piece_area() == Approx(49.74e3).epsilon(printed));
  CHECK(drum.friction_work(1) == Approx(400).epsilon(printed));
  CHECK(drum.volume_loss(120e-6, 1150, 190e-6) == Approx(109.84 * mm3).epsilon(printed));
  CHECK(drum.depth(100 * mm3) == Approx(0.4974 * mm).epsilon(printed));
  CHECK(drum.coefficient(150 * mm3).value() == Approx(0.375 * mm3).epsilon(printed));
  CHECK_THROWS_AS(drum.volume_loss(120e-6, 1150, 250e-6), InvalidParameter);
  CHECK_THROWS_AS(drum.volume_loss(-1, 1150, 200e-6), InvalidParameter);
}

TEST_CASE("a flat punch wears by k p s")
{
  // Archard 1953: 0.25 mm3/(N m) at 0.3 MPa is 0.075 mm a metre.
  const AbrasiveWear cloth(0.25 * mm3);
  CHECK(cloth.depth_rate(0.3e6, 2) * 0.5 == Approx(0.075 * mm).epsilon(1e-9));
  CHECK(cloth.depth_rate(0.3e6, 0) == 0);  // no slip, no wear
  CHECK(cloth.depth_rate(-0.3e6, 1) == 0); // no contact, no wear
  CHECK(cloth.depth_rate(0.3e6, -1) == cloth.depth_rate(0.3e6, 1));
  CHECK_THROWS_AS(AbrasiveWear(-1), InvalidParameter);
}

TEST_CASE("wear by frictional work meets wear by pressure at exponent 1, and shear raises it")
{
  // Energy form, k_e = k/mu (Archard with Coulomb's tau = mu p).
  const double                    mu = 0.8, p = 0.3e6, v = 0.5;
  const WorkWear<RubbedOn::court> linear(1e-12 / mu, 1, 1e5), blunt(1e-12 / mu, 2, 1e5);
  CHECK(linear.depth_rate(mu * p, v) == Approx(CourtWear(1e-12).depth_rate(p, v)).epsilon(1e-12));
  CHECK(blunt.depth_rate(2 * mu * p, v) == Approx(4 * blunt.depth_rate(mu * p, v)).epsilon(1e-12));
  CHECK(linear.depth_rate(mu * p, 0) == 0);
  CHECK_THROWS_AS((WorkWear<RubbedOn::court>(1e-12, 9, 1e5)), InvalidParameter);
}

TEST_CASE("an abrasive coefficient does not get onto a court by itself")
{
  static_assert(!std::is_convertible_v<AbrasiveWear, CourtWear>);
  static_assert(!std::is_constructible_v<CourtWear, AbrasiveWear>);
  static_assert(!std::is_assignable_v<CourtWear &, AbrasiveWear>);
  const AbrasiveWear cloth(0.25 * mm3);
  CHECK(court_wear(cloth, {4e-3, "a pair worn for 100 h"}).value() == Approx(1e-3 * mm3).epsilon(1e-12));
  CHECK_THROWS_AS(court_wear(cloth, {4e-3, ""}), InvalidParameter);
  CHECK_THROWS_AS(court_wear(cloth, {1, "as on cloth"}), InvalidParameter);
}

TEST_CASE("rotary tool")
{
  // Surface speed pi D n, power mu F v, removal k F v.
  const RotaryTool tool{.speed = 20000.0 / 60, .force = 2};
  CHECK(tool.surface_speed() == Approx(13.61).epsilon(printed));
  CHECK(tool.power(0.8) == Approx(21.8).epsilon(2 * printed));
  CHECK(tool.removal(AbrasiveWear(0.25 * mm3)) == Approx(6.8 * mm3).epsilon(2 * printed));
  // Groove to the sleeve's axis: half a circle; shallow: (4/3) sqrt(2 R) h^1.5.
  CHECK(tool.groove_section(6.5 * mm) == Approx(std::numbers::pi / 2 * 6.5 * 6.5 * 1e-6).epsilon(1e-12));
  CHECK(tool.groove_section(0.01 * mm) ==
        Approx(4.0 / 3 * std::sqrt(13 * mm) * std::pow(0.01 * mm, 1.5)).epsilon(1e-3));
}

TEST_CASE("a tool that is through the piece gives a lower bound")
{
  const RotaryTool   tool{.speed = 20000.0 / 60, .force = 2};
  const AbrasiveWear wear = tool.wear_from(2 * mm, 10);
  const auto         just = tool.depth_after(9.99, {{2 * mm, wear}}),
             through = tool.depth_after(12, {{2 * mm, wear}});
  CHECK_FALSE(just.wore_through);
  CHECK(just.depth == Approx(2 * mm).epsilon(2e-3));
  CHECK(through.wore_through);
  CHECK(through.depth == Approx(2 * mm).epsilon(1e-12));
  CHECK(through.seconds == Approx(10).epsilon(1e-9));
  // Two layers of one stuff are one layer; a tougher second one slows the tool.
  const auto two = tool.depth_after(8, {{1 * mm, wear}, {1 * mm, wear}}),
             one = tool.depth_after(8, {{2 * mm, wear}});
  CHECK(two.depth == Approx(one.depth).epsilon(1e-9));
  const auto tougher = tool.depth_after(8, {{1 * mm, wear}, {1 * mm, AbrasiveWear(0.2 * wear.value())}});
  CHECK(tougher.depth < one.depth);
  CHECK(tougher.depth > 1 * mm);
  CHECK_THROWS_AS((RotaryTool{.speed = 0, .force = 2}.depth_after(10, {})), InvalidParameter);
}

TEST_CASE("the same hold takes less from a harder tread")
{
  // The abrasive is fixed by the soft rubber alone, the hard one follows from its hardness: loss goes with
  // 1/E (Ratner 1964, Lancaster 1969, from memory), and by Gent 1958 50 Shore A has 0.445 of the modulus of
  // 70; a shallow groove goes with the power 2/3 of its volume, a deep one somewhat less (2 %: h/(10 R) of
  // it).
  const RotaryTool   tool{.speed = 20000.0 / 60, .force = 5};
  const AbrasiveWear soft = tool.wear_from(2 * mm, 10);
  const Abrasive     sleeve = Abrasive::from_known(RubberToughness::from_hardness(50), soft);
  const auto hard = tool.depth_after(10, {{3 * mm, sleeve.wear_of(RubberToughness::from_hardness(70))}});
  CHECK(hard.depth == Approx(std::pow(0.445, 2. / 3) * 2 * mm).epsilon(0.02));
  // Where 2 mm are all there is, soft rubber from 50 Shore A down reads "through".
  CHECK(tool.depth_after(10.01, {{2 * mm, sleeve.wear_of(RubberToughness::from_hardness(50))}}).wore_through);
  // A fine sleeve bites no more than the drum's coarse cloth, which takes up to 250 mm3 from an outsole
  // rubber, and no less than a twentieth: the order of magnitude is right with the force of a hand (5 N,
  // common practice, no source).
  const double drum = DrumBench().coefficient(250 * mm3).value();
  CHECK(soft.value() < drum);
  CHECK(soft.value() > drum / 20);
}
