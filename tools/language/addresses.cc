// SPDX-License-Identifier: Apache-2.0
#include "tools/language/addresses.h"

#include "tools/language/fields.h"
#include "tools/language/schema.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <iterator>
#include <set>

namespace solemech::tools
{
using materials::nearest_name;
using materials::problem_at;
using materials::Problems;

namespace
{
toml::table *named_block(toml::table &tree, const char *list, const std::string &name)
{
  auto *blocks = tree.get_as<toml::array>(list);
  if (!blocks)
    return nullptr;
  for (auto &node : *blocks)
    if (auto *table = node.as_table())
      if (const auto *text = table->get_as<std::string>("name"); text && text->get() == name)
        return table;
  return nullptr;
}

std::vector<std::string> block_names(toml::table &tree, const char *list)
{
  std::vector<std::string> names;
  if (auto *blocks = tree.get_as<toml::array>(list))
    for (auto &node : *blocks)
      if (auto *table = node.as_table())
        if (const auto *text = table->get_as<std::string>("name"))
          names.push_back(text->get());
  return names;
}
} // namespace

std::vector<std::string> split_address(const std::string &address)
{
  std::vector<std::string> segments(1);
  for (const char c : address)
    if (c == '.')
      segments.emplace_back();
    else
      segments.back() += c;
  return segments;
}

void put(toml::table &table, std::string_view key, toml::node &node)
{
  node.visit([&](auto &concrete) { table.insert_or_assign(key, std::move(concrete)); });
}

void set_entry(toml::table &block, std::string_view section, std::string_view name, toml::node &value)
{
  const auto *entry = find_entry(section, name);
  if (entry && !entry->instead_of.empty())
    block.erase(entry->instead_of);
  for (const auto &other : entry_names(section))
    if (find_entry(section, other)->instead_of == name)
      block.erase(other);
  put(block, name, value);
}

Addresses::Addresses(toml::table &tree, const std::vector<std::string> &known_materials) : tree_(tree)
{
  for (const auto &section : single_blocks())
    for (const auto &entry : entry_names(section))
      add({section, "", section, entry}, fmt::format("{}.{}", section, entry));
  for (const auto &name : block_names(tree, "zone"))
    for (const auto &entry : entry_names("zone"))
      if (entry != "name")
        add({"zone", name, "zone", entry}, fmt::format("{}.{}", name, entry));
  for (const auto &name : block_names(tree, "layer"))
  {
    auto *layer = named_block(tree, "layer", name);
    for (const auto &entry : entry_names("layer"))
      if (entry != "name" && entry != "unit")
        add({"layer", name, "layer", entry}, fmt::format("{}.{}", name, entry));
    if (layer->get_as<toml::table>("unit"))
      for (const auto &entry : entry_names("layer.unit"))
        add({"layer", name, "layer.unit", entry}, fmt::format("{}.{}", name, entry));
  }
  std::set<std::string> names(known_materials.begin(), known_materials.end());
  for (const auto &name : block_names(tree, "material"))
    names.insert(name);
  for (const auto &name : names)
    for (const auto &entry : entry_names("material"))
      if (entry != "name" && entry != "from")
        add({"material", name, "material", entry}, fmt::format("{}.{}", name, entry));
}

std::vector<Addresses::Found> Addresses::entries_called(std::string_view name) const
{
  std::vector<Found> found;
  for (const auto &[address, target] : targets_)
  {
    const bool is_short = std::count(address.begin(), address.end(), '.') == 1;
    const bool is_other_rig = target.kind != "layer" && target.kind != "material" &&
                              target.section != "plug" && target.section != "surroundings" &&
                              !tree_.contains(target.section);
    if (is_short && target.kind != "material" && !is_other_rig && (name.empty() || target.entry == name))
      found.push_back({address, find_entry(target.section, target.entry)});
  }
  return found;
}

std::string Addresses::address_of(const PlacedText &name, const std::string &option, Problems &problems) const
{
  const auto slip = [&](std::string reason, std::string cure) {
    problems.add({option, name.line, name.column, name.text, std::move(reason), std::move(cure)});
    return std::string();
  };
  const auto found = entries_called(name.text);
  if (found.size() > 1)
  {
    std::vector<std::string> list;
    for (const auto &one : found)
      list.push_back(one.address);
    return slip("several entries have this name", fmt::format("Write {}", fmt::join(list, " or ")));
  }
  if (found.empty())
  {
    std::vector<std::string> known;
    for (const auto &one : entries_called(""))
      known.emplace_back(one.entry->name);
    const auto near = nearest_name(name.text, known);
    return slip("there is no such entry in this case", near.empty()
                                                         ? "Write block and entry, such as core.thickness"
                                                         : fmt::format("Did you mean \"{}\"?", near));
  }
  if (found.front().entry->dimension >= materials::Dimension::hardness)
    return slip("this entry is not a number", "A range needs an entry with a number, such as core.thickness");
  return found.front().address;
}

std::string Addresses::apply(Change &change, Problems &problems)
{
  auto      *value = change.holder.get(value_key);
  const auto address = change.called ? address_of(*change.called, *value->source().path, problems)
                                     : fmt::format("{}", fmt::join(change.address, "."));
  if (address.empty())
    return address;
  const auto found = targets_.equal_range(address);
  const auto n = std::distance(found.first, found.second);
  if (n == 1)
  {
    assign(found.first->second, *value);
    return address;
  }
  if (n == 0)
  {
    std::vector<std::string> all;
    for (const auto &[known, target] : targets_)
      all.push_back(known);
    problems.add(problem_at(value->source(), change.written, "there is no such entry", cure(address, all)));
    return "";
  }
  std::string list;
  for (auto it = found.first; it != found.second; ++it)
    list += (list.empty() ? "" : " or ") + it->second.full();
  problems.add(problem_at(value->source(), change.written, "this name is not unique", "Write " + list));
  return "";
}

void Addresses::add(const Target &target, const std::string &address)
{
  targets_.insert({address, target});
  if (!target.name.empty())
    targets_.insert({target.full(), target});
  if (target.section == "layer.unit")
    targets_.insert({fmt::format("layer.{}.unit.{}", target.name, target.entry), target});
}

/// The nearest address: among the entries of the named block, else of the block of the nearest name. A block
/// that is near to nothing is not guessed at: the layers there are help more.
std::string Addresses::cure(const std::string &address, const std::vector<std::string> &all) const
{
  const auto               dot = address.find('.');
  const auto               first = address.substr(0, dot);
  std::vector<std::string> here, firsts;
  for (const auto &known : all)
  {
    if (known.starts_with(first + "."))
      here.push_back(known);
    firsts.push_back(known.substr(0, known.find('.')));
  }
  auto near = nearest_name(address, here);
  if (near.empty() && !here.empty())
  {
    std::string list;
    for (const auto &known : here)
      list += (list.empty() ? "" : ", ") + known;
    return "Known: " + list;
  }
  if (const auto block = near.empty() ? nearest_name(first, firsts) : std::string(); !block.empty())
  {
    std::vector<std::string> there;
    std::copy_if(all.begin(), all.end(), std::back_inserter(there),
                 [&](const auto &known) { return known.starts_with(block + "."); });
    near = nearest_name(address, there);
    if (near.empty())
      near = block;
  }
  if (!near.empty())
    return fmt::format("Did you mean \"{}\"?", near);
  if (first == "unit" && !has_unit())
    return "No layer of this case has an air unit";
  const auto layers = block_names(tree_, "layer");
  return layers.empty() ? "Write block and entry, such as core.thickness"
                        : fmt::format("The layers of this case: {}", fmt::join(layers, ", "));
}

bool Addresses::has_unit() const
{
  return std::any_of(targets_.begin(), targets_.end(),
                     [](const auto &known) { return known.second.section == "layer.unit"; });
}

void Addresses::assign(const Target &target, toml::node &value)
{
  if (target.name.empty())
  {
    if (!tree_.get_as<toml::table>(target.section))
      tree_.insert_or_assign(target.section, toml::table());
    set_entry(*tree_.get_as<toml::table>(target.section), target.section, target.entry, value);
    return;
  }
  auto *block = named_block(tree_, target.kind.c_str(), target.name);
  if (!block && target.kind == "material") // a library material: an own one of that name starts from it
  {
    if (!tree_.get_as<toml::array>("material"))
      tree_.insert_or_assign("material", toml::array());
    tree_.get_as<toml::array>("material")
      ->push_back(toml::table{{"name", target.name}, {"from", target.name}});
    block = named_block(tree_, "material", target.name);
  }
  if (target.section == "layer.unit")
    block = block->get_as<toml::table>("unit");
  set_entry(*block, target.section, target.entry, value);
}
} // namespace solemech::tools
