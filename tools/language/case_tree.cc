// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_tree.h"

#include "tools/language/addresses.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/fields.h"
#include "tools/language/layer_swaps.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

namespace solemech::tools
{
using materials::nearest_name;
using materials::problem_at;
using materials::Problems;

namespace
{
/// Takes over what `sheet` says and `tree` does not; blocks are merged entry by entry.
void merge(toml::table &tree, toml::table &sheet, const std::vector<std::string> &allowed,
           const std::string &kind, Problems &problems)
{
  for (auto &&[key, node] : sheet)
  {
    const std::string name(key.str());
    if (name == "format" || name == "title" || name == "note")
      continue;
    if (std::find(allowed.begin(), allowed.end(), name) == allowed.end())
    {
      problems.add(problem_at(
        key.source(), name, fmt::format("does not belong in a {} file", kind),
        fmt::format("Move it to the case file; a {} file holds {}", kind, fmt::join(allowed, ", "))));
      continue;
    }
    auto *mine = tree.get(name);
    if (!mine)
      put(tree, name, node);
    else if (mine->is_table() && node.is_table())
    {
      for (auto &&[entry_key, entry_node] : *node.as_table())
      {
        const std::string entry(entry_key.str());
        const auto       *known = find_entry(name, entry);
        const bool        replaced =
          known && !known->instead_of.empty() && mine->as_table()->contains(known->instead_of);
        if (!mine->as_table()->contains(entry) && !replaced)
          put(*mine->as_table(), entry, entry_node);
      }
    }
    else if (mine->is_array() && node.is_array() && name == "material")
      for (auto &element : *node.as_array())
        element.visit([&](auto &concrete) { mine->as_array()->push_back(std::move(concrete)); });
  }
}

void merge_file(toml::table &tree, const char *entry, const std::vector<std::string> &allowed,
                SheetFolder &folder, Problems &problems)
{
  const auto *node = tree.get(entry);
  if (!node)
    return;
  if (!node->is_string())
  {
    problems.add(
      problem_at(node->source(), entry, "is not a name", fmt::format("Write {} = \"name\"", entry)));
    return;
  }
  const auto name = node->as_string()->get();
  const auto found = folder.sheet(entry, name);
  if (found.file.state == materials::FileText::State::refused)
  {
    problems.add(
      problem_at(node->source(), entry, fmt::format("\"{}\": {}", name, found.file.reason), found.file.cure));
    return;
  }
  if (found.file.state == materials::FileText::State::missing)
  {
    const auto names = folder.names(entry);
    const auto near = nearest_name(name, names);
    problems.add(problem_at(node->source(), entry, fmt::format("there is no {} \"{}\"", entry, name),
                            !near.empty()   ? fmt::format("Did you mean \"{}\"?", near)
                            : names.empty() ? "Give the path of a file"
                                            : fmt::format("Known: {}", fmt::join(names, ", "))));
    return;
  }
  auto sheet = materials::parse_sheet(found.file.text, found.shown, problems);
  merge(tree, sheet, allowed, entry, problems);
  tree.erase(entry);
}

/// Another rig stands for the whole bench: what the case says of its own belongs to that one.
void leave_own_rig(toml::table &tree, std::vector<Change> &own_changes)
{
  const auto blocks = sections_of({BlockOf::bench, BlockOf::slide});
  for (const auto &block : blocks)
    tree.erase(block);
  std::erase_if(own_changes, [&](const Change &change) {
    return !change.address.empty() &&
           std::find(blocks.begin(), blocks.end(), change.address.front()) != blocks.end();
  });
  drop_rig_doubts(tree);
}

bool takes_a_rig(const Variant::value_type &one)
{
  const auto *change = std::get_if<Change>(&one);
  return change && !change->is_of_series && change->address == std::vector<std::string>{"rig"};
}

/// An entry at the top of a case file.
void set_top_entry(toml::table &tree, Change &change, Problems &problems)
{
  auto       *value = change.holder.get(value_key);
  const auto &name = change.address.front();
  if (name == "stack" || name == "rig" || name == "accuracy" || name == "title" || name == "note")
    set_entry(tree, "", name, *value);
  else
    problems.add(problem_at(value->source(), change.written, "there is no such entry",
                            "Write block and entry, such as core.thickness, or one of stack, rig, accuracy"));
}

/// [change] as a list: nested tables are addresses.
void collect_changes(toml::table &table, std::vector<std::string> address, std::vector<Change> &changes)
{
  for (auto &&[key, node] : table)
  {
    auto here = address;
    for (const auto &segment : split_address(std::string(key.str())))
      here.push_back(segment);
    if (auto *inner = node.as_table(); inner && !inner->is_inline())
      collect_changes(*inner, here, changes);
    else
    {
      Change change;
      change.address = here;
      change.written = fmt::format("change.{}", fmt::join(here, "."));
      put(change.holder, value_key, node);
      changes.push_back(std::move(change));
    }
  }
}
} // namespace

void drop_rig_doubts(toml::table &tree)
{
  auto *settled = tree.get_as<toml::array>("settled");
  if (!settled)
    return;
  for (std::size_t i = settled->size(); i-- > 0;)
    if (const auto *block = settled->get(i)->as_table(); block && names_the_rig(*block))
      settled->erase(settled->begin() + static_cast<std::ptrdiff_t>(i));
  if (settled->empty())
    tree.erase("settled");
}

std::string complete_tree(toml::table &tree, Variant variant, SheetFolder &folder,
                          const std::vector<std::string> &known_materials, Problems &problems)
{
  std::vector<Change> own;
  if (auto *block = tree.get_as<toml::table>("change"))
  {
    collect_changes(*block, {}, own);
    tree.erase("change");
  }
  if (std::any_of(variant.begin(), variant.end(), takes_a_rig))
    leave_own_rig(tree, own);
  Variant later;
  for (auto &change : own)
    later.emplace_back(std::move(change));
  for (auto &one : variant)
    if (auto *change = std::get_if<Change>(&one); change && change->address.size() == 1)
      set_top_entry(tree, *change, problems);
    else if (!change || !change->address.empty() || change->called)
      later.push_back(std::move(one));
  merge_file(tree, "stack", sections_of({BlockOf::stack}), folder, problems);
  merge_file(tree, "rig", sections_of({BlockOf::bench, BlockOf::slide, BlockOf::surroundings}), folder,
             problems);

  std::string              last;
  std::optional<Addresses> addresses;
  for (auto &one : later)
    if (const auto *swap = std::get_if<LayerSwap>(&one))
    {
      swap_layers(tree, *swap, problems);
      addresses.reset(); // the layers may have changed: the addresses are those of now
    }
    else
    {
      if (!addresses)
        addresses.emplace(tree, known_materials);
      last = addresses->apply(std::get<Change>(one), problems);
    }
  return last;
}
} // namespace solemech::tools
