// SPDX-License-Identifier: Apache-2.0
// The table of outside checks tests itself: what it writes it accepts, and every kind of change is named.
#include "tests/external/checks_table.h"
#include "tests/support/catch.h"

#include <unistd.h>

#include <stdexcept>

using namespace solemech::tests;

namespace
{
std::vector<ExternalCheck> two_rows()
{
  return {{"a handbook", "force at 2 mm", 41.442, 41.45, 0.02, "N"},
          {"a standard", "return", 0.52, 0.5202, 0.01}};
}
} // namespace

TEST_CASE("a table agrees with the rows it was written from", "[references]")
{
  CHECK(table_differences(checks_table(two_rows()), two_rows()).empty());
  auto rows = two_rows();
  rows[0].obtained *= 1 + 0.0009; // within 5 % of the tolerance
  CHECK(table_differences(checks_table(two_rows()), rows).empty());
}

TEST_CASE("every change of the table is named", "[references]")
{
  const std::string table = checks_table(two_rows());
  auto              rows = two_rows();
  rows[0].obtained *= 1.002;
  CHECK(
    table_differences(table, rows) ==
    std::vector<std::string>{"'a handbook: force at 2 mm': obtained 41.45 N in the table, 41.5329 N now"});
  rows = two_rows();
  rows[1].expected = 0.521;
  CHECK(table_differences(table, rows) ==
        std::vector<std::string>{"'a standard: return': '0.52' in the table, '0.521' now"});
  rows = two_rows();
  rows[1].relative_tolerance = 0.02;
  CHECK(table_differences(table, rows) ==
        std::vector<std::string>{"'a standard: return': '1 %' in the table, '2 %' now"});
  rows = two_rows();
  rows[0].unit = "kN";
  CHECK_FALSE(table_differences(table, rows).empty());
  rows = two_rows();
  rows[1].obtained = 0.6;
  CHECK(table_differences(table, rows).front() ==
        "'a standard: return' does not hold: expected 0.52, obtained 0.6");
  rows = two_rows();
  rows.pop_back();
  CHECK(table_differences(table, rows) ==
        std::vector<std::string>{"'a standard: return' is in the table, but no test made it"});
  rows = two_rows();
  rows.push_back({"a third", "thing", 1, 1, 0.1});
  CHECK(table_differences(table, rows) ==
        std::vector<std::string>{"'a third: thing' is new: write the table again"});
}

TEST_CASE("rows survive the way through their files, and unfit ones are refused", "[references]")
{
  const auto folder =
    std::filesystem::temp_directory_path() / ("external-rows-" + std::to_string(::getpid()));
  for (const auto &row : two_rows())
    leave_row(row, folder);
  leave_row(two_rows()[0], folder);
  CHECK(checks_table(rows_left(folder)) == checks_table(two_rows()));
  std::filesystem::remove_all(folder);

  ExternalCheck row = two_rows()[0];
  row.expected = 0;
  CHECK_THROWS_AS(leave_row(row, folder), std::logic_error);
  row = two_rows()[0];
  row.what = "a | b";
  CHECK_THROWS_AS(leave_row(row, folder), std::logic_error);
  row = two_rows()[0];
  row.relative_tolerance = 0;
  CHECK_THROWS_AS(leave_row(row, folder), std::logic_error);
}
