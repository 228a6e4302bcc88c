// SPDX-License-Identifier: Apache-2.0
// Reads one block of a sheet, driven by the schema (entries.h): units, ranges, defaults, allowed words,
// unknown names.
#pragma once

#include "tools/language/entries.h"
#include "tools/language/nearest_name.h"
#include "tools/language/problem.h"

#include <toml++/toml.h>

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
/// Where a node stands: file, line and column, for a problem. A node made on the command line has no line.
Problem problem_at(const toml::source_region &region, std::string entry, std::string reason,
                   std::string cure);

/// Reads one block of a sheet by the schema. All slips go to `problems`; after a slip the value is NaN or
/// empty.
class Fields
{
public:
  /// `title` begins the entry names in messages ("core" gives "core.thickness"); "" gives bare names.
  Fields(const toml::table &table, std::string_view section, std::string title, std::span<const Entry> schema,
         Problems &problems);

  bool given(std::string_view name) const { return table_.contains(name); }

  /// Whether the block may have the entry.
  bool knows(std::string_view name) const;

  /// Value in SI; the default when not given; NaN when absent without default, or after a slip.
  double value(std::string_view name) const;

  /// A row of `n` values in SI: a list of them, or one that holds for all. Otherwise as value().
  std::vector<double> row(std::string_view name, std::size_t n) const;

  /// As value(), written to `target` only when given or when `with_default` holds.
  void take(double &target, std::string_view name, bool with_default = true) const;

  /// Word given instead of a value (or the default word), "" when a value stands there.
  std::string word(std::string_view name) const;

  std::string                 text(std::string_view name) const; ///< text, file or choice
  bool                        flag(std::string_view name) const;
  int                         count(std::string_view name) const;
  std::optional<GaugeReading> hardness(std::string_view name) const;

  const toml::table               *block(std::string_view name) const;  ///< sub-block or nullptr
  std::vector<const toml::table *> blocks(std::string_view name) const; ///< list of blocks
  std::vector<std::string>         texts(std::string_view name) const;  ///< list of texts or numbers as text

  /// Notes a problem at the entry (or at the head of the block when it is not given).
  void problem(std::string_view name, std::string reason, std::string cure) const;

  std::string        title(std::string_view name) const;
  const toml::table &table() const { return table_; }

private:
  const Entry &entry(std::string_view name) const;
  double       value_of(const toml::node &node, const Entry &entry) const;
  double checked(double value, const toml::node &node, const Entry &entry, const std::string &shown) const;
  void   problem_of(const toml::node &node, const Entry &entry, std::string reason, std::string cure) const;
  void   check_names() const;

  const toml::table     &table_;
  std::string_view       section_;
  std::string            title_;
  std::span<const Entry> schema_;
  Problems              &problems_;
};
} // namespace solemech::materials
