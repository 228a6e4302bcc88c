// SPDX-License-Identifier: Apache-2.0
// Sentences follow the numbers: turned round they turn round, equal they say so, missing they say that.
#include "tests/support/catch.h"
#include "tests/unit/output/report/told.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/output/report/report_page.h"
#include "tools/output/report/series_block.h"
#include "tools/output/report/story.h"
#include "tools/output/report/together.h"

using namespace solemech;
using namespace solemech::tools::report;
using Catch::Matchers::Contains;
using tests::told;

namespace
{
void set(tools::Run &run, const std::string &name, double value)
{
  for (auto &reading : run.result.readings)
    if (reading.name == name)
      reading.value = value;
}

void check_no_nonsense(const std::string &text)
{
  CHECK_THAT(text, !Contains("nan") && !Contains("inf ") && !Contains("{}") && !Contains("-0"));
}
} // namespace

TEST_CASE("the sentence of a drop names rebound, force and depth")
{
  const auto run = tests::synthetic_heel();
  CHECK_THAT(sentence_of(run),
             Contains("244 mm") && Contains("61 %") && Contains("1.34 kN") && Contains("7.3 mm of 28.9 mm"));
  const auto headline = headline_of(run);
  REQUIRE(headline.size() == 3);
  CHECK(headline[0].value == "244 mm");
  CHECK(headline[1].value == "1.34 kN");
  CHECK(headline[2].value == "7.3 mm");
}

TEST_CASE("the story names the part that lost most, and another when the numbers change")
{
  auto run = tests::synthetic_heel();
  CHECK_THAT(told(story_of(run)), Contains("The core turned the most into heat"));
  for (auto &row : run.result.ledger)
    if (row.part == "core")
      row.part = "carrier";
    else if (row.part == "carrier")
      row.part = "core";
  CHECK_THAT(told(story_of(run)), Contains("The carrier turned the most into heat"));
}

TEST_CASE("bottoming is told by the margin")
{
  auto run = tests::synthetic_heel();
  CHECK_THAT(told(story_of(run)), Contains("No layer bottoms") && Contains("34 %"));
  set(run, "bottoming_margin", 0.1);
  CHECK_THAT(told(story_of(run)), Contains("close to bottoming"));
  set(run, "bottoming_margin", 0);
  CHECK_THAT(told(story_of(run)), Contains("bottoms out"));
  CHECK_THAT(sentence_of(run), Contains("bottoms out"));
}

TEST_CASE("an open air unit is told as open, a full one by its gas")
{
  auto run = tests::synthetic_forefoot();
  run.result.curves.push_back(
    {"unit.gauge_pressure", "Pa", "gas", std::vector<double>(run.result.time.size(), 140e3)});
  CHECK_THAT(told(story_of(run)), Contains("140 kPa to 140 kPa"));
  run.setup.layers[2].unit->state = solver::ChamberState::open;
  CHECK_THAT(told(story_of(run)), Contains("The unit is open") && !Contains("kPa"));
}

TEST_CASE("two runs side by side: the order of the numbers decides, not that of the runs")
{
  auto heel = tests::synthetic_heel(), forefoot = tests::synthetic_forefoot();
  CHECK_THAT(together_sentence({&heel, &forefoot}),
             Contains("forefoot-drop rebounds higher than heel-drop, 77 % against 61 %") &&
               Contains("heel-drop hits harder than forefoot-drop"));
  std::swap(heel.result.readings, forefoot.result.readings);
  CHECK_THAT(together_sentence({&heel, &forefoot}),
             Contains("heel-drop rebounds higher than forefoot-drop") &&
               Contains("forefoot-drop hits harder than heel-drop"));
}

TEST_CASE("equal runs show no difference, and neither do runs within their errors")
{
  auto a = tests::synthetic_heel("a"), b = tests::synthetic_heel("b");
  CHECK_THAT(together_sentence({&a, &b}),
             Contains("No clear difference in rebound") && Contains("No clear difference in peak force"));
  set(b, "rebound_by_height", 0.611); // error of each: 0.4 % of 0.61
  CHECK_THAT(together_sentence({&a, &b}), Contains("No clear difference in rebound"));
  set(b, "rebound_by_height", 0.65);
  CHECK_THAT(together_sentence({&a, &b}), Contains("b rebounds higher than a"));
}

TEST_CASE("a weight that does not come back, a stack that does nothing, an account without input")
{
  auto run = tests::synthetic_heel();
  set(run, "rebound_height", 0);
  set(run, "rebound_by_height", 0);
  CHECK_THAT(sentence_of(run), Contains("does not rebound"));
  check_no_nonsense(told(story_of(run)));

  run.result.input_energy = 0;
  const auto story = told(story_of(run));
  check_no_nonsense(story);
  CHECK_THAT(story, !Contains("turned the most"));
  const auto record = tests::record_of({run});
  CHECK_THAT(report_json(run_page(record)), Contains("\"energy\":null"));

  auto still = tests::synthetic_heel();
  for (auto &row : still.result.ledger)
    row.values.assign(row.values.size(), 0.0);
  check_no_nonsense(told(story_of(still)));
}

TEST_CASE("a run that stopped early says why and what it has")
{
  auto run = tests::synthetic_heel();
  run.result.complete = false;
  run.result.stop_reason = "the foam locked up";
  run.result.readings.clear();
  CHECK_THAT(sentence_of(run), Contains("stopped early: the foam locked up") && Contains("1.34 kN"));
  CHECK(headline_of(run).size() == 3);
  run.result = {};
  run.result.complete = false;
  CHECK_THAT(sentence_of(run), Contains("stopped early") && Contains("Nothing was recorded"));
  CHECK_NOTHROW(report_html(run_page(tests::record_of({run}))));
}

TEST_CASE("a press tells work and loop")
{
  const auto run = tests::synthetic_press();
  CHECK_THAT(sentence_of(run), Contains("gives back 65 % of the work"));
  CHECK_THAT(told(story_of(run)), Contains("press head") && Contains("1.82 J stays in the stack"));
}

TEST_CASE("lines cross where straight lines between their points do")
{
  // y = x and y = 5 - x meet at 2.5.
  CHECK(crossing({1, 2, 3, 4}, {1, 2, 3, 4}, {4, 3, 2, 1}).value() == Approx(2.5).epsilon(1e-12));
  CHECK(crossing({4, 1, 3, 2}, {4, 1, 3, 2}, {1, 4, 2, 3}).value() ==
        Approx(2.5).epsilon(1e-12));                               // any order
  CHECK_FALSE(crossing({1, 2, 3, 4}, {4, 3, 2, 1}, {1, 2, 3, 4})); // comes to lie below
  CHECK_FALSE(crossing({1, 2}, {2, 3}, {1, 2}));                   // above from the start
}

TEST_CASE("a series says from where on a group hits harder, and the other one when the numbers turn")
{
  ChartSeries series{"drop energy",
                     "J",
                     {2, 4, 6, 2, 4, 6},
                     {"heel", "heel", "heel", "forefoot", "forefoot", "forefoot"},
                     {},
                     ""};
  series.readings = {
    {"peak_force", "peak force", "N", {700, 1000, 1300, 600, 1000, 1500}, std::vector<double>(6, 5.0)}};
  CHECK_THAT(
    series_sentence(series),
    Contains("From about 4 J of drop energy upward, forefoot hits harder than heel, by 15 % at 6 J"));
  std::swap(series.groups[0], series.groups[3]);
  std::swap(series.groups[1], series.groups[4]);
  std::swap(series.groups[2], series.groups[5]);
  CHECK_THAT(series_sentence(series), Contains("upward, heel hits harder than forefoot"));
  series.readings[0].values = {700, 1000, 1300, 702, 1001, 1297};
  CHECK_THAT(series_sentence(series), Contains("no clear difference in peak force"));
  series.readings[0].values = {700, 1000, 1300, 702, 1100, 1500};
  CHECK_THAT(series_sentence(series),
             Contains("Up to 2 J of drop energy the two cannot be separated. From 4 J upward"));
}

TEST_CASE("a series of one line tells its course")
{
  ChartSeries series{"body mass", "kg", {80, 50, 120}, {"", "", ""}, {}, ""};
  series.readings = {{"loop_return", "energy return", "%", {68, 66, 70}},
                     {"peak_force", "peak force", "N", {2000, 1250, 3000}}};
  CHECK_THAT(series_sentence(series),
             Contains("From 50 kg to 120 kg of body mass, the peak force rises from 1.25 kN to 3.00 kN") &&
               Contains("energy return rises from 66 % to 70 %"));
  series.readings[0].values = {68, 67.5, 68.5};
  CHECK_THAT(series_sentence(series), Contains("energy return hardly changes"));
}
