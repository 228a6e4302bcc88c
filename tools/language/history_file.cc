// SPDX-License-Identifier: Apache-2.0
#include "tools/language/history_file.h"

#include <fmt/format.h>

#include <charconv>
#include <cmath>

namespace solemech::tools
{
namespace
{
/// Finite number in a field with blanks round it.
bool number_in(std::string_view field, double &value)
{
  const auto blank = " \t\r";
  const auto begin = field.find_first_not_of(blank);
  if (begin == std::string_view::npos)
    return false;
  field = field.substr(begin, field.find_last_not_of(blank) - begin + 1);
  const auto result = std::from_chars(field.data(), field.data() + field.size(), value);
  return result.ec == std::errc() && result.ptr == field.data() + field.size() && std::isfinite(value);
}
} // namespace

std::vector<std::pair<double, double>> read_history(const std::string &file, const std::string &text,
                                                    double scale, materials::Problems &problems)
{
  problems.add_source(file, text);
  std::vector<std::pair<double, double>> rows;
  std::string_view                       rest = text;
  for (int line = 1; !rest.empty(); ++line)
  {
    const auto end = rest.find('\n');
    auto       row = rest.substr(0, end);
    rest = end == std::string_view::npos ? std::string_view() : rest.substr(end + 1);
    if (row.find_first_not_of(" \t\r") == std::string_view::npos || row.front() == '#')
      continue;
    const auto comma = row.find(',');
    double     time = 0, value = 0;
    const bool good = comma != std::string_view::npos && number_in(row.substr(0, comma), time) &&
                      number_in(row.substr(comma + 1), value);
    if (!good && rows.empty() && (row.front() < '0' || row.front() > '9'))
      continue; // heading
    if (!good)
    {
      problems.add({file, line, 1, "", "this line is not two numbers with a comma between",
                    "Write time in s, a comma, and the value: 0.015,1.25"});
      return {};
    }
    if (time < 0 || (!rows.empty() && time <= rows.back().first))
    {
      problems.add({file, line, 1, "", fmt::format("time {:g} s does not follow the line before", time),
                    "Times must rise, from 0 on"});
      return {};
    }
    rows.emplace_back(time, scale * value);
  }
  if (rows.size() < 3)
    problems.add({file, 0, 0, "", "fewer than three lines of numbers", "Give a whole history"});
  return rows;
}
} // namespace solemech::tools
