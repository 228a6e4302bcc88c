// SPDX-License-Identifier: Apache-2.0
// The changes of a trial: what each form of --swap makes of a stack, and what a person reads after a slip.
#include "tests/support/catch.h"
#include "tools/language/case_file.h"
#include "tools/language/case_text.h"
#include "tools/language/library.h"
#include "tools/language/swap_option.h"

#include <cmath>

using namespace solemech;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using Catch::Matchers::WithinRel;
using tools::ReadOptions;

namespace
{
const std::string bench_sheet = R"(format = 1
[[layer]]
name = "board"
material = "lasting-board"
thickness = "1.5 mm"
[[layer]]
name = "core"
material = "eva-soft"
thickness = "16 mm"
core_diameter = "54 mm"
ring = "eva-firm"
[[layer]]
name = "air"
material = "eva-firm"
thickness = "8 mm"
[layer.unit]
diameter = "50 mm"
film = "tpu-film"
film_thickness = "0.6 mm"
gauge_pressure = "100 kPa"
[[layer]]
name = "lugs"
material = "rubber-60a"
thickness = "2.4 mm"
area_share = "60 %"
[plug]
radius = "37 mm"
[drop]
mass = "1.2 kg"
height = "400 mm"
diameter = "40 mm"
)";

ReadOptions whole_library()
{
  static const auto library = materials::Library::load(std::string(SOLEMECH_SOURCE) + "/materials/library");
  ReadOptions       options;
  options.library = library.source();
  return options;
}

tools::CaseFile read_bench(const std::vector<std::string> &swaps, const std::string &range = "")
{
  auto options = whole_library();
  options.swaps = swaps;
  options.range = range;
  return tools::read_case_text(bench_sheet, "bench.toml", options);
}

solver::Case changed(const std::vector<std::string> &swaps)
{
  return read_bench(swaps).cases.at(0);
}

std::string problems(const std::vector<std::string> &swaps, const std::string &range = "")
{
  try
  {
    read_bench(swaps, range);
    return "";
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
}

/// "board lasting-board 1.5, core ..." in mm.
std::string stack(const solver::Case &data)
{
  std::string text;
  for (const auto &layer : data.layers)
    text += (text.empty() ? "" : ", ") + layer.name + " " + layer.material.name + " " +
            std::to_string(static_cast<int>(std::lround(layer.thickness * 1e4))) +
            (layer.ring ? " ringed" : "") + (layer.unit ? " unit" : "");
  return text;
}

const std::string below = "core eva-soft 160 ringed, air eva-firm 80 unit, lugs rubber-60a 24";
} // namespace

TEST_CASE("no swap changes nothing")
{
  CHECK(stack(changed({})) == "board lasting-board 15, " + below);
}

TEST_CASE("an insert that is not there is laid on top of the board")
{
  CHECK(stack(changed({"insert = pp-semirigid 2 mm"})) ==
        "insert pp-semirigid 20, board lasting-board 15, " + below);
  CHECK(stack(changed({"insert=pp-semirigid 2mm"})) ==
        "insert pp-semirigid 20, board lasting-board 15, " + below);
  CHECK(stack(changed({"insert = \"pp-semirigid\" \"2 mm\""})) ==
        "insert pp-semirigid 20, board lasting-board 15, " + below);
  CHECK(stack(changed({"insert = pp-semirigid 2 mm + eva-soft 0.3 cm"})) ==
        "insert pp-semirigid 20, insert-2 eva-soft 30, board lasting-board 15, " + below);
}

TEST_CASE("material, thickness, both, none, one entry")
{
  CHECK(stack(changed({"board = carbon-plate"})) == "board carbon-plate 15, " + below);
  CHECK(stack(changed({"board = 3 mm"})) == "board lasting-board 30, " + below);
  CHECK(stack(changed({"board = carbon-plate 1 mm"})) == "board carbon-plate 10, " + below);
  CHECK(stack(changed({"board = none"})) == below);
  CHECK(stack(changed({"core.thickness = 18 mm"})) ==
        "board lasting-board 15, core eva-soft 180 ringed, air eva-firm 80 unit, lugs rubber-60a 24");
  CHECK(stack(changed({"core.material = \"tpu-bead\""})) ==
        "board lasting-board 15, core tpu-bead 160 ringed, air eva-firm 80 unit, lugs rubber-60a 24");
  CHECK_THAT(changed({"air.gauge_pressure = 1.2 bar"}).layers[2].unit->gauge_pressure,
             WithinRel(1.2e5, 1e-12));
  CHECK_THAT(std::get<solver::DropRig>(changed({"drop.mass = 2 kg"}).rig).mass, WithinRel(2.0, 1e-12));
}

TEST_CASE("what a swap does not name stays; an air unit goes out with its material")
{
  const auto swapped = changed({"lugs = rubber-67a 3 mm", "core = peba-supercritical", "air = 9 mm"});
  CHECK(swapped.layers[3].area_share == 0.6);
  CHECK(
    stack(swapped) ==
    "board lasting-board 15, core peba-supercritical 160 ringed, air eva-firm 90 unit, lugs rubber-67a 30");
  CHECK(stack(changed({"air = eva-soft"})) ==
        "board lasting-board 15, core eva-soft 160 ringed, air eva-soft 80, lugs rubber-60a 24");
}

TEST_CASE("swaps are made in order")
{
  CHECK(stack(changed({"insert = eva-insert 3 mm", "insert.thickness = 4 mm"})) ==
        "insert eva-insert 40, board lasting-board 15, " + below);
}

TEST_CASE("a swap gives the same case as the sheet written out")
{
  const auto  options = whole_library();
  std::string sheet_text = bench_sheet;
  sheet_text.insert(sheet_text.find("[[layer]]"),
                    "[[layer]]\nname = \"insert\"\nmaterial = \"eva-insert\"\nthickness = \"3 mm\"\n");
  const auto written = tools::read_case_text(sheet_text, "bench.toml", options).cases.at(0);
  CHECK(tools::canonical_text(written) == tools::canonical_text(changed({"insert = eva-insert 3 mm"})));
}

TEST_CASE("slips show their place in the option, all at once")
{
  CHECK(problems({"insert = pp-semirigd 2 mm", "corre = 18 mm", "core = 18"}) ==
        "--swap:1:10: insert.material: there is no material \"pp-semirigd\". Did you mean \"pp-semirigid\"?\n"
        "    insert = pp-semirigd 2 mm\n"
        "             ^\n"
        "--swap:2:1: corre: there is no such layer. Did you mean \"core\"?\n"
        "    corre = 18 mm\n"
        "    ^\n"
        "--swap:3:8: core.thickness: \"18\" has no unit. Write \"18 mm\", for example (known: mm, cm, m, "
        "in, um, µm, μm).\n"
        "    core = 18\n"
        "           ^\n");
  // The allowed range with its unit, at the place of the value.
  const auto thick = problems({"insert = eva-insert 3 m"});
  CHECK_THAT(thick, StartsWith("--swap:1:21: insert.thickness: ") && Contains("0.2 mm to 300 mm"));
}

TEST_CASE("slips of the form")
{
  const std::pair<const char *, const char *> cases[] = {
    {"insert", "--swap:1:1: there is no = in it"},
    {"= 2 mm", "no layer is named before the ="},
    {"core =", "nothing is written after the ="},
    {"insert = 2 mm", "--swap:1:10: insert: a new layer needs a material"},
    {"insert = eva-insert", "--swap:1:10: insert: a new layer needs a thickness"},
    {"core = eva-soft 8 mm + eva-firm", "--swap:1:24: core: each of several sheets needs a thickness"},
    {"core = eva-soft 8 mm +", "nothing is written beside the +"},
    {"insert = none",
     "--swap:1:1: insert: there is no such layer. The layers of this case: board, core, air, lugs"},
    {"xyzzy = eva-soft 2 mm", "a new one must be called insert, footbed, sockliner"},
    {"core.thikness = 2 mm", "Did you mean \"core.thickness\"?"},
    {"air.gauge_pressure = 20 bar", "is more than the film can hold"},
    {"air.gauge_pressure = 12 mm", "--swap:1:22: air.gauge_pressure: "},
    {"inser = pp-semirigid 2 mm", "Did you mean \"insert\"?"},
  };
  for (const auto &[swap, message] : cases)
  {
    INFO(swap);
    CHECK_THAT(problems({swap}), Contains(message));
  }
  CHECK_THAT(problems({"board = none", "core = none", "air = none", "lugs = none"}),
             Contains("--swap:4:1: lugs: no stack would be left without it"));
  // Nothing that a terminal would obey comes back.
  CHECK(problems({"insert = \033[2J 2 mm"}).find('\033') == std::string::npos);
}

TEST_CASE("a swap as told to people")
{
  CHECK(tools::swap_text("insert=pp-semirigid  2 mm+ eva-soft 2 mm ") ==
        "insert = pp-semirigid 2 mm + eva-soft 2 mm");
  CHECK(tools::swap_text("core.material=\"eva-firm\"") == "core.material = eva-firm");
}

TEST_CASE("a range is one more series, on the changed stack")
{
  const auto file = read_bench({"air = 9 mm"}, "gauge_pressure=80..200 kPa");
  REQUIRE(file.cases.size() == 7);
  CHECK(file.series.at(0).address == "air.gauge_pressure");
  CHECK(file.series.at(0).values ==
        std::vector<std::string>{"80 kPa", "100 kPa", "120 kPa", "140 kPa", "160 kPa", "180 kPa", "200 kPa"});
  CHECK_THAT(file.cases[6].layers[2].unit->gauge_pressure, WithinRel(2e5, 1e-12));
  CHECK_THAT(file.cases[6].layers[2].thickness, WithinRel(9e-3, 1e-12));
  // A layer that a swap brought in; a step; an end that the step does not hit.
  const auto insert = read_bench({"insert = eva-insert 3 mm"}, "insert.thickness = 2..5 mm by 2 mm");
  CHECK(insert.series.at(0).values == std::vector<std::string>{"2 mm", "4 mm", "5 mm"});
  CHECK(read_bench({}, "mass=1..2 kg").series.at(0).address == "drop.mass");
  CHECK(read_bench({}, "air.gauge_pressure=0.5 bar..1 bar by 0.25").series.at(0).values ==
        std::vector<std::string>{"0.5 bar", "0.75 bar", "1 bar"});
}

TEST_CASE("slips of a range")
{
  const std::pair<const char *, const char *> cases[] = {
    {"thickness=2..5 mm",
     "--range:1:1: thickness: several entries have this name. Write air.thickness or board.thickness"},
    {"guage_pressure=80..200 kPa", "Did you mean \"gauge_pressure\"?"},
    {"gauge_pressure=80-200 kPa", "there is no .. in it"},
    {"gauge_pressure", "there is no entry with a = after it"},
    {"gauge_pressure=200..80 kPa", "--range:1:16: gauge_pressure: the lowest value is not below the highest"},
    {"gauge_pressure=low..80 kPa", "the lowest value is not a number"},
    {"gauge_pressure=1 bar..200 kPa", "the units differ"},
    {"gauge_pressure=80..200 kPa by 0", "the step is not above 0"},
    {"gauge_pressure=80..200 kPa by 0.1", "more than 100 points"},
    {"gauge_pressure=80..200", "has no unit"},
    {"gauge_pressure=80..2000 kPa", "is more than the film can hold"},
    {"state=1..2", "this entry is not a number"},
    {"insert.thickness=1..2 mm", "there is no such entry"},
  };
  for (const auto &[range, message] : cases)
  {
    INFO(range);
    CHECK_THAT(problems({}, range), Contains(message));
  }
}
