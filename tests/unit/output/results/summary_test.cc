// SPDX-License-Identifier: Apache-2.0
// What a person reads. Expected numbers follow from the inputs of synthetic.cc by hand.
#include "tests/unit/output/results/synthetic.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/knee.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/summary.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace solemech;
using Catch::Matchers::Contains;

namespace
{
std::string line_with(const std::string &text, const std::string &start)
{
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);)
    if (line.find(start) != std::string::npos)
      return line;
  return "";
}
} // namespace

TEST_CASE("the summary puts rebound, force and compression of all runs side by side")
{
  const auto text = tools::summary_text({tests::synthetic_heel(), tests::synthetic_forefoot()}, {});
  CHECK_THAT(line_with(text, "rebound"), Contains("244 mm  61 %") && Contains("308 mm  77 %"));
  CHECK_THAT(line_with(text, "peak force"), Contains("1.34 kN") && Contains("1.18 kN"));
  CHECK_THAT(line_with(text, "greatest compression"),
             Contains("7.3 of 28.9 mm  25 %") && Contains("8.5 of 23.2 mm  37 %!"));
  // 1340 N / (1.2 kg x 9.80665 m/s2) - 1
  CHECK_THAT(line_with(text, "deceleration"), Contains("113 g"));
  CHECK(text.find("peak force") < text.find("greatest compression"));
  // 1.2 kg x 9.80665 m/s2 x 0.4 m = 4.71 J
  CHECK_THAT(text, Contains("falls 400 mm (4.71 J)") && Contains("guide takes 3 % each way"));
  CHECK_THAT(text, Contains("Invented demo stacks"));
  CHECK_THAT(text, !Contains("iterations") && !Contains("by speed"));
}

TEST_CASE("details add the other definitions and the solver's facts")
{
  tools::SummaryOptions options;
  options.details = true;
  const auto text = tools::summary_text({tests::synthetic_heel()}, options);
  CHECK_THAT(line_with(text, "energy return, by height"), Contains("61.0 %"));
  CHECK_THAT(line_with(text, "by speed"), Contains("64.0 %"));
  CHECK_THAT(line_with(text, "by loop"), Contains("66.0 %"));
  CHECK_THAT(text, Contains("iterations") && Contains("4210 unknowns"));
}

TEST_CASE("a warning stands beside the number it touches, a general one below")
{
  const auto text = tools::summary_text({tests::synthetic_heel(), tests::synthetic_forefoot()}, {});
  const auto row = text.find("greatest compression");
  const auto note = text.find("close to the soft limit");
  REQUIRE(note != std::string::npos);
  CHECK(note > row);
  CHECK(note < text.find("deceleration"));
  CHECK_THAT(text, Contains("! see the note marked"));
  CHECK_THAT(line_with(text, "lighter than 5 x"), Contains("Note, forefoot-drop"));
  CHECK(text.find("lighter than 5 x") > text.find("accounts for"));
}

TEST_CASE("the shares of the energy sum to what the ledger accounts for")
{
  const auto run = tests::synthetic_heel();
  const auto picture = tools::energy_picture(run.setup, run.result);
  // 61 thrown back, 23 + 6 + 2.5 + 0.4 in parts, 5 in the guide, the rest up to 99.8 left in the stack.
  CHECK(picture.accounted() == Approx(0.998).epsilon(1e-9));
  REQUIRE(picture.shares.size() == 7);
  CHECK(picture.shares.front().name == "thrown back");
  CHECK(picture.shares[1].name == "board");
  CHECK(picture.shares[2].name == "core");
  CHECK(picture.share(picture.shares[2]) == Approx(0.23));
  CHECK(picture.shares.back().name == "left in the stack");
  CHECK(picture.share(picture.shares.back()) == Approx(0.019));
  CHECK_THAT(tools::summary_text({run}, {}), Contains("accounts for 99.8 %"));
}

TEST_CASE("what the block under the stack took is a share of its own")
{
  auto       run = tests::synthetic_heel();
  const auto row = [&](const char *kind, solver::EnergyKind type, double share) {
    run.result.ledger.push_back(
      {"support", kind, type, std::vector<double>(run.result.time.size(), share * run.result.input_energy)});
  };
  row("motion", solver::EnergyKind::kinetic, 0.03);
  row("spring", solver::EnergyKind::stored, 0.02);
  row("damper", solver::EnergyKind::dissipated, 0.01);
  const auto picture = tools::energy_picture(run.setup, run.result);
  const auto base = std::find_if(picture.shares.begin(), picture.shares.end(),
                                 [](const auto &share) { return share.name == tools::base_of_the_rig; });
  REQUIRE(base != picture.shares.end());
  CHECK(picture.share(*base) == Approx(0.06));
  CHECK(picture.accounted() == Approx(0.998 + 0.06));
}

TEST_CASE("shares that do not add up are named")
{
  auto run = tests::synthetic_heel();
  CHECK(tools::unaccounted_text(run.setup, run.result).empty()); // 99.8 %
  for (auto &reading : run.result.readings)
    if (reading.name == "rebound_by_height")
      reading.value += 0.05;
  CHECK_THAT(tools::unaccounted_text(run.setup, run.result),
             Contains("104.8 %") && Contains("thrown back 66.0 %"));
}

TEST_CASE("the account of several blows is that of the last")
{
  auto run = tests::synthetic_heel();
  run.result.readings.push_back({"rebound_by_height.hit_1", 0.60, "1", "", -1});
  run.result.readings.push_back({"rebound_by_height.hit_2", 0.62, "1", "", -1});
  const auto picture = tools::energy_picture(run.setup, run.result);
  CHECK(picture.share(picture.shares.front()) == Approx(0.62));
}

TEST_CASE("no line of the summary is wider than the terminal")
{
  for (const int width : {80, 100, 140})
  {
    tools::SummaryOptions options;
    options.width = width;
    std::istringstream lines(
      tools::summary_text({tests::synthetic_heel(), tests::synthetic_forefoot()}, options));
    for (std::string line; std::getline(lines, line);)
    {
      INFO(line);
      CHECK(tools::columns(line) <= static_cast<std::size_t>(width));
    }
  }
}

TEST_CASE("many runs and a series become one row a run, warnings become footnotes")
{
  const std::vector<tools::Run> runs = {
    tests::synthetic_heel("heel 2 J"), tests::synthetic_forefoot("forefoot 2 J"),
    tests::synthetic_heel("heel 4 J"), tests::synthetic_forefoot("forefoot 4 J")};
  const tools::Series series{"drop energy", "J", {2, 2, 4, 4}, {"heel", "forefoot", "heel", "forefoot"}};
  const auto          text = tools::summary_text(runs, {}, &series);
  CHECK_THAT(line_with(text, "drop energy J"),
             Contains("rebound %") && Contains("force kN") && Contains("compr. mm"));
  CHECK_THAT(line_with(text, "forefoot 4 J"), Contains("77.0") && Contains("1.18") && Contains("8.5 [1]"));
  CHECK_THAT(text, Contains("[1] close to the soft limit"));
  CHECK_THAT(tools::summary_text(runs, {}), Contains("rebound %"));
}

TEST_CASE("a press case reads loop return and stiffness")
{
  const auto text = tools::summary_text({tests::synthetic_press()}, {});
  CHECK_THAT(line_with(text, "energy return, by loop"), Contains("65 %"));
  CHECK_THAT(line_with(text, "stiffness"), Contains("240 N/mm"));
  CHECK_THAT(text, Contains("given back") && Contains("2.00 kN in a half sine in 185 ms"));
  CHECK_THAT(text, !Contains("rebound"));
}

TEST_CASE("lengths in the unit asked for")
{
  CHECK(tools::length_text(0.2441, tools::Lengths::millimetre) == "244 mm");
  CHECK(tools::length_text(0.0073, tools::Lengths::millimetre) == "7.3 mm");
  CHECK(tools::length_text(0.2441, tools::Lengths::centimetre) == "24.4 cm");
  CHECK(tools::length_text(0.0073, tools::Lengths::centimetre) == "0.73 cm");
  CHECK(tools::length_text(0.0254, tools::Lengths::inch) == "1.00 in"); // the inch is 25.4 mm exactly
  CHECK(tools::lengths_from("cm") == tools::Lengths::centimetre);
  CHECK_THROWS_WITH(tools::lengths_from("ft"), "lengths are printed in mm, cm or in, not in 'ft'");
}

TEST_CASE("cautions follow the stack")
{
  const auto heel = tests::synthetic_heel(), forefoot = tests::synthetic_forefoot();
  const auto plain = tools::cautions({&heel.setup});
  REQUIRE(plain.size() == 1);
  CHECK_THAT(plain[0], Contains("Sawing"));
  const auto all = tools::cautions({&heel.setup, &forefoot.setup});
  REQUIRE(all.size() == 3);
  CHECK_THAT(all[0], Contains("never pierce") && Contains("heat"));
}

TEST_CASE("the rebound line names its definition; the same number does not come twice")
{
  const auto text = tools::summary_text({tests::synthetic_heel()}, {});
  CHECK_THAT(line_with(text, "rebound"), Contains("by height") && Contains("61 %"));
  CHECK_THAT(text, !Contains("energy return, by height"));
}

TEST_CASE("what --set changed stands above the readings, once for all runs")
{
  auto heel = tests::synthetic_heel(), forefoot = tests::synthetic_forefoot();
  heel.changes = forefoot.changes = {"core.thickness = 18 mm"};
  const auto text = tools::summary_text({heel, forefoot}, {});
  const auto place = text.find("changed: core.thickness = 18 mm");
  REQUIRE(place != std::string::npos);
  CHECK(place < text.find("rebound"));
  CHECK(text.find("changed:", place + 1) == std::string::npos);
}

TEST_CASE("a punctured unit is told as open, not as under pressure")
{
  auto run = tests::synthetic_forefoot();
  CHECK(tools::air_text(run.setup, run.result.chambers[0]) == "140 kPa gauge");
  run.setup.layers[2].unit->state =
    solver::ChamberState::open; // the case keeps the pressure of the sealed unit
  tools::SummaryOptions options;
  options.details = true;
  const auto text = tools::summary_text({run}, options);
  CHECK_THAT(text, Contains("air unit in unit: open, no pressure"));
  CHECK_THAT(text, Contains("Never pierce") && !Contains("under pressure") && !Contains("140 kPa"));
}

TEST_CASE("the ball test needs no plug sawn out of a shoe")
{
  auto            run = tests::synthetic_heel();
  solver::DropRig ball;
  ball.tup.shape = solver::TupShape::sphere;
  run.setup.rig = ball;
  CHECK(tools::cautions({&run.setup}).empty());
}

TEST_CASE("pictures and pages call no stack of somebody's own invented")
{
  auto own = tests::synthetic_heel("my-heel");
  own.setup.title = "my heel", own.setup.note = "", own.setup.invented = false;
  const auto demo = tests::synthetic_forefoot();
  const auto words = [](const std::vector<tools::Run> &runs) {
    tools::LabelledCases cases;
    for (const auto &run : runs)
      cases.emplace_back(run.label, &run.setup);
    return tools::invented_words(cases);
  };
  CHECK(words({demo}) == "invented demo stacks");
  CHECK(words({own, demo}) == "invented demo stacks (forefoot-drop)");
  CHECK(words({own}) == "library materials partly invented");
  for (auto &layer : own.setup.layers)
  {
    layer.material.invented = false;
    if (layer.ring)
      layer.ring->invented = false;
  }
  CHECK(words({own}).empty());
}

TEST_CASE("the notes of a single run hold bottoming, every warning and the cautions of its stack")
{
  auto run = tests::synthetic_forefoot();
  run.result.warnings.push_back({"greatest_compression", "topper bottoms out"});
  const auto text = tools::notes_text(run, {});
  CHECK_THAT(text, Contains("Bottoming:") && Contains("topper bottoms out") && Contains("never pierce") &&
                     Contains("Invented demo stacks"));
}

TEST_CASE("beside the band of an input the numerical error is no accuracy")
{
  // Grip in proportion to friction (Coulomb), life to the inverse of the wear (Archard's law).
  solver::SlideRig rig;
  rig.friction.mu_ref = 0.8, rig.friction_lowest = 0.48, rig.friction_highest = 1.2;
  rig.wear = solver::WearLife();
  tools::Run run{"bar", {}, {}};
  run.setup.rig = rig;
  run.result.readings = {{"effective_grip", 0.76, "1", "", 0.0015},
                         {"life_steps", 1e5, "1", "", 100},
                         {"life_steps_lowest", 1e4, "1", "", -1},
                         {"life_steps_highest", 1e6, "1", "", -1},
                         {"edge_pressure", 4e5, "Pa", "", 4e3}};
  const auto grip = tools::rigs::input_range(run, "effective_grip");
  REQUIRE(grip);
  CHECK(grip->low == Approx(0.76 * 0.48 / 0.8));
  CHECK(grip->high == Approx(0.76 * 1.2 / 0.8));
  CHECK_FALSE(tools::rigs::input_range(run, "edge_pressure"));
  CHECK_THAT(tools::summary_text({run}, {.width = 400}),
             Contains("How good: grip may be -40 % to +50 % off, because of the band of the friction of this "
                      "court; life in steps may be -90 % to +900 % off") &&
               Contains("The calculation alone: grip ±0.2 %"));
  std::get<solver::SlideRig>(run.setup.rig).friction_highest = 0.48; // somebody's own friction
  CHECK_FALSE(tools::rigs::input_range(run, "effective_grip"));
}

TEST_CASE("a knee is read from the force, not from the travel of a layer")
{
  // A spring that gets ten times stiffer at eight tenths of the way, and one that stays as it is.
  const auto bent = [](double factor) {
    solver::Result result;
    solver::Curve  way{"tup_displacement", "m", "", {}}, force{"force", "N", "", {}};
    for (int i = 0; i <= 100; ++i)
    {
      const double x = 1e-4 * i, bend = 8e-3;
      result.time.push_back(1e-4 * i);
      way.values.push_back(x);
      force.values.push_back(1e5 * (x + (factor - 1) * std::max(0.0, x - bend)));
    }
    result.curves = {way, force};
    return result;
  };
  CHECK(tools::stiffening(bent(1)).value() == Approx(1).epsilon(1e-9));
  // From 0.70 to 0.95 of 10 mm: 1 mm as before, 1.5 mm ten times as stiff.
  CHECK(tools::stiffening(bent(10)).value() == Approx((1 + 15) / 2.5).epsilon(1e-9));
  CHECK_THAT(tools::bottoming_consequence(bent(10), 0), Contains("hits much harder"));
  CHECK_THAT(tools::bottoming_consequence(bent(1), 0), Contains("no knee") && !Contains("harder"));
  CHECK_THAT(tools::bottoming_consequence(bent(1), 0.1), Contains("10 % of its travel left"));
}

TEST_CASE("only the demo stacks are called invented; elsewhere it is the library")
{
  auto run = tests::synthetic_heel();
  run.setup.title = "my heel";
  run.setup.note = "";
  run.setup.invented = false;
  CHECK_THAT(tools::summary_text({run}, {}),
             Contains("Library materials are partly invented") && !Contains("Invented demo stacks"));
  CHECK_THAT(tools::summary_text({run, tests::synthetic_forefoot()}, {}),
             Contains("Invented demo stacks (forefoot-drop):") && Contains("Library materials"));
  for (auto &layer : run.setup.layers)
    layer.material.invented = false;
  if (run.setup.layers[1].ring)
    run.setup.layers[1].ring->invented = false;
  CHECK_THAT(tools::summary_text({run}, {}), !Contains("invented"));
}

TEST_CASE("an unfinished run says so, and emphasis is only there when asked for")
{
  auto run = tests::synthetic_heel();
  run.result.complete = false;
  run.result.stop_reason = "the core would fold at 3.1 ms";
  tools::SummaryOptions options;
  CHECK_THAT(tools::summary_text({run}, options),
             Contains("STOPPED EARLY: the core would fold") && !Contains("\033"));
  options.emphasis = true;
  CHECK_THAT(tools::summary_text({run}, options), Contains("\033[1m"));
}

TEST_CASE("bars and wrapping")
{
  CHECK(tools::bar(0.5, 8, '#') == "####....");
  CHECK(tools::bar(0.01, 8, '#') == "#.......");
  CHECK(tools::bar(1.2, 4, '#') == "####");
  CHECK(tools::bar(-0.2, 4, '#') == "....");
  CHECK(tools::wrapped("one two three", 7, "  ") == "one two\n  three");
  CHECK(tools::columns("±3 °C") == 5);
}
