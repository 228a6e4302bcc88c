// SPDX-License-Identifier: Apache-2.0
// What use leaves of a material, in a library file: read, and its mistakes named with their place and cure.
#include "tests/support/catch.h"
#include "tools/language/material_reader.h"

#include <fmt/format.h>

using namespace solemech::materials;

namespace
{
std::string sheet(const std::string &band)
{
  return "format = 1\n[[material]]\nname = \"foam\"\ndensity = \"200 kg/m3\"\nshear_modulus = \"0.4 MPa\"\n"
         "[[material.after_use]]\n" +
         band;
}

std::string problem_of(const std::string &band)
{
  try
  {
    read_material_text(sheet(band), "foam.toml");
  }
  catch (const CaseError &error)
  {
    const auto &first = error.problems().front();
    return fmt::format("{}:{}: {} {}. {}", first.file, first.line, first.entry, first.reason, first.cure);
  }
  return "accepted";
}

const std::string good = "kind = \"ageing\"\nuse = \"500 km\"\nsource = \"invented\"\n";
} // namespace

TEST_CASE("the band of a use is read, and what is not said is as fresh")
{
  const auto foam =
    read_material_text(sheet(good + "stiffness_from = \"75 %\"\nstiffness_to = \"110 %\"\n"), "foam.toml")
      .front();
  REQUIRE(foam.after_use.size() == 1);
  const auto &band = foam.after_use.front();
  CHECK(band.kind == "ageing");
  CHECK(band.use == "500 km");
  CHECK(band.stiffness_from == Approx(0.75));
  CHECK(band.stiffness_to == Approx(1.10));
  CHECK(band.return_from == 1);
  CHECK(band.return_to == 1);
  CHECK(band.source == "invented");
}

TEST_CASE("mistakes in the band of a use are named with their place and cure")
{
  CHECK(problem_of(good + "return_from = \"100 %\"\nreturn_to = \"90 %\"\n") ==
        "foam.toml:10: foam.after_use.return_from is above return_to. Swap the two");
  CHECK(problem_of("kind = \"aging\"\nuse = \"500 km\"\nsource = \"s\"\n").find("\"ageing\"") !=
        std::string::npos);
  CHECK(problem_of("kind = \"ageing\"\nuse = \"500 km\"\n").find("source") != std::string::npos);
  CHECK(problem_of(good + "stiffness = \"80 %\"\n").find("stiffness_") != std::string::npos);
  CHECK(problem_of(good + "stiffness_from = \"80 kPa\"\n").find("share") != std::string::npos);
}
