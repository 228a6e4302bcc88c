// SPDX-License-Identifier: Apache-2.0
#include "tools/language/assumptions.h"

#include "tools/language/schema.h"

#include <fmt/format.h>

#include <map>

namespace solemech::tools
{
namespace
{
/// Entries that say something about the case, not about how it is listed.
bool is_physical(const materials::Entry &entry)
{
  return !entry.fallback.empty() && entry.fallback != materials::required &&
         entry.dimension != materials::Dimension::text;
}

/// Entries that say nothing as long as another entry of their block is left at its default.
const std::map<std::string_view, std::string_view> follows{
  {"base_friction", "base"},     {"rest", "hits"},
  {"discarded", "hits"},         {"base_stiffness", "base_mass"},
  {"base_damping", "base_mass"}, {"leak_diameter", "state"}};

bool says_something(std::string_view name, const toml::table &block)
{
  const auto leader = follows.find(name);
  return leader == follows.end() || block.contains(leader->second);
}

void add_missing(const toml::table &block, std::string_view section, const std::string &title,
                 std::vector<std::string> &list)
{
  for (const materials::Entry &entry : case_entries())
    if (entry.section == section && is_physical(entry) && !block.contains(entry.name) &&
        says_something(entry.name, block))
      list.push_back(fmt::format("{}{} {}", title, entry.name, entry.fallback));
}

/// Blocks that stand once in a file; those of a rig are assumed only when the case uses that rig.
void add_missing_of_blocks(const toml::table &tree, std::vector<std::string> &list)
{
  static const toml::table empty;
  for (const auto &section : single_blocks())
  {
    const auto *block = tree.get_as<toml::table>(section);
    const bool  is_given = block != nullptr;
    const bool  is_rig = section != "plug" && section != "surroundings";
    const bool  means_nothing = section == "plug" && tree.contains("lug");
    if (is_given || (!is_rig && !means_nothing))
      add_missing(is_given ? *block : empty, section, fmt::format("{}.", section), list);
  }
}
} // namespace

std::vector<std::string> assumed_entries(const toml::table &tree)
{
  std::vector<std::string> list;
  add_missing(tree, "", "", list);
  add_missing_of_blocks(tree, list);
  if (const auto *layers = tree.get_as<toml::array>("layer"))
    for (const toml::node &node : *layers)
      if (const auto *layer = node.as_table())
        if (const auto *unit = layer->get_as<toml::table>("unit"))
          add_missing(*unit, "layer.unit", (*layer)["name"].value_or(std::string("unit")) + ".unit.", list);
  return list;
}
} // namespace solemech::tools
