// SPDX-License-Identifier: Apache-2.0
// The table of outside checks tests itself: what it writes it accepts, late digits do not matter, and every
// kind of change is named.
#include "tests/external/checks_table.h"
#include "tests/support/catch.h"

#include <functional>
#include <stdexcept>

using namespace solemech::tests;

namespace
{
using Rows = std::vector<ExternalCheck>;
using Sentences = std::vector<std::string>;

Rows two_rows()
{
  return {{"a handbook", "force at 2 mm", 41.442, 41.45, 0.02, "N"},
          {"a standard", "return", 0.52, 0.5202, 0.01}};
}

/// As committed by a program `test_a` and another one.
ChecksTable committed()
{
  ChecksTable table;
  table.replace("test_a", two_rows(), true);
  table.replace("test_b", {{"a norm", "time", 3, 3.1, 0.1, "s"}}, true);
  return ChecksTable(table.text());
}

Sentences differences(const Rows &rows, bool complete = true)
{
  return committed().differences("test_a", rows, complete);
}

Rows changed(unsigned row, const std::function<void(ExternalCheck &)> &change)
{
  auto rows = two_rows();
  change(rows[row]);
  return rows;
}
} // namespace

TEST_CASE("a table agrees with the rows it was written from, and with other late digits", "[references]")
{
  CHECK(differences(two_rows()).empty());
  CHECK(committed().text() == ChecksTable(committed().text()).text());
  CHECK(differences(changed(0, [](auto &row) { row.obtained *= 1.0018; })).empty()); // a tenth of 2 %
  CHECK(differences(changed(0, [](auto &row) { row.expected *= 1 + 1e-6; })).empty());
  const auto  exact = Rows{{"a handbook", "exact", 2.43614e-6, 2.43614e-6, 1e-12, "m2"}};
  ChecksTable table;
  table.replace("test_a", exact, true);
  auto other = exact;
  other[0].expected = other[0].obtained = 2.43613e-6;
  CHECK(table.differences("test_a", other, true).empty());
}

TEST_CASE("every change of the table is named", "[references]")
{
  CHECK(differences(changed(0, [](auto &row) { row.obtained *= 1.003; })) ==
        Sentences{"'a handbook: force at 2 mm': '41.45 N' in the table, '41.5743 N' now"});
  CHECK(differences(changed(1, [](auto &row) { row.expected = 0.521; })) ==
        Sentences{"'a standard: return': '0.52' in the table, '0.521' now"});
  CHECK(differences(changed(1, [](auto &row) { row.relative_tolerance = 0.02; })) ==
        Sentences{"'a standard: return': '1 %' in the table, '2 %' now"});
  CHECK(differences(changed(0, [](auto &row) { row.unit = "kN"; })).size() == 1);
  auto rows = two_rows();
  rows.push_back({"a third", "thing", 1, 1, 0.1});
  CHECK(differences(rows) == Sentences{"'a third: thing' is new"});
  CHECK(committed().differences("test_b", {two_rows()[0]}, false) ==
        Sentences{"'a handbook: force at 2 mm': 'test_a' in the table, 'test_b' now"});
}

TEST_CASE("a row that was not made counts only in a complete run of its own program", "[references]")
{
  const Rows one{two_rows()[0]};
  CHECK(differences(one) == Sentences{"'a standard: return' is in the table, but was not made"});
  CHECK(differences(one, false).empty());
  CHECK(committed().differences("test_c", {}, true).empty());
}

TEST_CASE("writing changes what moved and drops what is gone, of one program alone", "[references]")
{
  auto table = committed();
  table.replace("test_a", changed(0, [](auto &row) { row.obtained *= 1.0001; }), true);
  CHECK(table.text() == committed().text());
  table.replace("test_a", {two_rows()[0]}, false);
  CHECK(table.text() == committed().text());
  const auto moved = changed(0, [](auto &row) { row.obtained *= 1.01; });
  table.replace("test_a", {moved[0]}, true);
  CHECK(table.differences("test_a", {moved[0]}, true).empty());
  CHECK(table.differences("test_b", {{"a norm", "time", 3, 3.1, 0.1, "s"}}, true).empty());
  CHECK(table.text().find("a standard") == std::string::npos);
}

TEST_CASE("unfit rows are refused", "[references]")
{
  const auto refused = [](const std::function<void(ExternalCheck &)> &change) {
    CHECK_THROWS_AS(validate(changed(0, change)[0]), std::logic_error);
  };
  refused([](auto &row) { row.expected = 0; });
  refused([](auto &row) { row.what = "a | b"; });
  refused([](auto &row) { row.source = ""; });
  refused([](auto &row) { row.relative_tolerance = 0; });
}
