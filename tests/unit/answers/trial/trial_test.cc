// SPDX-License-Identifier: Apache-2.0
// Trials on a bench with a known answer: what is run, what is said.
#include "solver/mesh/locking.h"
#include "tests/support/catch.h"
#include "tools/answers/trial/trial_text.h"
#include "tools/language/case_text.h"

#include "fake_bench.h"
#include "trial_sheets.h"
#include <nlohmann/json.hpp>

#include <numbers>

using namespace solemech;
using namespace solemech::tests;
using Catch::Matchers::Contains;
using Catch::Matchers::StartsWith;
using Catch::Matchers::WithinRel;
using tools::Trend;

namespace
{
std::string refusal(const std::string &name, const std::vector<std::string> &swaps,
                    const std::string &range = "", const std::string &player = "")
{
  try
  {
    trial_of(name, swaps, range, player);
    return "";
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
}

const tools::TrialRow &row_of(const std::vector<tools::TrialRow> &rows, const std::string &reading)
{
  for (const auto &row : rows)
    if (row.reading == reading)
      return row;
  FAIL("no row " << reading);
  return rows.front();
}
} // namespace

TEST_CASE("a difference is judged by points, per cent and numerical error")
{
  // Readme: below 2 points of return or 3 % of peak force nothing is read as real.
  CHECK(tools::judge(0.60, 0.61, true, 0.002).trend == Trend::same);
  CHECK(tools::judge(0.60, 0.63, true, 0.002).trend == Trend::higher);
  CHECK(tools::judge(0.60, 0.57, true, 0.002).trend == Trend::lower);
  CHECK(tools::judge(1200, 1230, false, 5).trend == Trend::same);
  CHECK(tools::judge(1200, 1250, false, 5).trend == Trend::higher);
  CHECK(tools::judge(1200, 1100, false, 5).trend == Trend::lower);
  CHECK(tools::judge(1200, 1250, false, 80).trend == Trend::unknown);
  CHECK_THAT(tools::judge(1200, 1250, false, 80).text, StartsWith("cannot tell"));
  CHECK(tools::judge(1200, 1205, false, 80).trend == Trend::unknown); // could be anything up to 7 %
  CHECK(tools::judge(0, 1, false, 0).trend == Trend::unknown);
  CHECK(tools::judge(1200, std::nan(""), false, 0).trend == Trend::unknown);
  CHECK(tools::judge(1200, 1250, false, -1).trend == Trend::higher); // error not estimated
}

TEST_CASE("where it bottoms, against the closed form of a spring")
{
  const auto trial = trial_of("heel-drop", {"core.thickness = 20 mm"}, "", "95 kg");
  FakeBench  bench;
  bench.stiffness = 380e3;
  const auto answer = bench.tried(trial);
  const auto limit = [&](const solver::Case &data) {
    const auto &core = FakeBench::core(data);
    return solver::locking_strain(core) * core.thickness;
  };
  const auto stiffness = [&](const solver::Case &data) {
    return bench.stiffness * 10e-3 / FakeBench::core(data).thickness;
  };
  for (const auto &[data, side] :
       {std::pair(&trial.now, &answer.now), std::pair(&trial.changed, &answer.changed)})
  {
    const double x = limit(*data), k = stiffness(*data);
    REQUIRE(side->reserve.energy);
    CHECK(side->reserve.energy->outcome == tools::LimitSearch::Outcome::found);
    CHECK_THAT(side->reserve.energy->load, WithinRel(k * x * x / 2, 0.02));
    // 2.55 body weights, half sine (cases/bench/body-pulse.toml).
    REQUIRE(side->reserve.body_mass);
    CHECK_THAT(side->reserve.body_mass->load, WithinRel(k * x / (2.55 * 9.80665), 0.02));
    REQUIRE(side->reserve.under_player);
    CHECK_THAT(side->reserve.under_player->share, WithinRel(1 - 2.55 * 95 * 9.80665 / k / x, 1e-9));
    CHECK(side->reserve.under_player->layer == "core");
  }
  // The two sides, then few loads for each of four searches.
  CHECK(bench.n_whole == 2);
  CHECK(bench.n_searching <= 4 * 8);
}

TEST_CASE("the step of the player at 80 kg is the pulse of Hoogkamer et al.")
{
  const auto  data = tools::stepped_on(trial_of("heel-drop", {"core = 17 mm"}).now, 80);
  const auto &press = std::get<solver::PressRig>(data.rig);
  CHECK_THAT(press.peak, WithinRel(2000, 0.005)); // Hoogkamer et al. 2018: 2000 N in 185 ms (from memory)
  CHECK(press.duration == 0.185);
}

TEST_CASE("rows say what changed and what did not")
{
  FakeBench   bench;
  const auto  trial = trial_of("heel-drop", {"core.thickness = 20 mm"}, "", "95 kg");
  const auto  answer = tools::trial_answer(trial, bench.tried(trial), {});
  const auto &rebound = row_of(answer.rows, "rebound_by_height");
  CHECK(rebound.trend == Trend::same);
  CHECK(rebound.note == "no real change (+0.0 points)");
  const auto &force = row_of(answer.rows, "peak_force"); // force of a spring: sqrt(2 E k), k 16/20
  CHECK(force.trend == Trend::lower);
  CHECK(force.note == "-11 %, softer landing");
  CHECK(force.improves());
  CHECK(row_of(answer.rows, "greatest_compression").trend == Trend::higher);
  CHECK(!row_of(answer.rows, "greatest_compression").improves());
  CHECK_THAT(answer.reserve_note, Contains("an extrapolation") && Contains("2.55 body weights"));
  CHECK_THAT(row_of(answer.rows, "travel_left_under_player").note, StartsWith("does not bottom"));
  CHECK_THAT(answer.sentence, Contains("softer landing (peak force -11 %)") && Contains("4.0 mm higher"));
  CHECK(answer.improves.size() >= 1);
  CHECK(answer.gets_worse.back() == "stack 4.0 mm higher");
  // Turned round, the words turn round.
  const auto back = trial_of("heel-drop", {"core.thickness = 13 mm"});
  const auto turned = tools::trial_answer(back, bench.tried(back), {});
  CHECK(row_of(turned.rows, "peak_force").note == "+11 %, harder landing");
  CHECK(row_of(turned.rows, "peak_force").gets_worse());
}

TEST_CASE("a plate that the drop does not read is no plate that does nothing")
{
  FakeBench  bench;
  const auto trial = trial_of("forefoot-drop", {"plate = carbon-plate"});
  const auto answer = tools::trial_answer(trial, bench.tried(trial), {});
  CHECK(answer.nothing == "nothing that this rig reads, and it does not read bending");
  std::string notes;
  for (const auto &note : answer.notes)
    notes += note;
  CHECK_THAT(notes, Contains("which a drop does not read"));
  CHECK_THAT(tools::trial_text(answer, {}), !Contains("nothing that counts"));
}

TEST_CASE("the edge of the striker on a stiff insert is not pressure in the foam")
{
  FakeBench  bench;
  const auto trial = trial_of("heel-drop", {"insert = glass-nylon-plate 1.2 mm"});
  auto       result = bench.tried(trial);
  for (auto *run : {&result.now.result, &result.changed.result})
    run->readings.push_back({"peak_pressure", run == &result.now.result ? 1e6 : 2.6e6, "Pa", "", 1e4});
  const auto  answer = tools::trial_answer(trial, result, {});
  const auto &row = row_of(answer.rows, "peak_pressure");
  CHECK_THAT(row.note, Contains("+160 %") && Contains("edge of the striker on a stiff sheet") &&
                         !Contains("concentrated"));
  CHECK_FALSE(row.gets_worse());
}

TEST_CASE("equal stacks: no difference, and no second run")
{
  FakeBench  bench;
  const auto trial = trial_of("heel-drop", {"core = eva-soft"});
  const auto answer = tools::trial_answer(trial, bench.tried(trial), {});
  for (const auto &row : answer.rows)
  {
    INFO(row.reading);
    CHECK(row.trend == Trend::same);
  }
  CHECK(answer.improves.empty());
  CHECK(answer.gets_worse.empty());
  CHECK_THAT(answer.notes.front(), Contains("has no effect"));
  CHECK(bench.n_whole == 1);
}

TEST_CASE("a run that stops says so")
{
  FakeBench bench;
  bench.stops_above = 9e-3;
  const auto trial = trial_of("heel-drop", {"core.thickness = 16.5 mm"}, "", "130 kg");
  const auto answer = tools::trial_answer(trial, bench.tried(trial), {});
  CHECK_THAT(row_of(answer.rows, "bottoming_energy").now, StartsWith("not up to "));
  CHECK_THAT(row_of(answer.rows, "bottoming_energy").note, StartsWith("cannot tell"));
  CHECK_THAT(row_of(answer.rows, "travel_left_under_player").note, StartsWith("cannot tell"));
}

TEST_CASE("room: height, drop, counter, volume")
{
  const auto insert = trial_of("heel-drop", {"insert = pp-semirigid 2 mm"});
  const auto cost = tools::geometry_cost(insert.now, insert.changed);
  CHECK_THAT(cost.height, WithinRel(2e-3, 1e-9));
  CHECK_THAT(cost.inside, WithinRel(2e-3, 1e-9));
  CHECK_THAT(cost.volume, WithinRel(9e-6, 1e-9)); // 2 mm on 45 cm2
  CHECK(cost.part == tools::ShoePart::heel);
  const auto lines = tools::geometry_lines(cost);
  REQUIRE(lines.size() == 4);
  CHECK(lines[0].value == "+2.0 mm");
  CHECK(lines[1].value == "+2.0 mm");
  CHECK(lines[2].value == "2.0 mm less");
  CHECK(lines[3].value == "-9 cm3");
  CHECK_THAT(lines[3].note, Contains("45 cm2 assumed"));
  // Below the board the counter keeps its depth; a forefoot lowers the drop.
  const auto forefoot = trial_of("forefoot-drop", {"unit.thickness = 10 mm"});
  const auto under = tools::geometry_lines(tools::geometry_cost(forefoot.now, forefoot.changed));
  CHECK(under[1].value == "-2.0 mm");
  CHECK(under[2].value == "the same");
  // A case that names no part says what each would mean.
  auto nameless = insert.now;
  nameless.label = nameless.title = "my stack";
  const auto either = tools::geometry_lines(tools::geometry_cost(nameless, insert.changed));
  CHECK(either[1].value == "not known");
  CHECK_THAT(either[1].note, Contains("+2.0 mm if only under the heel, -2.0 mm if only under the forefoot"));
}

TEST_CASE("the range, and where in it the stack bottoms")
{
  FakeBench bench; // stiffness falls with the thickness: locks below a thickness, 2 E/k = x^2
  bench.stiffness = 112e3;
  const auto trial = trial_of("heel-drop", {"core.thickness = 20 mm"}, "core.thickness=10..30 mm");
  const auto answer = tools::trial_answer(trial, bench.tried(trial), {});
  REQUIRE(answer.range);
  CHECK(answer.range->points.size() == 9); // round steps of 2.5 mm
  // k = c/h, x = s h: bottoms below h = 2 E / (c s^2).
  const double strain = solver::locking_strain(FakeBench::core(trial.now)), c = bench.stiffness * 10e-3;
  const double h = 1e3 * 2 * tools::drop_energy(trial.now) / (c * strain * strain);
  INFO(answer.range->bottoms << " closed form " << h << " mm");
  CHECK_THAT(answer.range->bottoms, StartsWith("Under this load it bottoms below about 1"));
  const double told = std::stod(answer.range->bottoms.substr(answer.range->bottoms.find("about ") + 6));
  CHECK_THAT(told, WithinRel(h, 0.02));
  CHECK_THAT(answer.range->sentences.at(1), StartsWith("peak force: "));
  const auto csv = tools::range_csv(*answer.range);
  CHECK(std::count(csv.begin(), csv.end(), '\n') == 10);
}

TEST_CASE("text and JSON hold what was found")
{
  FakeBench  bench;
  const auto trial =
    trial_of("forefoot-drop", {"insert = eva-insert 3 mm"}, "gauge_pressure=80..200 kPa", "95 kg");
  const auto result = bench.tried(trial);
  const auto answer = tools::trial_answer(trial, result, {});
  const auto text = tools::trial_text(answer, {});
  CHECK_THAT(text, StartsWith("trial of forefoot-drop: insert = eva-insert 3 mm\n"));
  for (const char *part :
       {"what to know", "peak force", "what it costs in height and room", "over unit gauge pressure, kPa",
        "What improves:", "What gets worse:", "licensed foot professional", "never heat, pierce or refill",
        "bring no heat near"})
    CHECK_THAT(text, Contains(part));
  std::size_t begin = 0;
  for (std::size_t end = text.find('\n'); end != std::string::npos;
       begin = end + 1, end = text.find('\n', begin))
  {
    const auto line = text.substr(begin, end - begin);
    INFO(line);
    CHECK(line.size() <= 104); // 100 columns; a ± takes two bytes
  }
  const auto json =
    nlohmann::json::parse(tools::trial_json(trial, result, answer, {{"solemech", "test"}}, "abc"));
  CHECK(json["schema"] == 1);
  CHECK(json["swaps"][0] == "insert = eva-insert 3 mm");
  CHECK(json["range"]["points"].size() == 7);
  CHECK(json["range"]["entry"] == "unit.gauge_pressure");
  CHECK(json["now"]["readings"]["peak_force"]["unit"] == "N");
  CHECK(json["player_mass"] == 95);
}

TEST_CASE("a range alone compares nothing")
{
  FakeBench  bench;
  const auto trial = trial_of("forefoot-drop", {}, "gauge_pressure=80..200 kPa by 60");
  const auto answer = tools::trial_answer(trial, bench.tried(trial), {});
  CHECK(answer.range->points.size() == 3);
  CHECK(answer.geometry.empty());
  CHECK_THAT(answer.sentence, StartsWith("Over unit gauge pressure, rebound: "));
  const auto heading = [](const std::string &text) { return text.substr(0, text.find("rebound  ")); };
  const auto alone = heading(tools::trial_text(answer, {}));
  CHECK_THAT(alone, Contains(" now") && !Contains("before"));
  const auto pair = trial_of("heel-drop", {"insert = eva-insert 3 mm"});
  CHECK_THAT(heading(tools::trial_text(tools::trial_answer(pair, bench.tried(pair), {}), {})),
             Contains("before") && Contains("after") && !Contains(" now"));
}

TEST_CASE("slips of all options at once")
{
  const auto text = refusal("heel-drop", {"insert = pp-semirigd 2 mm"}, "", "95");
  CHECK_THAT(text, Contains("--player:1:1") && Contains("kg") && Contains("--swap:1:10"));
  CHECK_THAT(refusal("heel-drop", {}, "", "2000 kg"), Contains("20 kg to 250 kg"));
  CHECK_THAT(refusal("energy-ladder", {"core = 18 mm"}),
             Contains("the file holds 12 cases") && Contains("--set drop.energy=\"2 J\""));
  CHECK_THAT(refusal("forefoot-drop", {"unit.gauge_pressure = 20 bar"}),
             Contains("more than the film can hold"));
}

TEST_CASE("what the answer depends on is in its text")
{
  const auto text = [](const tools::TrialInput &trial) {
    return tools::asked_text(trial, tools::answer_text);
  };
  const auto base = text(trial_of("heel-drop", {"insert = eva-insert 3 mm"}));
  CHECK(base == text(trial_of("heel-drop", {"insert=eva-insert  3 mm"})));
  CHECK(base != text(trial_of("heel-drop", {"insert = eva-insert 4 mm"})));
  CHECK(base != text(trial_of("heel-drop", {"insert = eva-insert 3 mm"}, "", "95 kg")));
  auto told_otherwise = trial_of("heel-drop", {"insert = eva-insert 3 mm"});
  told_otherwise.changed.layers.front().laid_in = !told_otherwise.changed.layers.front().laid_in;
  CHECK(base != text(told_otherwise));
}

TEST_CASE("a range over a gauge tells its hardness, not a rebound that it does not have")
{
  tools::TrialRange range;
  range.address = "outsole.thickness", range.unit = "mm", range.values = {2, 4};
  std::vector<solver::Result> results(2);
  for (std::size_t i = 0; i < 2; ++i)
  {
    solver::Case setup;
    setup.rig = solver::DurometerRig();
    range.cases.push_back(setup);
    results[i].readings.push_back({"hardness", 48.0 + 5 * static_cast<double>(i), "points", "", -1});
  }
  const auto answer = tools::range_answer(range, results);
  REQUIRE(answer.columns.size() == 1);
  CHECK(answer.columns[0].reading == "hardness");
  CHECK(answer.columns[0].values[1] == Approx(53.0));
  REQUIRE(answer.sentences.size() == 1);
  CHECK_THAT(answer.sentences[0], Catch::Matchers::Contains("48.0 at 2 mm, 53.0 at 4 mm"));
  CHECK(answer.bottoms.empty());
}
