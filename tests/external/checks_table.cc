// SPDX-License-Identifier: Apache-2.0
#include "tests/external/checks_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <set>
#include <sstream>

namespace solemech::tests
{
namespace
{
constexpr double movement = 0.1;         ///< of the tolerance
constexpr double last_digit = 1e-5;      ///< of the value: one unit in the sixth printed digit
constexpr double tolerance_digit = 5e-3; ///< of the tolerance, printed with three digits

enum Column { source, what, expected, obtained, deviation, tolerance, verdict, test, n_columns };
using Cells = std::vector<std::string>;

std::string with_unit(double value, const std::string &unit)
{
  return fmt::format("{:.6g}", value) + (unit.empty() ? "" : " " + unit);
}

Cells cells(const std::string &program, const ExternalCheck &row)
{
  return {row.source,
          row.what,
          with_unit(row.expected, row.unit),
          with_unit(row.obtained, row.unit),
          row.deviation() < 1e-5 ? "< 0.001 %" : fmt::format("{:.2g} %", 100 * row.deviation()),
          fmt::format("{:.3g} %", 100 * row.relative_tolerance),
          row.holds() ? "holds" : "FAILS",
          program};
}

std::string trimmed(const std::string &text)
{
  const auto first = text.find_first_not_of(' '), last = text.find_last_not_of(' ');
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

/// Whether a cell says this value in this unit, but for `allowed`.
bool says(const std::string &cell, double value, const std::string &unit, double allowed)
{
  char        *rest = nullptr;
  const double printed = std::strtod(cell.c_str(), &rest);
  return trimmed(rest) == unit && std::abs(value - printed) <= allowed;
}

std::string name(const Cells &row)
{
  return fmt::format("'{}: {}'", row[source], row[what]);
}

/// Empty when a row of the table says what a test program made.
std::string difference(const Cells &old, const std::string &program, const ExternalCheck &row)
{
  const auto   now = cells(program, row);
  const double allowed = movement * row.relative_tolerance * std::abs(row.expected);
  const bool   same[] = {
      old[test] == program,
      says(old[expected], row.expected, row.unit, std::max(allowed, last_digit * std::abs(row.expected))),
      says(old[obtained], row.obtained, row.unit, std::max(allowed, last_digit * std::abs(row.obtained))),
      says(old[tolerance], 100 * row.relative_tolerance, "%", 100 * tolerance_digit * row.relative_tolerance)};
  const Column columns[] = {test, expected, obtained, tolerance};
  for (unsigned i = 0; i < std::size(same); ++i)
    if (!same[i])
      return fmt::format("{}: '{}' in the table, '{}' now", name(now), old[columns[i]], now[columns[i]]);
  return "";
}
} // namespace

ChecksTable::ChecksTable(const std::string &text)
{
  std::istringstream lines(text);
  for (std::string line; std::getline(lines, line);)
  {
    if (line.empty() || line[0] != '|' || line.starts_with("|--") || line.starts_with("| source "))
      continue;
    std::istringstream cells_of_line(line.substr(1));
    Cells              row(n_columns);
    for (auto &cell : row)
    {
      std::getline(cells_of_line, cell, '|');
      cell = trimmed(cell);
    }
    rows_[{row[source], row[what]}] = row;
  }
}

std::string ChecksTable::text() const
{
  std::string text =
    "# Outside checks\n\n"
    "Values from outside the project against what the program gives. Each test program compares "
    "its own rows and, run\n"
    "with SOLEMECH_WRITE_CHECKS=1, writes them. A value may move by a tenth of its tolerance before "
    "its row has to be\n"
    "written again. \"From memory\" marks a source that was not at hand when the check was "
    "written, \"no outside number\"\n"
    "a law or an identity that the program has to give back: that checks its arithmetic, not its "
    "physics.\n\n"
    "| source | quantity | expected | obtained | deviation | tolerance | verdict | test |\n"
    "|---|---|---|---|---|---|---|---|\n";
  for (const auto &[key, row] : rows_)
    text += fmt::format("| {} |\n", fmt::join(row, " | "));
  return text;
}

std::vector<std::string> ChecksTable::differences(const std::string                &program,
                                                  const std::vector<ExternalCheck> &rows, bool complete) const
{
  std::vector<std::string> found;
  std::set<Key>            made;
  for (const auto &row : rows)
  {
    const auto old = rows_.find({row.source, row.what});
    if (old == rows_.end())
      found.push_back(name(cells(program, row)) + " is new");
    else if (const auto text = difference(old->second, program, row); !text.empty())
      found.push_back(text);
    made.insert({row.source, row.what});
  }
  for (const auto &[key, row] : rows_)
    if (complete && row[test] == program && !made.contains(key))
      found.push_back(name(row) + " is in the table, but was not made");
  return found;
}

void ChecksTable::replace(const std::string &program, const std::vector<ExternalCheck> &rows, bool complete)
{
  std::set<Key> made;
  for (const auto &row : rows)
  {
    const Key  key{row.source, row.what};
    const auto old = rows_.find(key);
    if (old == rows_.end() || !difference(old->second, program, row).empty())
      rows_[key] = cells(program, row);
    made.insert(key);
  }
  std::erase_if(rows_, [&](const auto &entry) {
    return complete && entry.second[test] == program && !made.contains(entry.first);
  });
}
} // namespace solemech::tests
