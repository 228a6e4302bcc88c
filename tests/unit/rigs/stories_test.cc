// SPDX-License-Identifier: Apache-2.0
// Stories of worn lugs and abrasion benches follow their numbers: where wear begins, hours only from a worn
// pair, a depth that is a lower bound. All numbers are made up.
#include "tests/support/catch.h"
#include "tests/unit/output/report/told.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/rigs/kind.h"

using namespace solemech;
using Catch::Matchers::Contains;
using tests::told;
using tools::rigs::abrasion;
using tools::rigs::wear;

namespace
{
void set(tools::Run &run, const std::string &name, double value)
{
  for (auto &reading : run.result.readings)
    if (reading.name == name)
    {
      reading.value = value;
      return;
    }
  run.result.readings.push_back({name, value, "1", "made up", -1});
}

solver::WearLife &wear_of(tools::Run &run)
{
  return *std::get<solver::SlideRig>(run.setup.rig).wear;
}

tools::Run worn_lug()
{
  auto             run = tests::synthetic_heel("worn");
  solver::SlideRig rig;
  rig.court = "hardwood", rig.court_state = "clean", rig.pressure = 200e3;
  rig.wear = solver::WearLife{};
  rig.wear->reference = "rubber-64a", rig.wear->coefficient = 3e-11;
  rig.wear->lowest = 1e-11, rig.wear->highest = 9e-11, rig.wear->depth = 1e-3, rig.wear->slip = 5e-3;
  run.setup.rig = rig;
  run.result.readings.clear();
  set(run, "effective_grip", 0.9);
  set(run, "worn_grip", 0.91);
  set(run, "life_steps", 300e3);
  set(run, "life_steps_lowest", 100e3);
  set(run, "life_steps_highest", 900e3);
  set(run, "relative_life", 1.25);
  set(run, "first_wear_place", 0.02);
  return run;
}

tools::Run abraded()
{
  auto                run = tests::synthetic_heel("ground");
  solver::AbrasionRig rig;
  rig.seconds = 10, rig.reference = "rubber-64a", rig.coefficient = 4e-9, rig.lowest = 2e-9,
  rig.highest = 8e-9;
  run.setup.rig = rig;
  run.result.readings.clear();
  set(run, "ground_depth", 1.2e-3);
  set(run, "ground_depth_lowest", 0.8e-3);
  set(run, "ground_depth_highest", 1.6e-3);
  return run;
}
} // namespace

TEST_CASE("wear begins where the numbers say, at both edges of a lug that slides to and fro")
{
  auto run = worn_lug();
  REQUIRE(wear().tells(run));
  CHECK_THAT(wear().sentence(run), Contains("two edges") && Contains("grips as before"));
  wear_of(run).to_and_fro = false;
  CHECK_THAT(wear().sentence(run), Contains("leading edge"));
  set(run, "first_wear_place", 0.5);
  CHECK_THAT(wear().sentence(run), Contains("middle of its face"));
  set(run, "first_wear_place", 0.95);
  set(run, "worn_grip", 0.7);
  CHECK_THAT(wear().sentence(run), Contains("trailing edge") && Contains("grips less: 0.70 instead of 0.90"));
}

TEST_CASE("hours are told from a worn pair alone, else the ratio with its band")
{
  auto run = worn_lug();
  CHECK_THAT(told(wear().story(run)),
             Contains("Hours can only be predicted from a worn pair") && Contains("band"));
  CHECK(wear().headline(run)[1].value == "1.25 ×");
  wear_of(run).known_hours = 100 * 3600, wear_of(run).known_depth = 0.5e-3;
  set(run, "life_hours", 200 * 3600);
  CHECK_THAT(told(wear().story(run)), Contains("100 h wore off") && Contains("take 200 h"));
  CHECK(wear().headline(run)[1].value == "200 h");
}

TEST_CASE("the wear of a worn pair is held against the band that was taken")
{
  auto run = worn_lug();
  CHECK_THAT(told(wear().story(run)), !Contains("your worn pair gives"));
  set(run, "pair_coefficient", 5e-11);
  CHECK_THAT(told(wear().story(run)),
             Contains("your worn pair gives") && Contains("inside the assumed band"));
  set(run, "pair_coefficient", 50e-11);
  CHECK_THAT(told(wear().story(run)), Contains("outside the assumed band"));
}

TEST_CASE("a piece that is ground through has a depth that is a lower bound")
{
  auto run = abraded();
  REQUIRE(abrasion().tells(run));
  CHECK_THAT(abrasion().sentence(run), Contains("In 10 s") && !Contains("lower bound"));
  CHECK_THAT(told(abrasion().story(run)), Contains("does not predict life on a court"));
  set(run, "through_time", 6.5);
  CHECK_THAT(abrasion().sentence(run), Contains("after 6.5 s") && Contains("lower bound"));
  CHECK_THAT(abrasion().headline(run)[0].value, Contains("≥"));
}
