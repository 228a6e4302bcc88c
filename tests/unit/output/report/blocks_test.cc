// SPDX-License-Identifier: Apache-2.0
// The blocks of a run carry what the result holds: curves, shares, the moving section, dimensions, origins.
#include "tests/support/catch.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/output/report/energy_flow.h"
#include "tools/output/report/frame_coding.h"
#include "tools/output/report/report_page.h"
#include "tools/output/results/block_json.h"

#include <nlohmann/json.hpp>

#include <cmath>
#include <limits>
#include <set>

using namespace solemech;
using namespace solemech::tools::report;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace
{
json run_values(const tools::Run &run)
{
  const auto record = tests::record_of({run});
  return json::parse(report_json(run_page(record))).at("runs")[0];
}
} // namespace

TEST_CASE("curves keep six digits of the recorded ones")
{
  const auto run = tests::synthetic_heel();
  const auto curves = run_values(run).at("curves");
  REQUIRE(curves.at("time").size() == run.result.time.size());
  for (std::size_t i = 0; i < run.result.time.size(); ++i)
  {
    CHECK(std::abs(curves["time"][i].get<double>() - 1e3 * run.result.time[i]) <
          1e-6 * 1e3 * run.result.time.back());
    CHECK(std::abs(curves["force"][i].get<double>() - run.result.curves[0].values[i]) < 1e-5 * 1340);
    CHECK(std::abs(curves["compression"][i].get<double>() - 1e3 * run.result.curves[1].values[i]) <
          1e-5 * 7.3);
  }
}

TEST_CASE("shares add up to what the page says they account for")
{
  for (const auto &run : {tests::synthetic_heel(), tests::synthetic_forefoot(), tests::synthetic_press()})
  {
    const auto energy = run_values(run).at("energy");
    double     sum = 0;
    for (const auto &share : energy.at("shares"))
      sum += share.at("energy").get<double>();
    CHECK(sum / energy.at("input").get<double>() ==
          Approx(energy.at("accounted").get<double>()).epsilon(1e-5));
    for (const auto &row : energy.at("rows"))
      CHECK(row.at("energy").size() == energy.at("time").size());
  }
}

TEST_CASE("the rows over time hold every energy of the account once")
{
  const auto run = tests::synthetic_heel();
  const auto energy = run_values(run).at("energy");
  for (std::size_t i = 0; i < run.result.time.size(); i += 20)
  {
    double rows = 0, ledger = 0;
    for (const auto &row : energy.at("rows"))
      rows += row.at("energy")[i].get<double>();
    for (const auto &row : run.result.ledger)
      ledger += row.values[i];
    CHECK(rows == Approx(ledger).epsilon(1e-4));
  }
}

TEST_CASE("the weight's height counts from its lowest point")
{
  auto       run = tests::synthetic_heel();
  const auto n = run.result.time.size();
  run.result.ledger.push_back({"tup", "height", solver::EnergyKind::exchanged, std::vector<double>(n, 0.0)});
  run.result.ledger.back().values[n / 2] = -0.1;
  const auto flow = energy_flow(run);
  CHECK(flow.sink_gain == Approx(0.1).epsilon(1e-12));
  CHECK(flow.weight[0] == Approx(1.1).epsilon(1e-12)); // 1 J of motion in the made-up account
  CHECK(flow.weight[n / 2] == Approx(1.0).epsilon(1e-12));
}

TEST_CASE("frames decode to the recorded positions and fields within their quanta")
{
  const auto   run = tests::synthetic_forefoot();
  const auto  &picture = run.result.picture;
  const auto   frames = run_values(run).at("frames");
  const auto   n_nodes = frames.at("nNodes").get<std::size_t>(), n = frames.at("n").get<std::size_t>();
  const double quantum = frames.at("quantum").get<double>();
  REQUIRE(n == picture.snapshots.size());
  CHECK(quantum < 0.01); // [mm]: finer than a pixel
  const auto positions = decoded(frames.at("positions").get<std::string>(), 2 * n_nodes, 0, quantum);
  REQUIRE(positions.size() == 2 * n_nodes * n);

  // Every drawn point lies on a recorded node of its frame; numbers of nodes are the page's own.
  for (std::size_t frame = 0; frame < n; frame += 4)
    for (std::size_t node = 0; node < n_nodes; node += 17)
    {
      const double x = positions[2 * (frame * n_nodes + node)],
                   y = positions[2 * (frame * n_nodes + node) + 1];
      double nearest = 1e9;
      for (const auto &point : picture.snapshots[frame].position)
        nearest = std::min(nearest, std::max(std::abs(1e3 * point[0] - x), std::abs(1e3 * point[1] - y)));
      CHECK(nearest <= 0.5 * quantum * (1 + 1e-6));
    }

  const auto n_quads = frames.at("quadPart").size();
  CHECK(frames.at("quads").size() == 4 * n_quads);
  CHECK(n_quads == 4 * picture.cells.size()); // small mesh: every quarter of a cell
  for (const auto &node : frames.at("quads"))
    REQUIRE(node.get<std::size_t>() < n_nodes);
  for (const auto &field : frames.at("fields"))
  {
    const double step = field.at("quantum").get<double>();
    const auto   values =
      decoded(field.at("values").get<std::string>(), n_quads, field.at("offset").get<double>(), step);
    REQUIRE(values.size() == n * n_quads);
    CHECK(field.at("high").get<double>() > field.at("low").get<double>());
    // Quarters follow the corners of their cell.
    if (field.at("name") == "stretch")
      for (std::size_t i = 0; i < n_quads; i += 13)
        CHECK(std::abs(values[(n / 2) * n_quads + i] - picture.snapshots[n / 2].vertical_stretch[i]) <=
              0.51 * step);
    if (field.at("name") == "pressure") // positive in compression, kPa
      for (std::size_t i = 0; i < n_quads; i += 13)
        CHECK(std::abs(values[(n / 2) * n_quads + i] + 1e-3 * picture.snapshots[n / 2].mean_stress[i]) <=
              0.51 * step);
  }
  // Quads turn counter-clockwise, as drawn cells must for their outlines to match.
  for (std::size_t q = 0; q < n_quads; q += 11)
  {
    double twice = 0;
    for (std::size_t k = 0; k < 4; ++k)
    {
      const auto a = frames.at("quads")[4 * q + k].get<std::size_t>(),
                 b = frames.at("quads")[4 * q + (k + 1) % 4].get<std::size_t>();
      twice += positions[2 * a] * positions[2 * b + 1] - positions[2 * b] * positions[2 * a + 1];
    }
    CHECK(twice > 0);
  }
}

TEST_CASE("a run without pictures has no frames, and a longer series moves only at its ends")
{
  auto run = tests::synthetic_heel();
  run.result.picture = {};
  CHECK(run_values(run).at("frames").is_null());

  std::vector<tools::Run> runs(6, tests::synthetic_heel());
  const auto              record = tests::record_of(runs);
  const auto              values = json::parse(report_json(run_page(record)));
  CHECK_FALSE(values.at("runs")[0].at("frames").is_null());
  CHECK(values.at("runs")[2].at("frames").is_null());
  CHECK_FALSE(values.at("runs")[5].at("frames").is_null());
}

TEST_CASE("the section carries its dimensions to scale and says what nobody measured")
{
  auto       run = tests::synthetic_forefoot();
  const auto section = run_values(run).at("section");
  CHECK(section.at("height") == 23.2);
  CHECK(section.at("width") == 84);
  CHECK(section.at("layers")[0].at("top") == 23.2);
  CHECK(section.at("layers").back().at("bottom") == 0);
  CHECK(section.at("layers")[0].at("assumed") == true); // an invented stack
  bool has_unit = false;
  for (const auto &width : section.at("widths"))
    has_unit = has_unit || width.at("width") == 62;
  CHECK(has_unit);

  run.setup.invented = false; // a stack of one's own: layers were measured, a default was not
  run.assumed = {"plug.radius 42 mm", "unit.unit.packed_share 10 %"};
  const auto own = run_values(run);
  CHECK(own.at("section").at("layers")[0].at("assumed") == false);
  CHECK(own.at("section").at("widths")[0].at("assumed") == true);
  CHECK_THAT(own.at("parts")[2].at("assumed").dump(), Contains("packed share 10 %"));
}

TEST_CASE("what is not finite is refused wherever it stands in a block, and named")
{
  RunBlock run;
  run.curves.time = {0, 1};
  run.energy = Energy{1, 1, {}, {0, 1}, {{"core", EnergyRowKind::stored, 0, {0, 0.5}}}};
  CHECK(json::parse(tools::text_of(tools::json_of(run))).at("frames").is_null());
  run.energy->rows[0].energy[1] = std::numeric_limits<double>::infinity();
  CHECK_THROWS_WITH(tools::text_of(tools::json_of(run)), Contains("energy.rows[0].energy[1]"));
  run.energy->rows[0].energy[1] = 0.5;
  run.curves.time[1] = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_WITH(tools::text_of(tools::json_of(run)), Contains("curves.time[1]"));
}

TEST_CASE("every reading says how it came about, headlines with their inputs, sources and versions")
{
  const auto            values = run_values(tests::synthetic_heel());
  std::set<std::string> headlines;
  for (const auto &reading : values.at("readings"))
  {
    CHECK_FALSE(reading.at("how").empty());
    if (!reading.at("headline").get<bool>())
      continue;
    headlines.insert(reading.at("name").get<std::string>());
    const auto how = reading.at("how").dump();
    CHECK_THAT(how, Contains("400 mm") && Contains("invented for the demo") && Contains("solemech 0.1.0"));
    CHECK_THAT(how, Contains("Numerical error about"));
  }
  CHECK(headlines == std::set<std::string>{"rebound_by_height", "peak_force", "greatest_compression"});
  for (const auto &reading : values.at("readings"))
    if (reading.at("name") == "contact_time")
      CHECK(reading.at("error").is_null());
}
