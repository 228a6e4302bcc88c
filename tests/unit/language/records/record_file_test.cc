// SPDX-License-Identifier: Apache-2.0
// Files as instruments and spreadsheets write them, good and bad.
#include "tests/support/catch.h"
#include "tools/language/records/record_file.h"

#include <fmt/format.h>

using namespace solemech;
using namespace solemech::records;

namespace
{
std::string rows(int n, char separator = ',', double interval = 0.1)
{
  std::string text;
  for (int i = 0; i < n; ++i)
    text += fmt::format("{:.4f}{}{}\n", i * interval, separator, 2 * i);
  return text;
}

Record good(const std::string &text)
{
  materials::Problems problems;
  const auto          record = read_record("drop.csv", text, problems);
  CHECK(problems.text() == "");
  return record;
}

std::string refused(const std::string &text)
{
  materials::Problems problems;
  read_record("drop.csv", text, problems);
  return problems.text();
}

bool has(const std::string &text, const std::string &part)
{
  INFO(text);
  return text.find(part) != std::string::npos;
}
} // namespace

TEST_CASE(
  "columns come in SI, with any of three separators, remarks, byte order mark and line ends of either kind")
{
  for (const char separator : {',', ';', '\t'})
  {
    const auto record =
      good(fmt::format("\xEF\xBB\xBF# invented bench\ntime [ms]{}force (kN)\r\n", separator) +
           rows(20, separator));
    REQUIRE(record.time.size() == 20);
    CHECK(record.time[3] == Approx(0.3e-3).epsilon(1e-12));
    CHECK(record.force[3] == Approx(6000).epsilon(1e-12));
    CHECK(record.interval == Approx(1e-4).epsilon(1e-9));
    CHECK(record.line[0] == 3);
  }
  const auto record = good("Time [s],temperature,Deceleration [g]\n" + [] {
    std::string text;
    for (int i = 0; i < 12; ++i)
      text += fmt::format("{},warm,{:+}\n", i, i);
    return text;
  }());
  CHECK(record.acceleration[2] == Approx(2 * 9.80665).epsilon(1e-12));
  REQUIRE(record.notes.size() == 1);
  CHECK(has(record.notes[0], "temperature"));
}

TEST_CASE("what is wrong with a file is said with line and column, and what to do")
{
  CHECK(has(refused(rows(20)), "drop.csv:1:1: there is no header above the numbers"));
  CHECK(has(refused("time [ms],force\n" + rows(20)), "drop.csv:1:11: force: this column has no unit"));
  CHECK(has(refused("time [ms],force [kg]\n" + rows(20)), "\"kg\" is not a unit of force. Use one of "));
  CHECK(has(refused("time [ms],force [N]\n0,1,3,5\n" + rows(20)), "These look like decimal commas"));
  CHECK(has(refused("time [ms],force [N]\n" + rows(3) + "0.3,abc\n" + rows(20)),
            "drop.csv:5:5: \"abc\" is not a number"));
  CHECK(has(refused("time [ms],force [N]\n" + rows(12) + "0.3\n"),
            "drop.csv:14:1: this row has 1 fields, the header has 2"));
  CHECK(has(refused("time [ms],force [N]\n" + rows(12) + rows(12)),
            "drop.csv:14:1: time: 0 s is not later than 0.0011 s"));
  CHECK(has(refused("time [ms],force [N]\n" + rows(4)), "4 rows of numbers"));
  CHECK(has(refused("time [ms],force [N],force [kN]\n"), "this column is given twice"));
  CHECK(has(refused(std::string("\xFF\xFEt\0i\0m\0e\0", 10)), "looks like UTF-16"));
  CHECK(has(refused("time [\xB5s],force [N]\n" + rows(20)), "drop.csv:1:7: a character here is not UTF-8"));
  CHECK(has(refused("time [ms],force [N]\n" + rows(12) + "1.2,nan\n"), "is not a number"));
  CHECK(has(refused(""), "0 rows of numbers"));
}

TEST_CASE("gaps and uneven sampling are seen")
{
  const auto record = good("time [ms],force [N]\n" + rows(20) + "5.0,1\n5.1,2\n");
  CHECK(gap_between(record, 15, 21));
  CHECK_FALSE(gap_between(record, 0, 19));
  CHECK(has(record.notes.at(0), "gaps of up to 3.1 ms"));
  const auto uneven = good("time [ms],force [N]\n" + rows(20) + "2.05,1\n2.2,2\n");
  CHECK(has(uneven.notes.at(0), "uneven sampling"));
}

TEST_CASE("a million rows are read")
{
  std::string text = "time [us],force [N]\n";
  for (int i = 0; i < 1'000'000; ++i)
    text += std::to_string(i) + "," + std::to_string(i % 977) + ".125\n";
  CHECK(good(text).time.size() == 1'000'000);
}

TEST_CASE("decimal commas between semicolons are read, and that is noted")
{
  std::string text = "time [ms];force [N]\n";
  for (int i = 0; i < 12; ++i)
    text += fmt::format("0,{:02};{},5\n", i, i);
  const auto record = good(text);
  CHECK(record.time[3] == Approx(0.03e-3).epsilon(1e-12));
  CHECK(record.force[3] == Approx(3.5).epsilon(1e-12));
  REQUIRE(record.notes.size() == 1);
  CHECK(has(record.notes[0], "decimal commas: \"0,5\" is read as 0.5"));
  // A thousands mark is no decimal comma.
  CHECK(has(refused(text + "0,5;1,234.5\n"), "\"1,234.5\" is not a number"));
}

TEST_CASE("one slip repeated in every row is not said a million times")
{
  std::string text = "time [ms];force [N]\n";
  for (int i = 0; i < 1000; ++i)
    text += "0.1;x\n";
  materials::Problems problems;
  read_record("drop.csv", text, problems);
  CHECK(problems.list().size() == 5);
}
