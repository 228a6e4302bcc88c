// SPDX-License-Identifier: Apache-2.0
#include "tests/external/checks_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdlib>
#include <map>
#include <sstream>
#include <utility>

namespace solemech::tests
{
namespace
{
constexpr double slack_of_tolerance = 0.05, last_digit = 1e-5;

enum Column { source, what, expected, obtained, deviation, tolerance, verdict, n_columns };
using Cells = std::array<std::string, n_columns>;
using Key = std::pair<std::string, std::string>;

std::string with_unit(double value, const std::string &unit)
{
  return fmt::format("{:.6g}", value) + (unit.empty() ? "" : " " + unit);
}

Cells cells(const ExternalCheck &row)
{
  return {row.source,
          row.what,
          with_unit(row.expected, row.unit),
          with_unit(row.obtained, row.unit),
          row.deviation() < 1e-5 ? "< 0.001 %" : fmt::format("{:.2g} %", 100 * row.deviation()),
          fmt::format("{:.3g} %", 100 * row.relative_tolerance),
          row.holds() ? "holds" : "FAILS"};
}

std::string trimmed(const std::string &text)
{
  const auto first = text.find_first_not_of(' '), last = text.find_last_not_of(' ');
  return first == std::string::npos ? "" : text.substr(first, last - first + 1);
}

/// Rows of a markdown table, heading and rule left out.
std::map<Key, Cells> parsed(const std::string &text)
{
  std::map<Key, Cells> rows;
  std::istringstream   lines(text);
  for (std::string line; std::getline(lines, line);)
  {
    if (line.empty() || line[0] != '|' || line.starts_with("|--") || line.starts_with("| source "))
      continue;
    std::istringstream cells_of_line(line.substr(1));
    Cells              row;
    for (auto &cell : row)
    {
      std::getline(cells_of_line, cell, '|');
      cell = trimmed(cell);
    }
    rows[{row[source], row[what]}] = row;
  }
  return rows;
}
} // namespace

std::string checks_table(const std::vector<ExternalCheck> &rows)
{
  std::string text = "# Outside checks\n\n"
                     "Values from outside the project against what the program gives. Written by "
                     "`external_checks --write` from the\n"
                     "rows that the tests leave; a test compares it with every run. \"From memory\" marks a "
                     "source that was not at\n"
                     "hand when the check was written.\n\n"
                     "| source | quantity | expected | obtained | deviation | tolerance | verdict |\n"
                     "|---|---|---|---|---|---|---|\n";
  for (const auto &row : rows)
    text += fmt::format("| {} |\n", fmt::join(cells(row), " | "));
  return text;
}

std::vector<std::string> table_differences(const std::string                &committed,
                                           const std::vector<ExternalCheck> &rows)
{
  std::vector<std::string> differences;
  auto                     old_rows = parsed(committed);
  for (const auto &row : rows)
  {
    const std::string name = fmt::format("'{}: {}'", row.source, row.what);
    const auto        found = old_rows.find({row.source, row.what});
    if (!row.holds())
      differences.push_back(fmt::format("{} does not hold: expected {}, obtained {}", name,
                                        with_unit(row.expected, row.unit),
                                        with_unit(row.obtained, row.unit)));
    if (found == old_rows.end())
    {
      differences.push_back(name + " is new: write the table again");
      continue;
    }
    const Cells now = cells(row), &old = found->second;
    for (const Column column : {expected, tolerance, verdict})
      if (now[column] != old[column])
        differences.push_back(fmt::format("{}: '{}' in the table, '{}' now", name, old[column], now[column]));
    char        *rest = nullptr;
    const double before = std::strtod(old[obtained].c_str(), &rest);
    const double allowed = std::max(slack_of_tolerance * row.relative_tolerance * std::abs(row.expected),
                                    last_digit * std::abs(row.obtained));
    if (trimmed(rest) != row.unit || !(std::abs(row.obtained - before) <= allowed))
      differences.push_back(
        fmt::format("{}: obtained {} in the table, {} now", name, old[obtained], now[obtained]));
    old_rows.erase(found);
  }
  for (const auto &[key, row] : old_rows)
    differences.push_back(
      fmt::format("'{}: {}' is in the table, but no test made it", key.first, key.second));
  return differences;
}
} // namespace solemech::tests
