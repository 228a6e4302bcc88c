// SPDX-License-Identifier: Apache-2.0
// What a person gets to read for a bad sheet, word for word: one message for each slip, all of them at once,
// with place and cure.
#include "solver/rig_parts.h"
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/language/sheet.h"

#include "sample_sheets.h"

#include <algorithm>
#include <filesystem>
#include <fstream>

using namespace solemech;
using namespace solemech::tests;

namespace
{
std::string layer(const std::string &lines)
{
  return sheet("name = \"core\"\nmaterial = \"eva-soft\"\n" + lines + "\n");
}

const std::string unit_sheet = "name = \"air\"\nmaterial = \"eva-firm\"\nthickness = \"8 mm\"\n";

std::string unit(const std::string &lines)
{
  return sheet(unit_sheet, "[layer.unit]\nfilm = \"tpu-film\"\n" + lines + "\n[plug]\nradius = \"40 mm\"\n");
}
} // namespace

TEST_CASE("a sound sheet has no problems")
{
  CHECK(problems_of(sheet()) == "");
  CHECK(problems_of("\xef\xbb\xbf" + sheet()) == ""); // byte order mark of some editors
  auto dos = sheet();
  for (std::size_t at = 0; (at = dos.find('\n', at)) != std::string::npos; at += 2)
    dos.replace(at, 1, "\r\n");
  CHECK(problems_of(dos) == "");
}

TEST_CASE("unknown entry")
{
  CHECK(problems_of(layer("thikness = \"16 mm\"\nthickness = \"16 mm\"")) ==
        "my.toml:9:1: core.thikness: there is no such entry. Did you mean \"thickness\"?\n"
        "    thikness = \"16 mm\"\n"
        "    ^\n");
}

TEST_CASE("values and units")
{
  CHECK(problems_of(layer("thickness = 16")) == "my.toml:9:13: core.thickness: 16 has no unit. Write "
                                                "thickness = \"16 mm\", for example (known: mm, cm, "
                                                "m, in, um, µm, μm).\n"
                                                "    thickness = 16\n"
                                                "                ^\n");
  CHECK(problems_of(layer("thickness = \"16 kg\"")) ==
        "my.toml:9:13: core.thickness: \"16 kg\" is a mass, but a length is needed. Use one of mm, cm, m, "
        "in, um, µm, "
        "μm.\n"
        "    thickness = \"16 kg\"\n"
        "                ^\n");
  CHECK(problems_of(layer("thickness = \"-16 mm\"")) ==
        "my.toml:9:13: core.thickness: \"-16 mm\" is out of range. Allowed: 0.2 mm to 300 mm.\n"
        "    thickness = \"-16 mm\"\n"
        "                ^\n");
  CHECK(
    problems_of(layer("thickness = \"0.1 mm\""))
      .starts_with("my.toml:9:13: core.thickness: \"0.1 mm\" is out of range. Allowed: 0.2 mm to 300 mm.\n"));
  CHECK(problems_of(layer("thickness = \"160 cm\""))
          .find("Allowed: 0.2 mm to 300 mm, that is 0.02 cm to 30 cm.") != std::string::npos);
  CHECK(problems_of(layer("thickness = nan"))
          .starts_with("my.toml:9:13: thickness: nan is not in quotes. Put text in quotes: \"nan\".\n") ==
        false);
  CHECK(problems_of(layer("thickness = \"nan mm\""))
          .starts_with("my.toml:9:13: core.thickness: \"nan mm\" is not a finite number. Write a value such "
                       "as \"12 mm\".\n"));
  CHECK(problems_of(layer("thickness = true"))
          .starts_with("my.toml:9:13: core.thickness: is true, but a length is needed. Write "
                       "thickness = \"12 mm\", for example.\n"));
}

TEST_CASE("slips that the parser would explain badly")
{
  CHECK(problems_of(layer("thickness = 16 mm")) ==
        "my.toml:9:13: thickness: 16 mm is not in quotes. Put values with units in quotes: \"16 mm\".\n"
        "    thickness = 16 mm\n"
        "                ^\n");
  CHECK(problems_of(layer("thickness = 1,6")) ==
        "my.toml:9:13: thickness: 1,6 has a decimal comma. Use a decimal point: 1.6.\n"
        "    thickness = 1,6\n"
        "                ^\n");
  CHECK(problems_of(layer("thickness = 16,5 mm"))
          .starts_with("my.toml:9:13: thickness: 16,5 mm has a decimal comma. Use a decimal point and "
                       "quotes: \"16.5 mm\".\n"));
  CHECK(problems_of(layer("thickness = \"16,5 mm\""))
          .starts_with("my.toml:9:13: core.thickness: \"16,5 mm\" has a decimal comma. Use a decimal point: "
                       "\"16.5 mm\".\n"));
  CHECK(problems_of(layer("thickness = “16 mm”")) ==
        "my.toml:9:13: thickness: curly quotes. Use straight quotes: \"...\".\n"
        "    thickness = “16 mm”\n"
        "                ^\n");
  CHECK(problems_of(sheet("name = core\nmaterial = \"eva-soft\"\nthickness = \"16 mm\"\n"))
          .starts_with("my.toml:7:8: name: core is not in quotes. Put text in quotes: \"core\".\n"));
  CHECK(problems_of(layer("thickness = \"16 mm"))
          .starts_with(
            "my.toml:9:19: thickness: a text is not closed. Put the closing quote \" on the same line.\n"));
  CHECK(problems_of(layer("thickness = \"16 mm\"\nthickness = \"17 mm\"")).find("Give each entry once") !=
        std::string::npos);
}

TEST_CASE("files that are no sheets")
{
  CHECK(problems_of("") == "my.toml:1:1: format: is missing. Begin the file with the line: format = 1.\n");
  CHECK(problems_of("format = 2\n")
          .starts_with("my.toml:1:10: format: this program reads format 1 only. Write format = 1, or use a "
                       "newer program.\n"));
  CHECK(problems_of(std::string("\x7f"
                                "ELF\x02\x01\0\0",
                                8)) ==
        "my.toml:1:1: this is not a text file (byte 0x7F). Give a plain text file in UTF-8.\n");
  CHECK(problems_of(sheet() + "[surroundings]\ntitle = \"caf\xe9\"\n")
          .find("my.toml:11:13: title: byte 0xE9 is not valid UTF-8. Save the file as UTF-8 (in the editor: "
                "encoding UTF-8).\n") != std::string::npos);

  const tests::TemporaryFolder scratch;
  const auto                  &folder = scratch.path;
  const auto                   large = folder / "large.toml";
  std::ofstream(large) << std::string(10'000'000, 'x');
  CHECK_THROWS_WITH(tools::read_case_file(large, small_library()),
                    large.string() +
                      ": 10.0 MB is too large. At most 1 MB is allowed; is this the right file?\n");
  CHECK_THROWS_WITH(tools::read_case_file(folder, small_library()),
                    folder.string() + ": this is not a file. Give a text file such as my-pair.toml.\n");
  CHECK_THROWS_WITH(tools::read_case_file(folder / "none.toml", small_library()),
                    (folder / "none.toml").string() +
                      ": there is no such file. Check the name and the folder.\n");
}

TEST_CASE("parts that do not fit together")
{
  CHECK(problems_of(sheet("name = \"core\"\nmaterial = \"eva-sof\"\nthickness = \"16 mm\"\n")) ==
        "my.toml:8:12: core.material: there is no material \"eva-sof\". Did you mean \"eva-soft\"?\n"
        "    material = \"eva-sof\"\n"
        "               ^\n");
  for (const auto name : solver::rig_part::all)
  {
    const std::string part(name);
    const auto        wanted =
      part.find(' ') == std::string::npos
               ? "\"" + part + "\" is already the name of a part of the energy account. Choose another name"
               : "\"" + part + "\" cannot be used as a name";
    CHECK(problems_of(sheet("name = \"" + part + "\"\nmaterial = \"eva-soft\"\nthickness = \"16 mm\"\n"))
            .find(wanted) != std::string::npos);
  }
  CHECK(problems_of(unit("diameter = \"90 mm\"\nfilm_thickness = \"0.6 mm\""))
          .starts_with("my.toml:12:12: air.diameter: the unit of 90 mm does not fit into the plug of 80 mm. "
                       "Give a narrower unit (what "
                       "lies outside goes into outside_volume), or widen plug.radius.\n"));
  CHECK(problems_of(unit("diameter = \"60 mm\"\nfilm_thickness = \"4 mm\""))
          .starts_with("my.toml:13:18: air.film_thickness: two films of 4 mm leave no chamber in a layer of "
                       "8 mm. Give a thinner film or "
                       "a thicker layer.\n"));
  // Hoop stress p r/t with r = half the height: 10 MPa x 0.6 mm / 4 mm = 1.5 MPa.
  CHECK(
    problems_of(unit("diameter = \"60 mm\"\nfilm_thickness = \"0.6 mm\"\ngauge_pressure = \"1.51 MPa\""))
      .starts_with("my.toml:14:18: air.gauge_pressure: 1510 kPa is more than the film can hold, about 1500 "
                   "kPa. Lower the pressure or "
                   "give a thicker film.\n"));
  CHECK(problems_of(
          unit("diameter = \"60 mm\"\nfilm_thickness = \"0.6 mm\"\ngauge_pressure = \"1.49 MPa\"")) == "");
  CHECK(problems_of(sheet() + "[[layer]]\nname = \"core\"\nmaterial = \"eva-firm\"\nthickness = \"3 mm\"\n")
          .starts_with("my.toml:11:8: core.name: \"core\" is the name of another layer as well. Give each "
                       "layer its own name.\n"));
  CHECK(problems_of("format = 1\n").find("the case has no stack") != std::string::npos);
  CHECK(problems_of("format = 1\n").find("the case has no rig") != std::string::npos);
}

TEST_CASE("drops that cannot be")
{
  const auto drop = [](const std::string &lines) {
    return problems_of(
      "format = 1\n[[layer]]\nname = \"core\"\nmaterial = \"eva-soft\"\nthickness = \"16 mm\"\n[drop]\n"
      "diameter = \"40 mm\"\n" +
      lines);
  };
  CHECK(drop("mass = \"1.2 kg\"\nenergy = \"5 J\"\n") == "");
  CHECK(
    drop("mass = \"0 kg\"\nenergy = \"5 J\"\n")
      .starts_with("my.toml:8:8: drop.mass: \"0 kg\" is out of range. Allowed: above 0 kg to 10000 kg.\n"));
  CHECK(drop("mass = \"1.2 kg\"\nenergy = \"5 J\"\nheight = \"400 mm\"\n")
          .find("my.toml:9:10: drop.energy: height is given as well, and both set the same thing. Keep one "
                "of the two.\n") != std::string::npos);
  CHECK(
    drop("mass = \"1.2 kg\"\n")
      .starts_with("my.toml:6:1: drop.height: is missing. Give height = \"400 mm\" or energy = \"5 J\".\n"));
  const auto bottoming = drop("mass = \"100 kg\"\nenergy = \"400 J\"\n");
  CHECK(bottoming.starts_with(
    "my.toml:9:10: drop.energy: 400 J would bottom the stack: its foam locks up at about "));
  CHECK(bottoming.find("Lower the drop, or give a thicker or firmer stack.\n") != std::string::npos);
}

TEST_CASE("all slips at once, in the order of the file")
{
  const auto text =
    problems_of("format = 1\n[drop]\nmass = 1.2 kg\nheigth = \"400 mm\"\ndiameter = \"40\"\n[[layer]]\n"
                "name = \"core\"\nmaterial = “eva-soft”\nthickness = \"0,5 mm\"\n");
  std::vector<std::size_t> places;
  for (const char *place :
       {"my.toml:2:1: drop.height: is missing", "my.toml:3:8: mass: 1.2 kg is not in quotes",
        "my.toml:4:1: drop.heigth: there is no such entry. Did you mean \"height\"?",
        "my.toml:5:12: drop.diameter: \"40\" has no unit", "my.toml:8:12: material: curly quotes",
        "my.toml:9:13: core.thickness: \"0,5 mm\" has a decimal comma"})
  {
    INFO(place << " in\n" << text);
    places.push_back(text.find(place));
    CHECK(places.back() != std::string::npos);
  }
  CHECK(std::is_sorted(places.begin(), places.end()));
}

TEST_CASE("changes from the command line")
{
  CHECK(problems_of(
          sheet(), {"core.thickness=12 mm", "drop.energy=5 J", "eva-soft.exponent=5", "accuracy=2 %"}) == "");
  CHECK(
    problems_of(sheet(), {"core.thicknes=12 mm"}) ==
    "--set core.thicknes=12 mm: core.thicknes: there is no such entry. Did you mean \"core.thickness\"?\n");
  CHECK(
    problems_of(sheet(), {"cor.thickness=12 mm"}) ==
    "--set cor.thickness=12 mm: cor.thickness: there is no such entry. Did you mean \"core.thickness\"?\n");
  // A name near to none is answered with those there are, not with a guess.
  CHECK(
    problems_of(sheet(), {"foam.thickness=12 mm"}) ==
    "--set foam.thickness=12 mm: foam.thickness: there is no such entry. The layers of this case: core.\n");
  CHECK(
    problems_of(sheet(), {"unit.gauge_pressure=20 psi"}) ==
    "--set unit.gauge_pressure=20 psi: unit.gauge_pressure: there is no such entry. No layer of this case "
    "has an air unit.\n");
  CHECK(problems_of(sheet(), {"core.thickness=12"}) ==
        "--set core.thickness=12: core.thickness: 12 has no unit. Write thickness = \"12 mm\", for example "
        "(known: mm, "
        "cm, m, in, um, µm, μm).\n");
  CHECK(problems_of(sheet(), {"core"}) ==
        "--set core: this is not a change. Write --set insert.thickness=\"2 mm\", for example.\n");
  // A layer named like a library material: both have a density-free common entry name only by address.
  const auto clash = sheet("name = \"x\"\nmaterial = \"x\"\nthickness = \"16 mm\"\n",
                           "[[material]]\nname = \"x\"\nfrom = \"eva-soft\"\n");
  CHECK(problems_of(clash, {"x.thickness=12 mm", "x.exponent=5"}) == "");
  CHECK(problems_of(clash, {"layer.x.thickness=12 mm", "material.x.exponent=5"}) == "");
}

TEST_CASE("a missing stack or rig names the nearest")
{
  CHECK(problems_of("format = 1\nstack = \"pair-07-hel\"\nrig = \"guided-rod-1200\"\n") ==
        "my.toml:2:9: stack: there is no stack \"pair-07-hel\". Did you mean \"pair-07-heel\"?\n"
        "    stack = \"pair-07-hel\"\n"
        "            ^\n");
  CHECK_THROWS_WITH(tools::find_case("heel-dorp", small_library().case_roots),
                    "heel-dorp: there is no case of this name. Did you mean \"heel-drop\"?\n");
}

TEST_CASE("a file full of mistakes is answered with as many as anybody mends at once")
{
  std::string many = sheet();
  for (int i = 0; i < 20000; ++i)
    many += "entry = 12 mm\n";
  const auto told = problems_of(many);
  CHECK(std::count(told.begin(), told.end(), '^') <= 200);
  CHECK(told.ends_with("Only the first 200 mistakes are listed: correct these first.\n"));
  // Long lines of marks that begin what never ends.
  std::string marks = sheet() + "x";
  for (int i = 0; i < 100000; ++i)
    marks += " = “";
  CHECK(problems_of(marks).size() > 10);
}
