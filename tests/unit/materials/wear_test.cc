// SPDX-License-Identifier: Apache-2.0
// Wear and abrasion benches against hand arithmetic of the sources named at each check.
#include "materials/abrasion_bench.h"
#include "tests/external/check.h"

#include <fmt/format.h>

#include <type_traits>

using namespace solemech::materials;
using solemech::tests::external_check;

namespace
{
constexpr double mm = 1e-3, mm3 = 1e-9, printed = 1e-3;
} // namespace

TEST_CASE("rotating drum", "[external]")
{
  const std::string source = "ISO 4649 / ISO 20871 drum: 150 mm, 40 rpm, 10 N, 40 m (formula from memory)";
  const DrumBench   drum;
  external_check({source, "rim speed", 0.31416, drum.rim_speed(), printed, "m/s"});
  external_check({source, "turns", 84.883, drum.turns(), printed});
  external_check({source, "duration", 127.32, drum.duration(), printed, "s"});
  external_check({source, "sideways way", 356.5, drum.turns() * drum.traverse / mm, printed, "mm"});
  external_check(
    {source, "mean pressure on the piece", 49.74, drum.load / drum.piece_area() / 1e3, printed, "kPa"});
  external_check({source, "friction work at coefficient 1", 400, drum.friction_work(1), printed, "J"});
  external_check({source, "volume lost: 120 mg of 1.15 g/cm3 on a cloth of 190 mg", 109.84,
                  drum.volume_loss(120e-6, 1150, 190e-6) / mm3, printed, "mm3"});
  external_check({source, "depth of 100 mm3", 0.4974, drum.depth(100 * mm3) / mm, printed, "mm"});
  external_check({source, "coefficient of 150 mm3", 0.375, drum.coefficient(150 * mm3).value() / mm3, printed,
                  "mm3/(N m)"});
  CHECK_THROWS_AS(drum.volume_loss(120e-6, 1150, 250e-6), InvalidParameter);
  CHECK_THROWS_AS(drum.volume_loss(-1, 1150, 200e-6), InvalidParameter);
}

TEST_CASE("a flat punch wears by k p s", "[external]")
{
  // 0.25 mm3/(N m) at 0.3 MPa: 0.075 mm a metre.
  const AbrasiveWear cloth(0.25 * mm3);
  external_check({"Archard 1953, flat punch", "depth after 1 m at 0.3 MPa, 0.25 mm3/(N m)", 0.075,
                  cloth.depth_rate(0.3e6, 2) * 0.5 / mm, 1e-9, "mm"});
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

TEST_CASE("rotary tool", "[external]")
{
  const std::string source = "surface speed pi D n, power mu F v (handbook)";
  const RotaryTool  tool{.speed = 20000.0 / 60, .force = 2};
  external_check({source, "surface speed, 13 mm at 20 000 rpm", 13.61, tool.surface_speed(), printed, "m/s"});
  external_check(
    {source, "power, 13 mm at 20 000 rpm, 2 N, friction 0.8", 21.8, tool.power(0.8), 2 * printed, "W"});
  external_check({source, "removal, 13 mm at 20 000 rpm, 2 N, 0.25 mm3/(N m)", 6.8,
                  tool.removal(AbrasiveWear(0.25 * mm3)) / mm3, 2 * printed, "mm3/s"});
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

TEST_CASE("the same ten seconds take about half from a harder tread", "[external]")
{
  // Nothing here says "half": the abrasive is fixed by the soft rubber alone, the hard one follows from its
  // hardness. Soft and hard are the ends of common outsole rubbers, 50 and 70 Shore A.
  const RotaryTool   tool{.speed = 20000.0 / 60, .force = 5};
  const AbrasiveWear soft = tool.wear_from(2 * mm, 10);
  const Abrasive     sleeve = Abrasive::from_known(RubberToughness::from_hardness(50), soft);
  const auto hard = tool.depth_after(10, {{3 * mm, sleeve.wear_of(RubberToughness::from_hardness(70))}});
  const std::string source = "finest sleeve held on treads for ten seconds (common practice, no source)";
  // "About half" is read as 0.4 to 0.6.
  external_check(
    {source, "depth in a 70 Shore A tread over that in a 50 Shore A tread", 0.5, hard.depth / (2 * mm), 0.2});
  // Where 2 mm are all there is, soft rubber from 50 Shore A down reads "through".
  CHECK(tool.depth_after(10.01, {{2 * mm, sleeve.wear_of(RubberToughness::from_hardness(50))}}).wore_through);
  // The finest sleeve bites no more than the drum's coarse cloth, which takes up to 250 mm3 from an outsole
  // rubber, and no less than a twentieth: the order of magnitude is right with the force of a hand (5 N,
  // common practice, no source).
  const double drum = DrumBench().coefficient(250 * mm3).value();
  CHECK(soft.value() < drum);
  CHECK(soft.value() > drum / 20);
}
