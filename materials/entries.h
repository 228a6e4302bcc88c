// SPDX-License-Identifier: Apache-2.0
// One line of a schema table per entry of a sheet, and the reader that is driven by it: units, ranges, defaults,
// allowed words, unknown names. The same lines give the reference page, so an entry is declared exactly once.
#pragma once

#include "materials/problem.h"
#include "materials/quantity.h"

#include <toml++/toml.h>

#include <limits>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// Allowed range in SI.
struct Range
{
  double lowest    = -std::numeric_limits<double>::infinity();
  double highest   = std::numeric_limits<double>::infinity();
  bool   above_lowest = false;  ///< the lowest value itself is not allowed
};
constexpr Range any_value{};
constexpr Range at_least(double lowest) { return {lowest}; }
constexpr Range above(double lowest) { return {lowest, std::numeric_limits<double>::infinity(), true}; }
constexpr Range within(double lowest, double highest) { return {lowest, highest}; }
constexpr Range above_to(double lowest, double highest) { return {lowest, highest, true}; }

/// Marks an entry that must be given; an empty default means: may be left out.
constexpr std::string_view required = "required";

/// One entry of a sheet.
struct Entry
{
  std::string_view section;   ///< where it stands, e.g. "drop" or "layer.unit"; "" at the top of the file
  std::string_view name;
  Dimension        dimension;
  Range            range;     ///< in SI; of hardness in points
  std::string_view fallback;  ///< default as a person would write it, `required`, or ""
  std::string_view meaning;   ///< one sentence
  std::string_view words = "";      ///< allowed words, '|' between them (for a choice, or instead of a value)
  std::string_view instead_of = ""; ///< the other entry that says the same: only one of them may be given
};

/// The words of an entry as a list.
std::vector<std::string> word_list(const Entry &entry);

/// Range for people: "0.2 mm to 200 mm", "above 0", "".
std::string range_text(const Entry &entry);

/// Where a node stands: file, line and column, for a problem. A node made on the command line has no line.
Problem problem_at(const toml::source_region &region, std::string entry, std::string reason, std::string cure);

/// Reads one block of a sheet by the schema. All slips go to `problems`; after a slip the value is NaN or empty.
class Fields
{
public:
  /// `title` begins the entry names in messages ("core" gives "core.thickness"); "" gives bare names.
  Fields(const toml::table &table, std::string_view section, std::string title, std::span<const Entry> schema,
         Problems &problems);

  bool given(std::string_view name) const { return table_.contains(name); }

  /// Value in SI; the default when not given; NaN when absent without default, or after a slip.
  double value(std::string_view name) const;

  /// As value(), written to `target` only when given or when `with_default` holds.
  void take(double &target, std::string_view name, bool with_default = true) const;

  /// Word given instead of a value (or the default word), "" when a value stands there.
  std::string word(std::string_view name) const;

  std::string text(std::string_view name) const;    ///< text, file or choice
  bool        flag(std::string_view name) const;
  int         count(std::string_view name) const;
  std::optional<GaugeReading> hardness(std::string_view name) const;

  const toml::table *block(std::string_view name) const;                ///< sub-block or nullptr
  std::vector<const toml::table *> blocks(std::string_view name) const; ///< list of blocks
  std::vector<std::string> texts(std::string_view name) const;          ///< list of texts or numbers as text

  /// Notes a problem at the entry (or at the head of the block when it is not given).
  void problem(std::string_view name, std::string reason, std::string cure) const;

  std::string title(std::string_view name) const;
  const toml::table &table() const { return table_; }

private:
  const Entry &entry(std::string_view name) const;
  double checked(double value, const Entry &entry, const std::string &shown) const;
  void   check_names() const;

  const toml::table     &table_;
  std::string_view       section_;
  std::string            title_;
  std::span<const Entry> schema_;
  Problems              &problems_;
};
} // namespace solemech::materials
