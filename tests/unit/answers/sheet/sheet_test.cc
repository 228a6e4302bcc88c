// SPDX-License-Identifier: Apache-2.0
// Bench sheets: values with doubts, slips with their places, and settling on a bench whose answer is a
// formula: the rebound falls with the loss, the compression with the root of the stiffness. Truth is known by
// construction; no outside source is needed.
#include "tests/support/catch.h"
#include "tests/unit/output/results/temporary_folder.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/plausible.h"
#include "tools/answers/sheet/settled_case.h"
#include "tools/answers/sheet/sheet_words.h"
#include "tools/language/library.h"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <filesystem>
#include <fstream>

using namespace solemech;
using namespace solemech::tools;
using materials::Dimension;

namespace
{
const std::filesystem::path source = SOLEMECH_SOURCE;

const materials::Library &library()
{
  static const auto loaded = materials::Library::load(source / "materials/library");
  return loaded;
}

ReadOptions options()
{
  return {{}, {source / "cases"}, library().source()};
}

Sheet sheet_of(const std::string &text)
{
  const tests::TemporaryFolder folder;
  std::ofstream(folder.path / "pair.toml") << text;
  return read_sheet(folder.path / "pair.toml", options());
}

std::string slips_of(const std::string &text)
{
  try
  {
    sheet_of(text);
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
  return "";
}

const std::string head = R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "core"
material = "unknown foam"
thickness = "18.0 mm +- 0.5"
)";

/// Made-up bench: rebound and compression as formulas of the core's loss and stiffness.
solver::Result formula_bench(const solver::Case &setup, const SolveWish &, const RunProgress &)
{
  const auto &foam = std::get<materials::FoamData>(setup.layers.front().material.data);
  double      loss = 0;
  for (const auto &term : foam.slipping)
    loss += term.share;
  const auto    &drop = std::get<solver::DropRig>(setup.rig);
  solver::Result result;
  result.readings = {
    {"rebound_height", drop.height / (1 + 0.25 * loss), "m", ""},
    {"greatest_compression", 7e-3 * std::sqrt(4e5 / foam.network.front().shear_modulus), "m", ""},
    {"peak_force", 1000, "N", ""}};
  return result;
}

solver::Result formula_of(const solver::Case &setup)
{
  return formula_bench(setup, {}, {});
}

SettledSheet settled_by_formula(const Sheet &sheet, const std::vector<materials::Material> &candidates)
{
  const std::atomic<bool> go_on{false};
  Job                     job(formula_bench, {}, {}, go_on);
  return settle_sheet(sheet, {}, job, candidates);
}
} // namespace

TEST_CASE("A value is read with its doubt", "[sheet]")
{
  const auto plain = parse_doubted("16.0 mm +- 0.5", Dimension::length);
  CHECK(plain.value == Approx(0.016));
  CHECK(plain.half_band == Approx(0.0005));
  CHECK(parse_doubted("249 mm ± 6 mm", Dimension::length).half_band == Approx(0.006));
  CHECK(parse_doubted("1.20 kg +- 1 %", Dimension::mass).half_band == Approx(0.012));
  CHECK(parse_doubted("64 % +- 3", Dimension::share).half_band == Approx(0.03));
  const auto gauge = parse_doubted("42 AskerC +- 2", Dimension::hardness);
  CHECK(gauge.scale == "AskerC");
  CHECK(gauge.half_band == 2);
  CHECK(parse_doubted("16 mm", Dimension::length).half_band == 0);
  for (const char *wrong : {"16 mm +- 0", "16 mm +- 17", "16 mm +-", "16 mm +- x"})
    CHECK_THROWS_AS(parse_doubted(wrong, Dimension::length), materials::InvalidQuantity);
}

TEST_CASE("All slips of a sheet come at once, where they stand", "[sheet]")
{
  const auto text = slips_of(head + R"(hardness = "42"
[[layer]]
name = "base"
material = "eva-frim"
thickness = "7 mm +- 0 mm"
[[reading]]
kind = "rebound"
values = ["450 mm"]
[[reading]]
kind = "hardness"
layer = "cor"
value = "95 ShoreA"
)");
  INFO(text);
  for (const char *part :
       {":7:", "core.hardness", ":10:", "Did you mean \"eva-firm\"", ":11:", "± must be above zero", ":18:"})
    CHECK(text.find(part) != std::string::npos);
  const auto high =
    slips_of(head + "[[reading]]\nkind = \"rebound\"\nvalues = [\"450 mm\"]\n"
                    "[[reading]]\nkind = \"hardness\"\nlayer = \"cor\"\nvalue = \"42 AskerC\"\n");
  INFO(high);
  CHECK(high.find("cannot rebound to its full drop height") != std::string::npos);
  CHECK(high.find("Did you mean \"core\"?") != std::string::npos);
}

TEST_CASE("A sheet settles on readings made from known numbers", "[sheet]")
{
  auto sheet = sheet_of(head + R"([[reading]]
kind = "rebound"
value = "240 mm +- 4"
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
[[reading]]
kind = "density"
layer = "core"
value = "180 kg/m3 +- 9"
)");
  CHECK(sheet.unknowns.size() == 5); // stiffness, loss, density, thickness; the rig's guide loss is to 1 %
  // Truth: stiffness 460 kPa and loss 1.15 of the starting foam.
  std::vector<double> truth;
  for (const auto &unknown : sheet.unknowns)
    truth.push_back(unknown.parameter.median);
  const auto place = [&](DoubtedNumber kind) {
    return std::find_if(sheet.unknowns.begin(), sheet.unknowns.end(),
                        [&](const auto &u) { return u.kind == kind; }) -
           sheet.unknowns.begin();
  };
  truth[static_cast<std::size_t>(place(DoubtedNumber::modulus))] = 4.6e5;
  truth[static_cast<std::size_t>(place(DoubtedNumber::loss))] = 1.15;
  const auto made = formula_of(case_at(sheet.setup, sheet.unknowns, truth));
  for (auto &reading : sheet.readings)
    if (const auto *value = made.find(reading.probe.reading))
      reading.observation.value = value->value;

  const auto answer = settled_by_formula(sheet, library().materials());
  CHECK(answer.settled.converged);
  for (const auto kind : {DoubtedNumber::modulus, DoubtedNumber::loss})
  {
    const auto  index = static_cast<std::size_t>(place(kind));
    const auto &band = answer.settled.parameters[index].band;
    INFO(answer.settled.parameters[index].name);
    CHECK(band.low < truth[index]);
    CHECK(band.high > truth[index]);
    CHECK(answer.settled.parameters[index].settled);
  }
  CHECK_FALSE(answer.fits.empty());

  // The settled stack is a case like any other, with the same numbers.
  const auto file =
    read_case_text(settled_case_text(sheet, answer), (source / "settled.toml").string(), options());
  const auto again = formula_of(file.cases.front()), settled = formula_of(answer.setup);
  for (const char *name : {"rebound_height", "greatest_compression"})
    CHECK(again.find(name)->value == Approx(settled.find(name)->value).epsilon(1e-7));
  CHECK(file.cases.front().layers.front().thickness ==
        Approx(answer.setup.layers.front().thickness).epsilon(1e-7));
}

TEST_CASE("A settled case holds the stack that its sheet named", "[sheet]")
{
  const tests::TemporaryFolder folder;
  std::ofstream(folder.path / "foams.toml") << R"(format = 1
[[layer]]
name = "core"
material = "eva-soft"
thickness = "18.0 mm"
[plug]
radius = "35 mm"
)";
  std::ofstream(folder.path / "pair.toml") << R"(format = 1
rig = "guided-rod-1200"
stack = "foams.toml"
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
)";
  const auto sheet = read_sheet(folder.path / "pair.toml", options());
  const auto answer = settled_by_formula(sheet, {});
  const auto text = settled_case_text(sheet, answer);
  INFO(text);
  CHECK(text.find("stack = ") == std::string::npos);
  const auto  file = read_case_text(text, (source / "settled.toml").string(), options());
  const auto &setup = file.cases.front();
  CHECK(setup.layers.front().thickness == Approx(18e-3));
  CHECK(setup.plug.radius == Approx(35e-3));
  CHECK(settled_json(sheet, answer).find("\"cautions\"") != std::string::npos);
}

TEST_CASE("A settled case holds the changes of its sheet and of the command line, and can be read again",
          "[sheet]")
{
  const tests::TemporaryFolder folder;
  std::ofstream(folder.path / "pair.toml") << R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "core"
material = "unknown foam"
thickness = "18.0 mm +- 0.5"
[[layer]]
name = "outsole"
material = "rubber-60a"
thickness = "2.0 mm +- 0.1"
[change]
outsole.thickness = "3 mm"
plug.radius = "35 mm"
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
)";
  for (const bool is_set : {false, true})
  {
    auto wish = options();
    if (is_set)
      wish.overrides = {"core.thickness=\"20 mm\""};
    const auto sheet = read_sheet(folder.path / "pair.toml", wish);
    const auto doubt_of = [&](const std::string &name) {
      const auto found = std::ranges::find_if(
        sheet.unknowns, [&](const Unknown &one) { return one.parameter.name == name + " thickness"; });
      return found == sheet.unknowns.end() ? 0 : found->parameter.median * found->parameter.spread;
    };
    // What is set is known to the callipers only (0.2 mm on foam); the band was of the written value.
    CHECK(doubt_of("core") * doubts_in_half_band == Approx(is_set ? 0.2e-3 : 0.5e-3));
    const auto answer = settled_by_formula(sheet, library().materials());
    const auto text = settled_case_text(sheet, answer);
    INFO(text);
    const auto  file = read_case_text(text, (source / "settled.toml").string(), options());
    const auto &setup = file.cases.front();
    CHECK(setup.plug.radius == Approx(35e-3));
    CHECK(setup.layers[0].thickness == Approx(answer.setup.layers[0].thickness).epsilon(1e-7));
    CHECK(setup.layers[0].thickness == Approx(is_set ? 20e-3 : 18e-3).epsilon(0.05));
    CHECK(setup.layers[1].thickness == Approx(3e-3).epsilon(0.05));
  }
}

TEST_CASE("What nobody wrote gets a band or the doubt of its instrument, and says so", "[sheet]")
{
  // Defaults are common practice, no source.
  const auto sheet = sheet_of(R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "unit"
material = "unknown foam"
[layer.unit]
diameter = "62 mm"
film = "tpu-film"
film_thickness = "0.6 mm"
[[layer]]
name = "outsole"
material = "rubber-60a"
thickness = "2.0 mm"
)");
  const auto named = [&](const std::string &name) {
    const auto found = std::find_if(sheet.unknowns.begin(), sheet.unknowns.end(),
                                    [&](const Unknown &one) { return one.parameter.name == name; });
    REQUIRE(found != sheet.unknowns.end());
    return *found;
  };
  CHECK_FALSE(named("unit thickness").parameter.minor);
  CHECK(named("unit thickness").parameter.median == Approx(sheet.setup.layers.front().thickness));
  CHECK(named("unit gauge pressure").parameter.median ==
        Approx(sheet.setup.layers.front().unit->gauge_pressure));
  const auto outsole = named("outsole thickness").parameter;
  CHECK(outsole.minor);
  CHECK(outsole.spread * doubts_in_half_band * outsole.median == Approx(0.1e-3));
  CHECK(named("drop guide loss").parameter.minor);
  std::string said;
  for (const auto &taken : sheet.assumptions)
    said += taken + "\n";
  INFO(said);
  for (const char *part : {"unit thickness: not given; 10 mm +- 4 assumed", "unit gauge pressure: not given",
                           "±0.1 mm (outsole thickness)", "drop height (±1 mm", "exact"})
    CHECK(said.find(part) != std::string::npos);
  CHECK(sheet.file.changes.empty());
}

TEST_CASE("A change stands for what is not written, and for a material that is not known", "[sheet]")
{
  const std::string            text = R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "core"
material = "unknown foam"
[[layer]]
name = "outsole"
material = "rubber-60a"
thickness = "2.0 mm"
)";
  const std::string            change = R"([change]
core.thickness = "20 mm"
)";
  const std::string            readings = R"([[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
)";
  const tests::TemporaryFolder folder;
  std::ofstream(folder.path / "pair.toml") << text + change + readings;
  auto       wish = options();
  const auto thickness_of = [](const Sheet &sheet) {
    return *std::ranges::find_if(sheet.unknowns,
                                 [](const Unknown &one) { return one.parameter.name == "core thickness"; });
  };
  const auto is_assumed = [](const Sheet &sheet) {
    return std::ranges::any_of(sheet.assumptions, [](const std::string &said) {
      return said.find("core thickness: not given") != std::string::npos;
    });
  };
  const auto changed = read_sheet(folder.path / "pair.toml", wish);
  CHECK(changed.setup.layers.front().thickness == Approx(20e-3));
  CHECK(thickness_of(changed).parameter.median == Approx(20e-3));
  CHECK(thickness_of(changed).parameter.minor); // known to the callipers
  CHECK_FALSE(is_assumed(changed));
  const auto open = sheet_of(text + readings);
  CHECK(open.setup.layers.front().thickness == Approx(12e-3));
  CHECK(is_assumed(open));

  wish.overrides = {"core.material=\"eva-soft\""};
  const auto known = read_sheet(folder.path / "pair.toml", wish);
  CHECK(known.materials.empty());
  CHECK(known.setup.layers.front().material.name == "eva-soft");
  for (const auto &unknown : known.unknowns)
    CHECK((unknown.kind != DoubtedNumber::modulus && unknown.kind != DoubtedNumber::loss));
  const auto settled = settled_case_text(known, settled_by_formula(known, library().materials()));
  INFO(settled);
  const auto file = read_case_text(settled, (source / "settled.toml").string(), options());
  CHECK(file.cases.front().layers.front().material.name == "eva-soft");
}

TEST_CASE("A hit far from the others is refused beyond what its instrument leaves open", "[sheet]")
{
  const auto odd = [](const std::vector<double> &values, double half_band) {
    return odd_hit(values, half_band, Dimension::length, "");
  };
  const auto one = odd({0.321, 31.2e-3, 0.318}, 6e-3);
  REQUIRE(one);
  CHECK(one->index == 1);
  CHECK(one->reason == "31.2 mm is far from the others, about 318 mm");
  CHECK(one->cure.starts_with("Is it 312 mm? "));
  // Of two nobody knows which.
  const auto slip = odd({0.321, 3.21}, 6e-3);
  REQUIRE(slip);
  CHECK(slip->cure.starts_with("Is it 3210 mm? "));
  CHECK(slip->cure.ends_with("Or the other is wrong: 321 mm instead of 3210 mm"));
  const auto apart = odd({0.9, 0.321}, 6e-3);
  REQUIRE(apart);
  CHECK(apart->reason == "900 mm and 321 mm are too far apart for hits of one stack");
  CHECK(apart->cure == "Correct or remove one");
  // Ground depths of a few tenths differ by their callipers.
  CHECK_FALSE(odd({0.3e-3, 0.5e-3}, 0.2e-3));
  CHECK_FALSE(odd({0.3e-3, 0.32e-3, 0.5e-3}, 0.2e-3));
  CHECK(odd({0.3e-3, 0.5e-3}, 0.05e-3));
  CHECK_FALSE(odd({0.3, 0.32}, 1e-3));
}

TEST_CASE("Two sheets read on one rod share its numbers", "[sheet]")
{
  // The narrower band counts: 3 % +- 0.5 of the one, the instrument's 1 % of the other.
  const auto text_of_rod = [](const std::string &loss) {
    return R"(format = 1
[[layer]]
name = "core"
material = "unknown foam"
thickness = "18.0 mm +- 0.5"
[drop]
mass = "1.20 kg"
height = "400 mm"
diameter = "40 mm"
edge_radius = "3 mm"
guide_loss = ")" +
           loss +
           R"("
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
[[reading]]
kind = "rebound"
value = "190 mm"
)";
  };
  const auto              heel = sheet_of(text_of_rod("3 % +- 0.5")), forefoot = sheet_of(text_of_rod("3 %"));
  const std::atomic<bool> go_on{false};
  Job                     job(formula_bench, {}, {}, go_on);
  const auto together = settle_together({{heel, {}, "heel"}, {forefoot, {}, "forefoot"}}, job, {});
  REQUIRE(together.places.size() == 2);
  const auto place_of_loss = [&](const Sheet &sheet, std::size_t s) {
    const auto found = std::ranges::find_if(
      sheet.unknowns, [](const Unknown &one) { return one.kind == DoubtedNumber::guide_loss; });
    REQUIRE(found != sheet.unknowns.end());
    return together.places[s][static_cast<std::size_t>(found - sheet.unknowns.begin())];
  };
  const auto place = place_of_loss(heel, 0);
  CHECK(place == place_of_loss(forefoot, 1));
  CHECK(together.settled.parameters[place].name == "drop guide loss");
  CHECK(std::ranges::count_if(together.settled.parameters, [](const auto &one) {
          return one.name.find("guide loss") != std::string::npos;
        }) == 1);
  const auto before = together.settled.parameters[place].before;
  CHECK(std::log(before.high / before.low) / 2 == Approx(0.005 / 0.03));
  REQUIRE(together.sheets.size() == 2);
  for (const auto &one : together.sheets)
    CHECK(std::ranges::count_if(one.settled.parameters,
                                [](const auto &each) { return each.name == "drop guide loss"; }) == 1);
}

TEST_CASE("Misspelt unknowns and sheets of the other part are caught", "[sheet]")
{
  const auto slips = slips_of(R"(format = 1
title = "my forefoot"
rig = "guided-rod-1200"
[pair]
part = "heel"
[[layer]]
name = "core"
material = "unknwon foam"
thickness = "18.0 mm"
)");
  INFO(slips);
  CHECK(slips.find(
          ":8:12: core.material: there is no material \"unknwon foam\". Did you mean \"unknown foam\"?") !=
        std::string::npos);
  CHECK(slips.find(":5:8: pair.part: is \"heel\", but the title \"my forefoot\" says forefoot") !=
        std::string::npos);
  CHECK(is_sheet("format = 1\n[[layer]]\nmaterial = \"unknown fom\"\n"));
}

TEST_CASE("A settled stack with an air unit can be read again", "[sheet]")
{
  const auto sheet = sheet_of(R"(format = 1
rig = "guided-rod-1200"
[[layer]]
name = "air"
material = "unknown foam"
thickness = "12 mm +- 1"
[layer.unit]
diameter = "62 mm"
film = "tpu-film"
film_thickness = "0.6 mm"
gauge_pressure = "140 kPa +- 40"
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
)");
  const auto answer = settled_by_formula(sheet, {});
  const auto file =
    read_case_text(settled_case_text(sheet, answer), (source / "settled.toml").string(), options());
  CHECK(file.cases.front().layers.front().unit->gauge_pressure ==
        Approx(answer.setup.layers.front().unit->gauge_pressure).epsilon(1e-7));
  // Neither thickness nor pressure shows on the formula, so all that is written is what the sheet called
  // doubtful.
  // Rig numbers are told whether they show or not: by them two sheets read on one rod are known.
  CHECK(answer.setup.doubts.size() == 6);
}

TEST_CASE("A disagreement is told beside what the model says without the reading, in units of the bench",
          "[sheet]")
{
  auto       sheet = sheet_of(head + R"([[reading]]
kind = "compression"
value = "6.5 mm +- 0.2"
[[reading]]
kind = "compression"
value = "7.5 mm +- 0.2"
[[reading]]
kind = "rebound"
value = "300.7 mm +- 4"
)");
  const auto answer = settled_by_formula(sheet, {});
  const auto rows = reading_rows_of(answer);
  CHECK(rows[0].measured == "6.5 mm ±0.2");
  CHECK(rows[0].verdict.starts_with("disagree"));
  // The one reading pulls what is settled to itself; without it the model follows the other.
  CHECK(rows[0].without_it != rows[0].settled);
  const auto text = settled_text(sheet, answer);
  INFO(text);
  CHECK(text.find("cannot both be right: no likely value of the unknowns gives both 6.5 mm and 7.5 mm") !=
        std::string::npos);
  CHECK(text.find("reads 0.0") == std::string::npos);
}

TEST_CASE("Slips in blocks of a sheet are told with what was meant, all of them", "[sheet]")
{
  const auto slips = slips_of(head + R"([[reading]]
kind = "rebound"
values = ["240", "24 cm", "-3 mm"]
[[reading]]
kind = "rebound"
part = "forefoot"
value = "240 mm"
[[reding]]
kind = "rebound"
[pair]
part = "heel"
)");
  INFO(slips);
  for (const char *part : {"\"240\" has no unit", "is not above zero",
                           "was read on the forefoot, but this is the sheet of the heel",
                           "reding: there is no such entry. Did you mean [[reading]]?"})
    CHECK(slips.find(part) != std::string::npos);
  CHECK(slips.find("Known here: format") == std::string::npos); // told once
  CHECK(is_sheet("format = 1\n[[readin]]\nkind = \"rebound\"\n"));
  CHECK_FALSE(is_sheet("format = 1\n[surrounding]\ntemperature = \"23 C\"\n"));
}
