// SPDX-License-Identifier: Apache-2.0
#include "tools/language/history_file.h"

#include "tools/language/csv_rows.h"

#include <fmt/format.h>

namespace solemech::tools
{
std::vector<std::pair<double, double>> read_history(const std::string &file, const std::string &text,
                                                    double scale, materials::Problems &problems)
{
  problems.add_source(file, text);
  std::vector<std::pair<double, double>> rows;
  CsvRows                                lines(text);
  while (const auto row = lines.next())
  {
    const auto fields = csv_fields(row->text);
    const auto time = number_in(fields[0].text);
    const auto value = fields.size() == 2 ? number_in(fields[1].text) : std::nullopt;
    if (!(time && value) && rows.empty() && (row->text.front() < '0' || row->text.front() > '9'))
      continue; // heading
    if (!(time && value))
    {
      problems.add({file, row->line, 1, "", "this line does not hold two numbers with a comma between them",
                    "Write the time in s, a comma, and the value, for example 0.015,1.25"});
      return {};
    }
    if (*time < 0 || (!rows.empty() && *time <= rows.back().first))
    {
      problems.add({file, row->line, 1, "",
                    fmt::format("time {:g} s is not later than on the line before", *time),
                    "Times must increase, starting at 0"});
      return {};
    }
    rows.emplace_back(*time, scale * *value);
  }
  if (rows.size() < 3)
    problems.add({file, 0, 0, "", "there are fewer than three lines of numbers", "Give the whole history"});
  return rows;
}
} // namespace solemech::tools
