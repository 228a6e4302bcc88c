// SPDX-License-Identifier: Apache-2.0
// Hardness relations against worked tables of the published formulas, computed outside the project; each
// relation is named at its function. Exact cone and sphere: I.N. Sneddon's half-space solutions.
#include "materials/hardness.h"
#include "tests/support/catch.h"

using namespace solemech::materials;

TEST_CASE("Published relations between Shore A and modulus", "[hardness]")
{
  struct Row
  {
    double shore_a, gent, error_function, log_linear, cone;
  }; // [MPa]
  for (const auto &r : {Row{40, 1.690, 1.355, 1.994, 1.908}, Row{50, 2.456, 2.241, 3.425, 2.886},
                        Row{60, 3.605, 3.489, 5.884, 4.399}, Row{70, 5.521, 5.291, 10.109, 6.967},
                        Row{80, 9.351, 8.090, 17.366, 12.131}})
  {
    CAPTURE(r.shore_a);
    constexpr double last_digit = 600; // [Pa]
    CHECK(modulus_gent(r.shore_a) == Approx(1e6 * r.gent).margin(last_digit).epsilon(0));
    CHECK(modulus_error_function(r.shore_a) == Approx(1e6 * r.error_function).margin(last_digit).epsilon(0));
    CHECK(modulus_log_linear({r.shore_a, HardnessScale::shore_a}) ==
          Approx(1e6 * r.log_linear).margin(last_digit).epsilon(0));
    CHECK(modulus_from_reading(shore_a_gauge, r.shore_a, 0.5) ==
          Approx(1e6 * r.cone).margin(last_digit).epsilon(0));
    CHECK(shore_a_gent(modulus_gent(r.shore_a)) == Approx(r.shore_a).epsilon(1e-12));
    CHECK(shore_a_error_function(modulus_error_function(r.shore_a)) == Approx(r.shore_a).epsilon(1e-12));
    CHECK(half_space_reading(shore_a_gauge, modulus_from_reading(shore_a_gauge, r.shore_a, 0.5), 0.5) ==
          Approx(r.shore_a).epsilon(1e-10));
  }
}

TEST_CASE("Readings of the exact gauges on soft rubber", "[hardness]")
{
  struct Row
  {
    double modulus, cone, gent, asker_c, shore_oo;
  };
  for (const auto &r : {Row{1.5, 34.34, 36.88, 55.44, 80.69}, Row{2.5, 46.52, 50.48, 65.28, 85.91},
                        Row{4.0, 57.80, 62.57, 72.99, 89.53}, Row{6.0, 66.90, 71.77, 78.53, 91.92},
                        Row{8.0, 72.73, 77.33, 81.86, 93.29}})
  {
    CAPTURE(r.modulus);
    constexpr double last_digit = 0.006;
    CHECK(half_space_reading(shore_a_gauge, 1e6 * r.modulus, 0.5) ==
          Approx(r.cone).margin(last_digit).epsilon(0));
    CHECK(shore_a_gent(1e6 * r.modulus) == Approx(r.gent).margin(last_digit).epsilon(0));
    CHECK(half_space_reading(asker_c_gauge, 1e6 * r.modulus, 0.5) ==
          Approx(r.asker_c).margin(last_digit).epsilon(0));
    CHECK(half_space_reading(shore_oo_gauge, 1e6 * r.modulus, 0.5) ==
          Approx(r.shore_oo).margin(last_digit).epsilon(0));
  }
}

TEST_CASE("A shallow sphere is Hertz's", "[hardness]")
{
  // H. Hertz: F = 4/3 E* sqrt(R) d^1.5; Sneddon's sphere meets it as d/R -> 0.
  CHECK(half_space_force(asker_c_gauge.tip, 1e-8) ==
        Approx(4.0 / 3.0 * std::sqrt(2.54e-3) * std::pow(1e-8, 1.5)).epsilon(1e-5));
}

TEST_CASE("Shore D: the published inverse is the sharp cone, the rounded tip of the gauge sinks deeper")
{
  // Qi, Joyce & Boyce 2003 give 19.15, 34.75, 62.55, 117.3 MPa at 30, 40, 50, 60 D (worked from their
  // formula).
  const auto  &tip = shore_d_gauge.tip;
  const double slant = std::tan(tip.half_angle);
  const auto   sharp = [&](double d) { return 2 / std::numbers::pi * slant * d * d; }; // Sneddon, F over E*
  for (const auto &[reading, published] :
       {std::pair{30., 19.15}, std::pair{40., 34.75}, std::pair{50., 62.55}, std::pair{60., 117.3}})
  {
    CAPTURE(reading);
    const double d = shore_d_gauge.depth(reading), force = 0.75 * shore_d_gauge.force(reading);
    CHECK(modulus_shore_d_qi(reading) == Approx(1e6 * published).epsilon(5e-4));
    CHECK(force / sharp(d) == Approx(1e6 * published).epsilon(2e-3)); // they took 0.4445 N a point
    // The rounded tip holds the sharp cone of the same end inside itself, and lies inside the sharp cone from
    // which it is rounded: its force, and with it the modulus for a reading, lies between theirs.
    const double exact = modulus_from_reading(shore_d_gauge, reading, 0.5);
    CHECK(exact < force / sharp(d));
    CHECK(exact > force / sharp(d + tip.nose_radius * (1 / std::sin(tip.half_angle) - 1)));
  }
}

TEST_CASE("A cone that is in up to its rod goes on as a flat punch")
{
  // Flat punch of the rod's radius: dF/dd = 2 a E* (handbook).
  const auto  &tip = shore_a_gauge.tip;
  const double slope = (half_space_force(tip, 2.4e-3) - half_space_force(tip, 2.3e-3)) / 0.1e-3;
  CHECK(slope == Approx(2 * tip.rod_radius).epsilon(1e-9));
}

TEST_CASE("Readings outside a relation's range are refused", "[hardness]")
{
  CHECK_THROWS_AS(modulus_gent(10), InvalidParameter);
  CHECK_THROWS_AS(modulus_gent(90), InvalidParameter);
  CHECK_THROWS_AS(modulus_shore_d_qi(20), InvalidParameter);
  CHECK_THROWS_AS(half_space_reading(shore_a_gauge, -1, 0.5), InvalidParameter);
  CHECK_THROWS_AS(modulus_log_linear({50, HardnessScale::asker_c}), InvalidParameter);
  CHECK_THROWS_AS(modulus_from_reading(asker_c_gauge, 0, 0.3), InvalidParameter);
}
