// SPDX-License-Identifier: Apache-2.0
// One line of a schema table per entry of a sheet. Reading (fields.h), checking, suggestions and the
// reference page follow these lines, so that an entry is declared exactly once.
#pragma once

#include "tools/language/quantity.h"

#include <limits>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// Allowed range in SI.
struct Range
{
  double lowest = -std::numeric_limits<double>::infinity();
  double highest = std::numeric_limits<double>::infinity();
  bool   above_lowest = false; ///< the lowest value itself is not allowed
};
constexpr Range any_value{};
constexpr Range at_least(double lowest)
{
  return {lowest};
}
constexpr Range above(double lowest)
{
  return {lowest, std::numeric_limits<double>::infinity(), true};
}
constexpr Range within(double lowest, double highest)
{
  return {lowest, highest};
}
constexpr Range above_to(double lowest, double highest)
{
  return {lowest, highest, true};
}

/// Marks an entry that must be given; an empty default means: may be left out.
constexpr std::string_view required = "required";

/// One entry of a sheet.
struct Entry
{
  std::string_view section; ///< where it stands, e.g. "drop" or "layer.unit"; "" at the top of the file
  std::string_view name;
  Dimension        dimension;
  Range            range;           ///< in SI; of hardness in points
  std::string_view fallback;        ///< default as a person would write it, `required`, or ""
  std::string_view meaning;         ///< one sentence
  std::string_view words = "";      ///< allowed words, '|' between them (for a choice, or instead of a value)
  std::string_view instead_of = ""; ///< the other entry that says the same: only one of them may be given
};

/// The words of an entry as a list.
std::vector<std::string> word_list(const Entry &entry);

/// Range for people: "0.2 mm to 200 mm", "above 0", ""; in a unit of the entry's kind, or the usual one.
std::string range_text(const Entry &entry, std::string_view unit = {});
} // namespace solemech::materials
