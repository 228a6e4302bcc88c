// SPDX-License-Identifier: Apache-2.0
// What a series varies, as the axis of its table and picture.
#include "tests/support/catch.h"
#include "tools/program/record.h"

using namespace solemech;
using namespace solemech::tools;

namespace
{
CaseFile file_with(const std::vector<VariedEntry> &series)
{
  CaseFile    file;
  std::size_t n_cases = 1;
  for (const auto &each : series)
    n_cases *= each.values.size();
  file.label = "ladder";
  file.series = series;
  for (std::size_t i = 0; i < n_cases; ++i)
  {
    solver::Case setup;
    setup.label = "ladder-" + std::to_string(i);
    file.cases.push_back(setup);
  }
  return file;
}
} // namespace

TEST_CASE("numbers of one unit are the axis, other series make groups")
{
  const auto series =
    varied_series(file_with({{"stack", {"heel", "forefoot"}}, {"drop.energy", {"2 J", "4.5 J", "6J"}}}));
  REQUIRE(series);
  CHECK(series->quantity == "drop energy");
  CHECK(series->unit == "J");
  CHECK(series->values == std::vector<double>{2, 4.5, 6, 2, 4.5, 6});
  CHECK(series->groups ==
        std::vector<std::string>{"heel", "heel", "heel", "forefoot", "forefoot", "forefoot"});
}

TEST_CASE("the axis need not be the last series")
{
  const auto series = varied_series(file_with({{"plug.radius", {"20 mm", "30 mm"}}, {"stack", {"a", "b"}}}));
  REQUIRE(series);
  CHECK(series->quantity == "plug radius");
  CHECK(series->values == std::vector<double>{20, 20, 30, 30});
  CHECK(series->groups == std::vector<std::string>{"a", "b", "a", "b"});
}

TEST_CASE("words, mixed units and single cases have no axis")
{
  CHECK_FALSE(varied_series(file_with({{"core.material", {"eva-soft", "tpu-bead"}}})));
  CHECK_FALSE(varied_series(file_with({{"drop.height", {"40 cm", "500 mm"}}})));
  CHECK_FALSE(varied_series(file_with({})));
}

TEST_CASE("the record's hash follows the inputs, not the label of the file")
{
  auto       file = file_with({});
  const auto first = planned_record({"a.toml", file});
  CHECK(first.hash.size() == 64);
  CHECK(first.runs.size() == 1);
  CHECK(planned_record({"b.toml", file}).hash == first.hash);
  file.cases.front().temperature += 1;
  CHECK(planned_record({"a.toml", file}).hash != first.hash);
}
