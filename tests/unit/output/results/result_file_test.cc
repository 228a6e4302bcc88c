// SPDX-License-Identifier: Apache-2.0
// The HDF5 record gives back exactly what was stored, and refuses what it cannot hold.
#include "solver/results/result_file.h"
#include "tests/unit/output/results/synthetic.h"
#include "tests/unit/output/results/temporary_folder.h"

#include <catch2/catch.hpp>

#include <limits>

using namespace solemech;
using namespace solemech::solver;
using Catch::Matchers::Contains;

namespace
{
ResultRecord sample()
{
  return {"bench",
          "title = \"an invented stack, ±3 °C\"\n",
          "core.thickness = 0.016 m\n",
          std::string(64, 'b'),
          {{"solemech", "0.1.0"}, {"HDF5", "1.10.8"}},
          {{"heel", tests::synthetic_heel().result}, {"forefoot", tests::synthetic_forefoot().result}}};
}

void check_same(const Result &a, const Result &b)
{
  CHECK(a.time == b.time);
  REQUIRE(a.curves.size() == b.curves.size());
  for (std::size_t i = 0; i < a.curves.size(); ++i)
  {
    CHECK(a.curves[i].name == b.curves[i].name);
    CHECK(a.curves[i].unit == b.curves[i].unit);
    CHECK(a.curves[i].meaning == b.curves[i].meaning);
    CHECK(a.curves[i].values == b.curves[i].values);
  }
  REQUIRE(a.ledger.size() == b.ledger.size());
  for (std::size_t i = 0; i < a.ledger.size(); ++i)
  {
    CHECK(a.ledger[i].part == b.ledger[i].part);
    CHECK(a.ledger[i].kind == b.ledger[i].kind);
    CHECK(a.ledger[i].type == b.ledger[i].type);
    CHECK(a.ledger[i].values == b.ledger[i].values);
  }
  REQUIRE(a.readings.size() == b.readings.size());
  for (std::size_t i = 0; i < a.readings.size(); ++i)
  {
    CHECK(a.readings[i].name == b.readings[i].name);
    CHECK(a.readings[i].value == b.readings[i].value);
    CHECK(a.readings[i].unit == b.readings[i].unit);
    CHECK(a.readings[i].meaning == b.readings[i].meaning);
    CHECK(a.readings[i].error == b.readings[i].error);
  }
  REQUIRE(a.warnings.size() == b.warnings.size());
  for (std::size_t i = 0; i < a.warnings.size(); ++i)
  {
    CHECK(a.warnings[i].reading == b.warnings[i].reading);
    CHECK(a.warnings[i].text == b.warnings[i].text);
  }
  REQUIRE(a.chambers.size() == b.chambers.size());
  for (std::size_t i = 0; i < a.chambers.size(); ++i)
  {
    CHECK(a.chambers[i].layer == b.chambers[i].layer);
    CHECK(a.chambers[i].gauge_pressure == b.chambers[i].gauge_pressure);
    CHECK(a.chambers[i].volume == b.chambers[i].volume);
  }
  CHECK(a.input_energy == b.input_energy);
  CHECK(a.time_of_peak == b.time_of_peak);
  CHECK(a.time_of_loss == b.time_of_loss);
  CHECK(a.complete == b.complete);
  CHECK(a.stop_reason == b.stop_reason);
  CHECK(a.facts.unknowns == b.facts.unknowns);
  CHECK(a.facts.iterations == b.facts.iterations);
  CHECK(a.facts.ledger_residual == b.facts.ledger_residual);
  CHECK(a.picture.cells == b.picture.cells);
  CHECK(a.picture.cell_part == b.picture.cell_part);
  CHECK(a.picture.part_names == b.picture.part_names);
  CHECK(a.picture.tup_outline == b.picture.tup_outline);
  REQUIRE(a.picture.snapshots.size() == b.picture.snapshots.size());
  for (std::size_t i = 0; i < a.picture.snapshots.size(); ++i)
  {
    const auto &x = a.picture.snapshots[i], &y = b.picture.snapshots[i];
    CHECK(x.time == y.time);
    CHECK(x.tup_position == y.tup_position);
    CHECK((x.position == y.position && x.displacement == y.displacement));
    CHECK((x.vertical_stress == y.vertical_stress && x.mean_stress == y.mean_stress));
    CHECK((x.shear_stress == y.shear_stress && x.vertical_stretch == y.vertical_stretch));
    CHECK((x.energy_density == y.energy_density && x.dissipated_density == y.dissipated_density));
  }
}
} // namespace

TEST_CASE("a record survives the round trip to the last digit")
{
  const tests::TemporaryFolder folder;
  auto                         record = sample();
  record.runs[1].result.complete = false;
  record.runs[1].result.stop_reason = "stopped for the test";
  write_result_file(folder.path / "results.h5", record);
  const auto back = read_result_file(folder.path / "results.h5");
  CHECK(back.label == record.label);
  CHECK(back.case_text == record.case_text);
  CHECK(back.resolved_text == record.resolved_text);
  CHECK(back.case_hash == record.case_hash);
  CHECK(back.versions == record.versions);
  REQUIRE(back.runs.size() == 2);
  for (std::size_t i = 0; i < 2; ++i)
  {
    CHECK(back.runs[i].label == record.runs[i].label);
    check_same(back.runs[i].result, record.runs[i].result);
  }
}

TEST_CASE("an empty result survives too")
{
  const tests::TemporaryFolder folder;
  write_result_file(folder.path / "results.h5", {"empty", "", "", "", {}, {{"nothing", Result()}}});
  check_same(read_result_file(folder.path / "results.h5").runs.at(0).result, Result());
}

TEST_CASE("the same record twice gives the same bytes")
{
  const tests::TemporaryFolder folder;
  write_result_file(folder.path / "a.h5", sample());
  write_result_file(folder.path / "b.h5", sample());
  CHECK(tests::text_of(folder.path / "a.h5") == tests::text_of(folder.path / "b.h5"));
}

TEST_CASE("what is not finite or torn is refused before anything is written")
{
  const tests::TemporaryFolder folder;
  const auto                   refused = [&](auto spoil) {
    auto record = sample();
    spoil(record.runs[0].result);
    CHECK_THROWS_AS(write_result_file(folder.path / "results.h5", record), ResultsError);
    CHECK(std::filesystem::is_empty(folder.path));
  };
  const double nan = std::numeric_limits<double>::quiet_NaN();
  refused([&](Result &result) { result.readings[0].value = nan; });
  refused([&](Result &result) { result.curves[0].values[3] = nan; });
  refused([&](Result &result) { result.curves[0].values.pop_back(); });
  refused([&](Result &result) { result.ledger[0].values[5] = -std::numeric_limits<double>::infinity(); });
  refused([&](Result &result) { result.picture.snapshots[1].mean_stress[2] = nan; });
  refused([&](Result &result) { result.picture.snapshots[1].mean_stress.pop_back(); });
  refused([&](Result &result) { result.picture.cells[0][4] = 1u << 30; });
  refused([&](Result &result) { result.picture.cell_part[0] = 99; });
}

TEST_CASE("files that are missing, foreign or cut short are named")
{
  const tests::TemporaryFolder folder;
  CHECK_THROWS_WITH(read_result_file(folder.path / "none.h5"), Contains("none.h5"));
  tests::put(folder.path / "text.h5", "not a record");
  CHECK_THROWS_WITH(read_result_file(folder.path / "text.h5"),
                    Contains("cannot read") && Contains("text.h5"));
  write_result_file(folder.path / "results.h5", sample());
  std::filesystem::resize_file(folder.path / "results.h5", 4000);
  CHECK_THROWS_AS(read_result_file(folder.path / "results.h5"), ResultsError);
  CHECK_THROWS_WITH(write_result_file(folder.path / "no" / "such" / "results.h5", sample()),
                    Contains("results.h5"));
}
