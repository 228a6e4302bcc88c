// SPDX-License-Identifier: Apache-2.0
// The hardness gauge pressed on by contact, against the exact half-space solutions of its own tips, and how
// the reading gets from there to what a bench sees: small strain on a deep block, hard table under 6 mm, real
// tip.
#include "materials/hardness.h"
#include "solver/resolution.h"
#include "solver/rigs/durometer.h"
#include "solver/run.h"
#include "tests/external/check.h"
#include "tests/support/rubber.h"

#include <fmt/format.h>

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
constexpr double mm = 1e-3, MPa = 1e6;
constexpr double deep = 30 * mm; ///< twenty contact diameters: an endless block to a hundredth of the modulus

solver::Layer layer(const std::string &name, const materials::Material &material, double thickness)
{
  solver::Layer out;
  out.name = name, out.material = material, out.thickness = thickness;
  return out;
}

solver::Case block(const materials::Material &material, double height, double radius)
{
  solver::Case input;
  input.layers.push_back(layer("rubber", material, height));
  input.plug.radius = radius;
  return input;
}

/// @param friction  of the tip; 0: it sticks
solver::Result read(const solver::Case &input, const materials::Gauge &gauge, double level = 1.2,
                    double read_after = 3, double wanted = 0, double friction = 0)
{
  solver::DurometerRig rig;
  rig.gauge = gauge, rig.tup = solver::gauge_tip(gauge);
  rig.read_after = read_after, rig.wanted = wanted, rig.tup.friction = friction;
  solver::RunOptions quick;
  quick.pictures = false;
  return solver::run_rig(input, rig, {level, 1.1}, quick);
}

double value(const solver::Result &result, const char *name)
{
  REQUIRE(result.find(name));
  return result.find(name)->value;
}

/// The same gauge with everything upright shrunk: a hundredth of the slope, of the travel and of the spring.
/// The linear solution reads the same; strains are a hundred times smaller.
materials::Gauge shallow(materials::Gauge gauge, double shrink = 0.01)
{
  gauge.base_force *= shrink, gauge.force_slope *= shrink, gauge.travel *= shrink;
  gauge.tip.half_angle = std::atan(std::tan(gauge.tip.half_angle) / shrink);
  return gauge;
}
} // namespace

TEST_CASE("the truncated cone of Shore A at small strain reads what the exact solution says", "[external]")
{
  // Exact readings of 1.5 to 6 MPa, worked from the closed form. A point for mesh, penalty and a block of 30
  // mm.
  for (const auto &[modulus, exact] :
       {std::pair{1.5, 34.34}, std::pair{2.5, 46.52}, std::pair{4., 57.80}, std::pair{6., 66.90}})
    external_check(
      {"truncated cone on a half-space, U. B. C. O. Ejike 1981 after Sneddon (from memory)",
       fmt::format("Shore A at {:.1f} MPa, contact at small strain", modulus), exact,
       value(read(block(rubber(modulus * MPa), deep, deep), shallow(materials::shore_a_gauge)), "hardness"),
       1 / exact});
}

TEST_CASE("whether the tip sticks is nothing to an endless block that keeps its volume", "[external]")
{
  // What keeps its volume moves straight down under a punch that slides: sticking has nothing to hold (K. L.
  // Johnson, Contact Mechanics, ch. 3, from memory). A point, as for the cone that sticks.
  constexpr double exact = 57.80, slippery = 0.01;
  external_check(
    {"truncated cone on a half-space, U. B. C. O. Ejike 1981 after Sneddon (from memory)",
     "Shore A at 4.0 MPa, contact at small strain, tip without friction", exact,
     value(read(block(rubber(4 * MPa), deep, deep), shallow(materials::shore_a_gauge), 1.2, 3, 0, slippery),
           "hardness"),
     1 / exact});
}

TEST_CASE(
  "the rounded needle of Shore D: the exact solution at small strain, stiffer than it at the gauge's own",
  "[external]")
{
  // Shrunk upright the nose keeps its width: where it meets the cone stays where it was.
  // Less than for the other gauges: the nose has to fit on the rod.
  auto         flat = shallow(materials::shore_d_gauge, 0.05);
  const auto  &tip = materials::shore_d_gauge.tip;
  const double E = 30 * MPa,
               exact = 41.4397; // worked by quadrature of Sneddon's two integrals, apart from the program
  flat.tip.nose_radius = tip.nose_radius * std::cos(tip.half_angle) / std::cos(flat.tip.half_angle);
  const auto shrunk = read(block(rubber(E), deep, deep), flat);
  external_check(
    {.source = "rounded cone on an elastic half-space, I. N. Sneddon, Int. J. Eng. Sci. 3 (1965)",
     .what = "Shore D of 30 MPa at small strain",
     .expected = exact,
     .obtained = value(shrunk, "hardness"),
     .relative_tolerance = 2 / exact,
     .unit = "points"});
  const auto bench = read(block(rubber(E), 10 * mm, 15 * mm), materials::shore_d_gauge, 0.8);
  const auto finer = read(block(rubber(E), 10 * mm, 15 * mm), materials::shore_d_gauge, 1.2);
  CHECK(value(bench, "hardness") == Approx(value(finer, "hardness")).margin(1));
  CHECK(value(bench, "hardness") > materials::half_space_reading(materials::shore_d_gauge, E, 0.5));
  CHECK(value(read(block(rubber(2 * E), 10 * mm, 15 * mm), materials::shore_d_gauge, 0.8), "hardness") >
        value(bench, "hardness"));
  CHECK_THAT(bench.warnings.back().text, Catch::Matchers::Contains("needle"));
}

TEST_CASE("a ball on a deep block reads what Sneddon's solution says", "[external]")
{
  // The real ball at real depths: a contact of up to 1.8 mm radius; two points for finite strain, as for the
  // cone.
  for (const auto &[modulus, asker_c, shore_oo] :
       {std::tuple{1.5, 55.44, 80.69}, std::tuple{4., 72.99, 89.53}, std::tuple{8., 81.86, 93.29}})
  {
    const auto        input = block(rubber(modulus * MPa), 40 * mm, 40 * mm);
    const std::string source = "sphere on a half-space, I.N. Sneddon 1965";
    external_check({source, fmt::format("Asker C at {:.1f} MPa, contact", modulus), asker_c,
                    value(read(input, materials::asker_c_gauge), "hardness"), 2 / asker_c});
    external_check({source, fmt::format("Shore OO at {:.1f} MPa, contact", modulus), shore_oo,
                    value(read(input, materials::shore_oo_gauge), "hardness"), 2 / shore_oo});
  }
}

TEST_CASE("from the exact cone to the bench: hard table and finite strain in points", "[external]")
{
  const double modulus = 4 * MPa, exact = 57.80, wide = 12 * mm, high = 6 * mm;
  const auto   hardness = [&](double height, double radius, const materials::Gauge &gauge) {
    return value(read(block(rubber(modulus), height, radius), gauge), "hardness");
  };
  const auto  &real = materials::shore_a_gauge;
  const double linear = hardness(deep, deep, shallow(real)), table = hardness(high, wide, shallow(real)),
               finite = hardness(deep, deep, real), bench = hardness(high, wide, real);
  CAPTURE(linear, table, finite, bench);
  // The table under 6 mm makes every reading harder, by a few points; finite strain moves it by less than a
  // point.
  CHECK(table > linear + 1);
  CHECK(table < linear + 3);
  CHECK(std::abs(finite - linear) < 1);
  CHECK(std::abs(bench - table) < 1);
  // 6 points: what the published relations themselves differ by at this modulus.
  external_check({"truncated cone on a half-space, U. B. C. O. Ejike 1981 after Sneddon (from memory)",
                  "Shore A at 4.0 MPa, real tip, 6 mm on a hard table", exact, bench, 6 / exact});
  CHECK(bench > 55.36); // flat punch of the tip's face (Mix & Giacomin 2011)
  CHECK(bench < 62.57); // Gent 1958
}

TEST_CASE("Gent's relation from 40 to 70 Shore A", "[external]")
{
  // Gent's modulus for a reading, pressed: 4 points, less than what published relations differ by.
  for (const double nominal : {40., 50., 60., 70.})
    external_check(
      {"Gent 1958, modulus of rubber from its hardness (from memory)",
       fmt::format("Shore A read by contact on Gent's modulus for {:.0f}", nominal), nominal,
       value(read(block(rubber(materials::modulus_gent(nominal)), 6 * mm, 12 * mm), materials::shore_a_gauge),
             "hardness"),
       4 / nominal});
}

TEST_CASE("readings converge with the mesh")
{
  const auto          input = block(rubber(4 * MPa), 6 * mm, 12 * mm);
  std::vector<double> readings;
  for (const double level : {0.6, 1.2, 2.4})
    readings.push_back(value(read(input, materials::shore_a_gauge, level), "hardness"));
  CAPTURE(readings);
  CHECK(std::abs(readings[2] - readings[1]) < std::abs(readings[1] - readings[0]));
  CHECK(std::abs(readings[2] - readings[1]) < 0.3); // a third of a division of a good gauge
}

TEST_CASE("from hardness to modulus and back")
{
  const auto first = read(block(rubber(4 * MPa), 6 * mm, 12 * mm), materials::shore_a_gauge, 1.2, 3, 50);
  const auto again =
    read(block(rubber(value(first, "modulus_for_wanted")), 6 * mm, 12 * mm), materials::shore_a_gauge);
  CHECK(value(again, "hardness") == Approx(50).margin(0.2).epsilon(0));
  // Whatever rubber the search starts from, and whether it relaxes or not.
  auto  start = rubber(6 * MPa);
  auto &data = std::get<materials::RubberData>(start.data);
  data.relaxing = {{0.2, 0.5}, {0.2, 5}};
  const auto other = read(block(start, 6 * mm, 12 * mm), materials::shore_a_gauge, 1.2, 3, 60);
  data.c10 *= value(other, "modulus_for_wanted") / (6 * MPa);
  CHECK(value(read(block(start, 6 * mm, 12 * mm), materials::shore_a_gauge), "hardness") ==
        Approx(60).margin(0.3).epsilon(0));
}

TEST_CASE("what relaxes reads softer later; foam under thin rubber reads softer still")
{
  auto  material = rubber(4 * MPa);
  auto &data = std::get<materials::RubberData>(material.data);
  data.relaxing = {{0.3, 0.5}, {0.3, 5}};
  const auto   input = block(material, 6 * mm, 12 * mm);
  const double soon = value(read(input, materials::shore_a_gauge, 0.8, 0.5), "hardness"),
               late = value(read(input, materials::shore_a_gauge, 0.8, 15), "hardness"),
               rest = value(read(block(rubber(4 * MPa), 6 * mm, 12 * mm), materials::shore_a_gauge, 0.8),
                            "hardness");
  CHECK(soon > late + 0.5);
  CHECK(late > rest);

  auto thin = block(rubber(4 * MPa), 2 * mm, 26 * mm);
  thin.layers.push_back(layer("soft", rubber(0.5 * MPa), 10 * mm));
  CHECK(value(read(thin, materials::shore_a_gauge, 0.8), "hardness") < rest - 5);
}

TEST_CASE("readings outside of a scale's good range say which gauge to take")
{
  using Catch::Matchers::Contains;
  using materials::HardnessScale;
  CHECK(solver::unreliable_reading(HardnessScale::shore_a, 60).empty());
  CHECK_THAT(solver::unreliable_reading(HardnessScale::shore_a, 15),
             Contains("below 20") && Contains("Asker C"));
  CHECK_THAT(solver::unreliable_reading(HardnessScale::shore_a, 93),
             Contains("above 90") && Contains("Shore D"));
  CHECK_THAT(solver::unreliable_reading(HardnessScale::shore_oo, 95),
             Contains("above 90") && Contains("Shore A"));
  CHECK_THAT(solver::unreliable_reading(HardnessScale::asker_c, 5),
             Contains("below 10") && Contains("Shore OO"));
  const auto hard = read(block(rubber(40 * MPa), 6 * mm, 12 * mm), materials::shore_a_gauge, 0.8);
  REQUIRE(hard.warnings.size() == 1);
  CHECK(hard.warnings[0].reading == "hardness");
}
