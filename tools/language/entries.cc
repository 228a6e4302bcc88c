// SPDX-License-Identifier: Apache-2.0
#include "tools/language/entries.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::materials
{
std::vector<std::string> word_list(const Entry &entry)
{
  std::vector<std::string> list;
  std::string_view         rest = entry.words;
  while (!rest.empty())
  {
    const auto bar = rest.find('|');
    list.emplace_back(rest.substr(0, bar));
    rest = bar == std::string_view::npos ? std::string_view() : rest.substr(bar + 1);
  }
  return list;
}

std::string range_text(const Entry &entry, std::string_view unit)
{
  const auto print = [&](double value) {
    return entry.dimension == Dimension::hardness ? fmt::format("{:g}", value)
                                                  : quantity_text(value, entry.dimension, unit);
  };
  const bool below = std::isfinite(entry.range.lowest), over = std::isfinite(entry.range.highest);
  if (below && over)
    return fmt::format("{}{} to {}", entry.range.above_lowest ? "above " : "", print(entry.range.lowest),
                       print(entry.range.highest));
  if (below)
    return fmt::format("{} {}", entry.range.above_lowest ? "above" : "at least", print(entry.range.lowest));
  return over ? fmt::format("at most {}", print(entry.range.highest)) : std::string();
}
} // namespace solemech::materials
