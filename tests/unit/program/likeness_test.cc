// SPDX-License-Identifier: Apache-2.0
// Which library material is nearest to a few numbers: what is asked is understood or refused with a cure,
// distances are those worked out by hand, and what an entry lacks is said.
#include "tests/support/catch.h"
#include "tools/program/material_likeness.h"
#include "tools/program/options.h"

using namespace solemech;
using namespace solemech::materials;
using namespace solemech::tools;

namespace
{
Material foam(const std::string &name, double density, double asker_c, double ball)
{
  Material out;
  out.name = name;
  out.family = "foam";
  out.density = density;
  FoamData law;
  law.network = {{0.4e6, 6, 0.125}};
  out.data = law;
  out.readings.asker_c = asker_c;
  out.readings.ball_rebound = ball;
  return out;
}

Material plate()
{
  Material out;
  out.name = "plate";
  out.family = "plate";
  out.density = 200;
  out.data = PlateData{1e9, 0.3, {}};
  return out;
}
} // namespace

TEST_CASE("what is looked for is read item by item")
{
  const auto wanted = read_wanted("55 AskerC, 0.2 g/cm3 , 48 % ball rebound,65% pulse, 1.2 MPa");
  REQUIRE(wanted.size() == 5);
  CHECK(wanted[0].property == Property::hardness);
  CHECK(wanted[0].scale == "AskerC");
  CHECK(wanted[0].value == 55);
  CHECK(wanted[1].value == Approx(200));
  CHECK(wanted[2].property == Property::ball_rebound);
  CHECK(wanted[2].value == Approx(0.48));
  CHECK(wanted[3].property == Property::pulse_return);
  CHECK(wanted[4].value == Approx(1.2e6));
  CHECK(wanted_text(wanted[2]) == "48 % ball rebound");
  CHECK(read_wanted("60 Shore A").front().scale == "ShoreA");
  CHECK(read_wanted("55 AskerC; 200 kg/m3").size() == 2);
}

TEST_CASE("what is not understood is answered with the nearest known")
{
  CHECK_THROWS_WITH(read_wanted("48 % bal"),
                    Catch::Contains("unknown word, \"bal\". Did you mean \"ball\"?"));
  CHECK_THROWS_WITH(read_wanted("200 kg/m4"),
                    Catch::Contains("unknown unit, \"kg/m4\". Did you mean \"kg/m3\"?"));
  CHECK_THROWS_WITH(read_wanted("55 askerC"), Catch::Contains("Did you mean \"AskerC\"?"));
  CHECK_THROWS_WITH(read_wanted("48 %"), Catch::Contains("does not say which return"));
  CHECK_THROWS_WITH(read_wanted("55"), Catch::Contains("has no unit"));
  CHECK_THROWS_WITH(read_wanted("55,5 AskerC"),
                    Catch::Contains("\"55\" has no unit. Write decimals with a point"));
  CHECK_THROWS_WITH(read_wanted("springy"), Catch::Contains("Known are a hardness"));
  CHECK_THROWS_WITH(read_wanted(" , "), Catch::Contains("nothing to look for"));
  CHECK_THROWS_WITH(read_wanted("55 AskerC, 56 AskerC"), Catch::Contains("a second time"));
  CHECK_THROWS_WITH(read_wanted("0 kg/m3"), Catch::Contains("is not above zero"));
  CHECK_THROWS_AS(read_wanted("55 ShoreC"), UsageError);
  // Another gauge, not a slip of a letter.
  CHECK_THROWS_WITH(read_wanted("55 ShoreC"), !Catch::Contains("Did you mean"));
}

TEST_CASE("distance counts each difference in steps of its own, and what is lacking as three")
{
  const std::vector<Material> library{plate(), foam("off", 240, 60, 0.43), foam("near", 200, 54, 0.49)};
  const auto                  list = by_likeness(library, read_wanted("55 AskerC, 200 kg/m3, 48 % ball"));
  REQUIRE(list.size() == 3);
  CHECK(list[0].material->name == "near");
  CHECK(list[0].distance == Approx(std::sqrt((0.2 * 0.2 + 0.2 * 0.2) / 3)).epsilon(1e-9));
  CHECK(list[1].distance == Approx(1).epsilon(1e-9)); // 5 points, a factor of 1.2, 5 points
  CHECK(list[2].distance == Approx(std::sqrt(18. / 3)).epsilon(1e-9));
}

TEST_CASE("what differs is said in words")
{
  const auto wanted = read_wanted("55 AskerC, 200 kg/m3, 48 % ball, 0.1 MPa");
  const auto stiff = foam("stiff", 180, 58.6, 0.43);
  CHECK(difference_text(stiff, wanted[0]) == "4 points harder");
  CHECK(difference_text(stiff, wanted[1]) == "10 % lighter");
  CHECK(difference_text(stiff, wanted[2]) == "ball rebound 5 points lower");
  CHECK(difference_text(stiff, wanted[3]).ends_with("% stiffer"));
  CHECK(difference_text(foam("same", 200.4, 55.3, 0.482), wanted[0]).empty());
  CHECK(difference_text(foam("same", 200.4, 55.3, 0.482), wanted[1]).empty());
  CHECK(difference_text(plate(), wanted[0]) == "no hardness in AskerC known");
}
