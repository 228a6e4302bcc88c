// SPDX-License-Identifier: Apache-2.0
// A sheet read for the index only: words as written, nothing checked. `solemech check` is for that.
#include "tools/answers/book/book_entries.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <utility>

namespace solemech::book
{
namespace
{
std::string text_of(const toml::node *node)
{
  if (!node)
    return {};
  if (const auto text = node->value<std::string>())
    return *text;
  if (const auto number = node->value<double>())
    return fmt::format("{:g}", *number);
  return {};
}

std::string text_of(const toml::table &table, const char *key)
{
  return text_of(table.get(key));
}

/// Entries of a reading under which it is another number, and the word before them.
constexpr std::pair<const char *, const char *> conditions[] = {
  {"height", "from"}, {"mass", "under"}, {"seconds", "after"}, {"hours", "after"}};

/// @param drop  the sheet's own bench, empty when it names one
Measured measured(const toml::table &table, const toml::table &drop)
{
  Measured reading;
  reading.name = text_of(table, "kind");
  for (const char *key : {"layer", "where", "on"})
    if (const auto place = text_of(table, key); !place.empty())
    {
      reading.name += " of " + place;
      break;
    }
  // Readings of other falls, weights or times are other numbers: they are never averaged.
  for (const auto &[key, word] : conditions)
    if (const auto value = text_of(table, key); !value.empty() && value != text_of(drop, key))
    {
      reading.name += fmt::format(" {} {}", word, value);
      reading.is_elsewhere = true;
    }
  for (const char *key : {"values", "value", "depth", "left", "file"})
    if (const auto *node = table.get(key))
    {
      if (const auto *list = node->as_array())
        for (const auto &each : *list)
          reading.values.push_back(text_of(&each));
      else
        reading.values.push_back(text_of(node));
      break;
    }
  return reading;
}

std::string stack_of(const toml::table &table)
{
  std::vector<std::string> layers;
  if (const auto *list = table["layer"].as_array())
    for (const auto &each : *list)
      if (const auto *layer = each.as_table())
        layers.push_back(fmt::format("{} {} {}", text_of(*layer, "name"), text_of(*layer, "material"),
                                     text_of(*layer, "thickness")));
  return layers.empty() ? text_of(table, "stack") : fmt::format("{}", fmt::join(layers, ", "));
}
} // namespace

std::string Measured::text() const
{
  return fmt::format("{}{}{}", name, values.empty() ? "" : " ", fmt::join(values, ", "));
}

std::optional<Sheet> sheet_entry(const toml::table &table, const std::filesystem::path &file)
{
  // A case: readings, a pair of its own, or a stack on a rig. Rig, stack and yardstick files are parts of it.
  const bool is_sheet = table.contains("reading") || table.contains("pair") ||
                        ((table.contains("stack") || table.contains("layer")) && table.contains("rig"));
  if (!is_sheet || table.contains("category"))
    return std::nullopt;
  Sheet sheet;
  sheet.file = file;
  sheet.title = text_of(table, "title");
  if (const auto *pair = table["pair"].as_table())
  {
    sheet.pair = text_of(*pair, "label");
    sheet.part = text_of(*pair, "part");
  }
  else
  {
    sheet.pair = text_of(table, "pair");
    sheet.part = text_of(table, "part");
  }
  sheet.stack = stack_of(table);
  const toml::table nothing;
  const auto       *drop = table["drop"].as_table();
  if (const auto *list = table["reading"].as_array())
    for (const auto &each : *list)
      if (const auto *reading = each.as_table())
        sheet.readings.push_back(measured(*reading, drop ? *drop : nothing));
  return sheet;
}
} // namespace solemech::book
