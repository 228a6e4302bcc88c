// SPDX-License-Identifier: Apache-2.0
// Readings of wear on a bench sheet. The groove of a sleeve against the segment of a circle (any handbook:
// area close to 4/3 sqrt(2 R) h^1.5 for a shallow one) and Archard's law (J. Appl. Phys. 24, 1953) with loss
// as 1/E (Ratner, Lancaster; from memory); hours left against hand arithmetic. No solver.
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/answers/sheet/settle_sheet.h"
#include "tools/language/library.h"

#include <cmath>
#include <filesystem>
#include <fstream>

using namespace solemech;
using namespace solemech::tools;

namespace
{
const std::filesystem::path source = SOLEMECH_SOURCE;

const materials::Library &library()
{
  static const auto loaded = materials::Library::load(source / "materials/library");
  return loaded;
}

Sheet sheet_with(const std::string &rubber, const std::string &readings)
{
  const tests::TemporaryFolder folder;
  const auto                   path = folder.path / "worn.toml";
  std::ofstream(path)
    << "format = 1\nrig = \"guided-rod-1200\"\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\n"
       "thickness = \"18 mm\"\n[[layer]]\nname = \"outsole\"\nmaterial = \""
    << rubber << "\"\nthickness = \"4 mm\"\n"
    << readings;
  return read_sheet(path, {{}, {source / "cases"}, library().source()});
}

double modulus(const char *rubber)
{
  return std::get<materials::RubberData>(library().find(rubber)->data).youngs_modulus();
}

std::string abrasion(const std::string &depth, const std::string &more)
{
  return "[[reading]]\nkind = \"abrasion\"\nseconds = \"10 s\"\nvalue = \"" + depth + "\"\n" + more;
}

const std::string beside = "reference = \"rubber-67a\"\nreference_depth = \"0.40 mm +- 0.02\"\n";

bool tells(const std::vector<std::string> &sentences, const std::string &part)
{
  for (const auto &one : sentences)
    if (one.find(part) != std::string::npos)
      return true;
  return false;
}
} // namespace

TEST_CASE("A groove follows from that in a known rubber", "[sheet]")
{
  const auto same = sheet_with("rubber-67a", abrasion("0.40 mm +- 0.02", beside));
  REQUIRE(same.readings.size() == 1);
  CHECK(same.readings[0].probe.direct(same.setup) == Approx(0.40e-3).epsilon(1e-6));
  const auto   softer = sheet_with("rubber-60a", abrasion("0.50 mm +- 0.02", beside));
  const double expected = 0.40e-3 * std::pow(modulus("rubber-67a") / modulus("rubber-60a"), 2.0 / 3);
  // 2 %: the shallow groove's series, whose next term is h/(10 R) of it (0.4 mm over 6.5 mm).
  CHECK(softer.readings[0].probe.direct(softer.setup) == Approx(expected).epsilon(0.02));
  // Force and speed are the same for both rubbers, so they do not matter.
  const auto harder_hand =
    sheet_with("rubber-60a", abrasion("0.50 mm +- 0.02", beside + "force = \"5 N\"\nspeed = \"5000 rpm\"\n"));
  CHECK(harder_hand.readings[0].probe.direct(harder_hand.setup) ==
        Approx(softer.readings[0].probe.direct(softer.setup)));
}

TEST_CASE("Without a known rubber beside it a groove is known roughly only", "[sheet]")
{
  const auto  rough = sheet_with("rubber-60a", abrasion("1.0 mm +- 0.05", ""));
  const auto &seen = rough.readings.at(0).observation;
  // Volume to a factor of three; depth goes with its power 2/3 in a shallow groove, so 2.08-fold; 5 % for the
  // deep one.
  CHECK(seen.by_ratio);
  CHECK(seen.doubt * doubts_in_half_band / seen.value ==
        Approx(std::hypot(2.0 / 3 * std::log(3.0), 0.05)).epsilon(0.05));
  CHECK(sheet_with("rubber-60a", abrasion("1.0 mm", "wore_through = true\n"))
          .readings.at(0)
          .observation.meaning == settle::Meaning::at_least);
  const auto foam = sheet_with("rubber-60a", abrasion("1.0 mm", "layer = \"core\"\n"));
  CHECK(foam.readings.empty());
  CHECK(tells(foam.kept, "not a rubber"));
  CHECK_THROWS_WITH(sheet_with("rubber-60a", abrasion("1.0 mm", "reference = \"rubber-64\"\n")),
                    Catch::Contains("Did you mean \"rubber-64a\"?"));
}

TEST_CASE("An unknown rubber is settled on its groove", "[sheet]")
{
  // Ground as deep as the known one: as stiff as that, within the doubt of two depths.
  const auto  sheet = sheet_with("unknown rubber", abrasion("0.40 mm +- 0.02", beside));
  const Solve bench = [](const solver::Case &, const SolveWish &, const RunProgress &) {
    return solver::Result();
  };
  const std::atomic<bool> go_on{false};
  Job                     job(bench, {}, {}, go_on);
  const auto              answer = settle_sheet(sheet, {}, job, {});
  const auto             &stiffness = answer.settled.parameters.at(0);
  CHECK(stiffness.settled);
  CHECK(stiffness.band.low < modulus("rubber-67a") / 3); // the shear modulus of rubber
  CHECK(stiffness.band.high > modulus("rubber-67a") / 3);
  CHECK(answer.settled.observations.at(0).predicted.value == Approx(0.40e-3).epsilon(0.03));
}

TEST_CASE("Tread left tells the hours left, and whether it went on as before", "[sheet]")
{
  const auto reading = [](const char *left, const char *hours) {
    return std::string("[[reading]]\nkind = \"tread left\"\nnew_depth = \"3.0 mm +- 0.1\"\nworn_at = \"1.0 "
                       "mm\"\nvalue = \"") +
           left + " mm +- 0.1\"\nhours = \"" + hours + " h\"\n";
  };
  // By hand: 1.2 mm in 120 h, 0.8 mm to go: 80 h; with the ends 1.7 and 1.9 mm 65 and 98 h, with 2.9 and 3.1
  // mm 7 h each way.
  const auto one = sheet_with("rubber-60a", reading("1.8", "120"));
  INFO(one.kept.at(0));
  CHECK(tells(one.kept, "80 ±18 h left until 1.0 mm"));
  // 0.6 mm would be left after 240 h; +- 2 x 0.14.
  CHECK(tells(sheet_with("rubber-60a", reading("1.8", "120") + reading("0.7", "240")).kept,
              "0.6 ±0.3 mm would be left: agree"));
  CHECK(tells(sheet_with("rubber-60a", reading("1.8", "120") + reading("1.4", "240")).kept,
              "would be left: disagree"));
  CHECK(tells(sheet_with("rubber-60a", reading("2.9", "120")).kept, "cannot tell how it wears"));
  CHECK_THROWS_WITH(sheet_with("rubber-60a", reading("3.6", "120")),
                    Catch::Contains("is more than the depth of the new tread"));
  CHECK(tells(sheet_with("rubber-60a", "[[reading]]\nkind = \"tread left\"\nvalue = \"1.8 mm\"\n").kept,
              "kept, not used: give hours"));
}
