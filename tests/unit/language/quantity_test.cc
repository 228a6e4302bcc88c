// SPDX-License-Identifier: Apache-2.0
// Units against the factors printed in NIST Special Publication 811 (2008), appendix B.8, seven digits each,
// and the messages that guide people, word for word.
#include "tests/support/catch.h"
#include "tools/language/nearest_name.h"
#include "tools/language/number_text.h"
#include "tools/language/quantity.h"

using namespace solemech::materials;
using D = Dimension;

namespace
{
constexpr double printed_digits = 1e-6; // the publication prints seven significant digits

std::string complaint(const char *text, D dimension)
{
  try
  {
    if (dimension == D::hardness)
      parse_hardness(text);
    else
      parse_quantity(text, dimension);
  }
  catch (const InvalidQuantity &error)
  {
    return std::string(error.what()) + ". " + error.cure;
  }
  return "accepted";
}
} // namespace

TEST_CASE("customary units have the factors of NIST SP 811")
{
  CHECK(parse_quantity("1 in", D::length) == Approx(2.54e-2).epsilon(printed_digits));
  CHECK(parse_quantity("1 lb", D::mass) == Approx(4.535924e-1).epsilon(printed_digits));
  CHECK(parse_quantity("1 oz", D::mass) == Approx(2.834952e-2).epsilon(printed_digits));
  CHECK(parse_quantity("1 lbf", D::force) == Approx(4.448222).epsilon(printed_digits));
  CHECK(parse_quantity("1 psi", D::pressure) == Approx(6.894757e3).epsilon(printed_digits));
  CHECK(parse_quantity("1 bar", D::pressure) == Approx(1e5).epsilon(1e-15));
  // Fixed points of the scales: 32 °F and 212 °F are 0 and 100 °C.
  CHECK(parse_quantity("32 °F", D::temperature) == Approx(273.15).epsilon(1e-14));
  CHECK(parse_quantity("212 F", D::temperature) == Approx(373.15).epsilon(1e-14));
  CHECK(parse_quantity("-40 C", D::temperature) ==
        Approx(parse_quantity("-40 °F", D::temperature)).epsilon(1e-14));
}

TEST_CASE("SI units and spellings that people use")
{
  CHECK(parse_quantity("12 mm", D::length) == Approx(0.012).epsilon(1e-15));
  CHECK(parse_quantity("12mm", D::length) == Approx(0.012).epsilon(1e-15));
  CHECK(parse_quantity(" 1.2e1  mm ", D::length) == Approx(0.012).epsilon(1e-15));
  CHECK(parse_quantity("10 µm", D::length) == Approx(1e-5).epsilon(1e-15));
  CHECK(parse_quantity("30 cm³", D::volume) == Approx(30e-6).epsilon(1e-15));
  CHECK(parse_quantity("30 ml", D::volume) == Approx(30e-6).epsilon(1e-15));
  CHECK(parse_quantity("0.17 g/cm3", D::density) == Approx(170).epsilon(1e-15));
  CHECK(parse_quantity("20 N/mm", D::stiffness) == Approx(2e4).epsilon(1e-15));
  CHECK(parse_quantity("9.81 m/s²", D::acceleration) == Approx(9.81).epsilon(1e-15));
  CHECK(parse_quantity("3 %", D::share) == Approx(0.03).epsilon(1e-15));
  CHECK(parse_quantity("0.03", D::share) == Approx(0.03).epsilon(1e-15));
  CHECK(parse_quantity("-0.8 %/K", D::per_kelvin) == Approx(-0.008).epsilon(1e-15));
  CHECK(parse_hardness("60 Shore A").scale == "ShoreA");
  CHECK(parse_hardness("42 AskerC").value == 42);
  CHECK(quantity_text(0.012, D::length) == "12 mm");
  CHECK(quantity_text(296.15, D::temperature) == "23 °C");
}

TEST_CASE("every printed value is read back")
{
  for (const auto &unit : units())
    CHECK(parse_quantity(quantity_text(unit.factor + unit.offset, unit.dimension), unit.dimension) ==
          Approx(unit.factor + unit.offset).epsilon(1e-5)); // printed with six digits
}

TEST_CASE("messages about values guide to the cure")
{
  CHECK(complaint("12", D::mass) ==
        "\"12\" has no unit. Write \"12 kg\", for example (known: kg, g, mg, lb, oz)");
  CHECK(complaint("140 Mpa", D::pressure) == "unknown unit \"Mpa\". Did you mean \"MPa\"?");
  CHECK(complaint("1,5 mm", D::length) == "\"1,5 mm\" has a decimal comma. Use a decimal point: \"1.5 mm\"");
  CHECK(complaint("12 kg", D::length) ==
        "\"12 kg\" is a mass, but a length is needed. Use one of mm, cm, m, in, um, µm, μm");
  CHECK(complaint("nan mm", D::length) ==
        "\"nan mm\" is not a finite number. Write a value such as \"12 mm\"");
  CHECK(complaint("-inf J", D::energy) == "\"-inf J\" is not a finite number. Write a value such as \"5 J\"");
  CHECK(complaint("1e999 J", D::energy) == "\"1e999 J\" is too large or too small. Check the power of ten");
  CHECK(complaint("thick", D::length) ==
        "\"thick\" does not start with a number. Write a value such as \"12 mm\"");
  CHECK(complaint("3 mm", D::count) ==
        "\"3 mm\" has a unit, but a whole number is needed. Leave the unit out");
  CHECK(complaint("60", D::hardness) ==
        "\"60\" does not name its hardness scale. Write \"60 ShoreA\", for example (known: ShoreA, ShoreD, "
        "ShoreOO, AskerC)");
  CHECK(complaint("60 shoreA", D::hardness) == "unknown hardness scale \"shoreA\". Did you mean \"ShoreA\"?");
  CHECK(complaint("52 Shore C", D::hardness) == "the model has no gauge \"Shore C\", and no conversion of "
                                                "its readings is known. Read the piece with one of "
                                                "ShoreA, ShoreD, ShoreOO, AskerC, and write that");
  CHECK(complaint("160 ShoreA", D::hardness) ==
        "\"160 ShoreA\" is off the scale. Gauge readings run from 0 to 100");
}

TEST_CASE("nearest names")
{
  CHECK(nearest_name("thikness", {"thickness", "material", "name"}) == "thickness");
  CHECK(nearest_name("heel-dorp", {"heel-drop", "forefoot-drop"}) == "heel-drop");
  CHECK(nearest_name("zebra", {"thickness", "material"}).empty());
}

TEST_CASE("a time is shown in the unit of its own size")
{
  using solemech::tools::time_text;
  CHECK(time_text(0.00472) == "4.7 ms");
  CHECK(time_text(0.185) == "185 ms");
  CHECK(time_text(0.9996) == "1 s");
  CHECK(time_text(10.1) == "10.1 s");
  CHECK(time_text(1800) == "30 min");
  CHECK(time_text(79200) == "22 h");
  CHECK(time_text(604800) == "7 days");
  CHECK(time_text(0) == "0.0 ms");
}
