// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_tree.h"

#include "tools/language/addresses.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/fields.h"
#include "tools/language/option_value.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>

#include <algorithm>

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

Change change_from_option(const std::string &option, Problems &problems)
{
  Change                change;
  constexpr std::size_t longest = 1000;
  if (option.size() > longest)
  {
    problems.add({"--set " + option.substr(0, 40) + "...", 0, 0, "", "this is too long",
                  "For example --set insert.thickness=\"2 mm\""});
    return change;
  }
  const auto file = "--set " + option;
  const auto equals = option.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == option.size())
  {
    problems.add({file, 0, 0, "", "this is not a change", "For example --set insert.thickness=\"2 mm\""});
    return change;
  }
  const auto trim = [](std::string text) {
    while (!text.empty() && text.back() == ' ')
      text.pop_back();
    return text.substr(std::min(text.find_first_not_of(' '), text.size()));
  };
  change.written = trim(option.substr(0, equals));
  const auto value = trim(option.substr(equals + 1));
  if (auto holder = option_value({value}, file))
  {
    change.holder = std::move(*holder);
    change.address = split_address(change.written);
  }
  else
    problems.add({file, 0, 0, "", "the value cannot be read", "For example --set insert.thickness=\"2 mm\""});
  return change;
}

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

void complete_tree(toml::table &tree, std::vector<Change> changes, SheetFolder &folder,
                   const std::vector<std::string> &known_materials, Problems &problems)
{
  std::vector<Change> later;
  if (auto *block = tree.get_as<toml::table>("change"))
  {
    collect_changes(*block, {}, later);
    tree.erase("change");
  }
  const auto takes_a_rig = [](const Change &change) {
    return change.address.size() == 1 && change.address.front() == "rig" && !change.is_of_series;
  };
  if (std::any_of(changes.begin(), changes.end(), takes_a_rig))
    leave_own_rig(tree, later);
  for (auto &change : changes)
  {
    if (change.address.empty())
      continue;
    auto *value = change.holder.get(value_key);
    if (change.address.size() > 1)
      later.push_back(std::move(change));
    else if (const auto &name = change.address.front();
             name == "stack" || name == "rig" || name == "accuracy" || name == "title" || name == "note")
      set_entry(tree, "", name, *value);
    else
      problems.add(
        problem_at(value->source(), change.written, "there is no such entry",
                   "Write block and entry, such as core.thickness, or one of stack, rig, accuracy"));
  }
  merge_file(tree, "stack", sections_of({BlockOf::stack}), folder, problems);
  merge_file(tree, "rig", sections_of({BlockOf::bench, BlockOf::slide, BlockOf::surroundings}), folder,
             problems);
  if (later.empty())
    return;
  Addresses addresses(tree, known_materials);
  for (auto &change : later)
    addresses.apply(change, problems);
}
} // namespace solemech::tools
