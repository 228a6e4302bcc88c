// SPDX-License-Identifier: Apache-2.0
#include "solver/results/result_check.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/output/results/json_output.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <limits>

using namespace solemech;

TEST_CASE("the JSON answer carries schema, readings, energy and warnings")
{
  const auto record = tests::record_of({tests::synthetic_heel(), tests::synthetic_forefoot()});
  const auto answer = nlohmann::json::parse(tools::json_text({record}));
  CHECK(answer.at("schema") == tools::json_schema);
  CHECK(answer.at("program") == "solemech");
  const auto &runs = answer.at("cases").at(0).at("runs");
  REQUIRE(runs.size() == 2);
  const auto &rebound = runs[0].at("readings").at("rebound_by_height");
  CHECK(rebound.at("value") == 0.61);
  CHECK(rebound.at("unit") == "1");
  CHECK(rebound.at("error").get<double>() == Approx(0.004 * 0.61));
  CHECK_FALSE(runs[0].at("readings").at("contact_time").contains("error"));
  CHECK(runs[0].at("energy").at("accounted").get<double>() == Approx(0.998));
  CHECK(runs[1].at("warnings").size() == 2);
  CHECK(runs[1].at("chambers").at(0).at("gauge_pressure") == 140e3);
  CHECK(runs[0].at("invented") == true);
}

TEST_CASE("an open unit has no pressure in the JSON answer, whatever the case gave the sealed one")
{
  auto run = tests::synthetic_forefoot();
  run.setup.layers[2].unit->state = solver::ChamberState::open;
  const auto answer = nlohmann::json::parse(tools::json_text({tests::record_of({run})}));
  const auto chamber = answer.at("cases").at(0).at("runs").at(0).at("chambers").at(0);
  CHECK(chamber.at("gauge_pressure") == 0);
  CHECK(chamber.at("air") == "open, no pressure");
}

TEST_CASE("no NaN and no infinity leaves the program")
{
  auto run = tests::synthetic_heel();
  run.result.readings[4].value = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_WITH(
    tools::json_text({tests::record_of({run})}),
    "result of 'heel-drop': reading 'peak_force' is not a finite number; nothing was written");
  run = tests::synthetic_heel();
  run.result.ledger[0].values.back() = std::numeric_limits<double>::infinity();
  CHECK_THROWS_AS(tools::json_text({tests::record_of({run})}), solver::ResultsError);
}

TEST_CASE("text that is not UTF-8 does not break the answer")
{
  auto run = tests::synthetic_heel();
  run.setup.title = "caf\xe9";
  CHECK(nlohmann::json::accept(tools::json_text({tests::record_of({run})})));
}
