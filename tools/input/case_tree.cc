// SPDX-License-Identifier: Apache-2.0
#include "tools/input/case_tree.h"

#include "materials/entries.h"
#include "materials/sheet.h"
#include "tools/input/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>

namespace solemech::tools
{
namespace fs = std::filesystem;
using materials::nearest_name;
using materials::problem_at;
using materials::Problems;

namespace
{
constexpr std::string_view value_key = "value";

/// Moves a node under a key; a moved node keeps its position, a copied one would not.
void put(toml::table &table, std::string_view key, toml::node &node)
{
  node.visit([&](auto &concrete) { table.insert_or_assign(key, std::move(concrete)); });
}

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

/// Sets an entry; the entry that says the same, and several terms where one is set, give way.
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

/// Where a change may go: a block (made when `create` says so) and an entry in it.
struct Target
{
  std::string  kind;     ///< "layer", "material", or the section itself
  std::string  name;     ///< of the layer or material
  std::string  section;  ///< schema section
  std::string  entry;
  std::string  full() const { return name.empty() ? section + "." + entry : kind + "." + name + "." + entry; }
};

class Addresses
{
public:
  Addresses(toml::table &tree, const std::vector<std::string> &known_materials)
    : tree_(tree)
  {
    for (const char *section : {"drop", "ball", "press", "plug", "surroundings"})
      for (const auto &entry : entry_names(section))
        add({section, "", section, entry}, fmt::format("{}.{}", section, entry));
    for (const auto &name : block_names(tree, "layer"))
    {
      auto      *layer = named_block(tree, "layer", name);
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

  void apply(Change &change, Problems &problems)
  {
    auto      *value   = change.holder.get(value_key);
    const auto address = fmt::format("{}", fmt::join(change.address, "."));
    const auto found   = targets_.equal_range(address);
    const auto n       = std::distance(found.first, found.second);
    if (n == 0)
    {
      std::vector<std::string> all;
      for (const auto &[known, target] : targets_)
        all.push_back(known);
      problems.add(problem_at(value->source(), change.written, "there is no such entry", cure(address, all)));
    }
    else if (n > 1)
    {
      std::string list;
      for (auto it = found.first; it != found.second; ++it)
        list += (list.empty() ? "" : " or ") + it->second.full();
      problems.add(problem_at(value->source(), change.written, "the name stands for several things",
                              "Write " + list));
    }
    else
      assign(found.first->second, *value);
  }

private:
  void add(const Target &target, const std::string &address)
  {
    targets_.insert({address, target});
    if (!target.name.empty())
      targets_.insert({target.full(), target});
    if (target.section == "layer.unit")
      targets_.insert({fmt::format("layer.{}.unit.{}", target.name, target.entry), target});
  }

  /// The nearest address: among the entries of the named block first, then everywhere.
  std::string cure(const std::string &address, const std::vector<std::string> &all) const
  {
    const auto  dot   = address.find('.');
    const auto  first = address.substr(0, dot);
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
    if (near.empty())
      near = nearest_name(address, all);
    if (near.empty())
      near = nearest_name(first, firsts);
    if (!near.empty())
      return fmt::format("Did you mean \"{}\"?", near);
    std::set<std::string> blocks(firsts.begin(), firsts.end());
    blocks.erase("layer");
    blocks.erase("material");
    return fmt::format("An address begins with one of {}", fmt::join(blocks, ", "));
  }

  void assign(const Target &target, toml::node &value)
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
      tree_.get_as<toml::array>("material")->push_back(toml::table{{"name", target.name}, {"from", target.name}});
      block = named_block(tree_, "material", target.name);
    }
    if (target.section == "layer.unit")
      block = block->get_as<toml::table>("unit");
    set_entry(*block, target.section, target.entry, value);
  }

  toml::table                          &tree_;
  std::multimap<std::string, Target>    targets_;
};

/// Takes over what `sheet` says and `tree` does not; blocks are merged entry by entry.
void merge(toml::table &tree, toml::table &sheet, const std::vector<std::string> &allowed, const std::string &kind,
           Problems &problems)
{
  for (auto &&[key, node] : sheet)
  {
    const std::string name(key.str());
    if (name == "format" || name == "title" || name == "note")
      continue;
    if (std::find(allowed.begin(), allowed.end(), name) == allowed.end())
    {
      problems.add(problem_at(key.source(), name, fmt::format("does not belong into a {} file", kind),
                              fmt::format("Move it to the case file; a {} file holds {}", kind,
                                          fmt::join(allowed, ", "))));
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
        const bool replaced = known && !known->instead_of.empty() && mine->as_table()->contains(known->instead_of);
        if (!mine->as_table()->contains(entry) && !replaced)
          put(*mine->as_table(), entry, entry_node);
      }
    }
    else if (mine->is_array() && node.is_array() && name == "material")
      for (auto &element : *node.as_array())
        element.visit([&](auto &concrete) { mine->as_array()->push_back(std::move(concrete)); });
  }
}

void merge_file(toml::table &tree, const char *entry, const char *kind, const std::vector<std::string> &allowed,
                SheetFolder &folder, Problems &problems)
{
  const auto *node = tree.get(entry);
  if (!node)
    return;
  if (!node->is_string())
  {
    problems.add(problem_at(node->source(), entry, "is not a name", fmt::format("Write {} = \"name\"", entry)));
    return;
  }
  const auto name = node->as_string()->get();
  const auto path = folder.find(name, kind);
  if (path.empty())
  {
    const auto names = folder.names(kind);
    const auto near  = nearest_name(name, names);
    problems.add(problem_at(node->source(), entry, fmt::format("there is no {} \"{}\"", entry, name),
                            !near.empty() ? fmt::format("Did you mean \"{}\"?", near) :
                            names.empty() ? "Give the path of a file" :
                                            fmt::format("Known: {}", fmt::join(names, ", "))));
    return;
  }
  const auto &text = folder.text(path, problems);
  if (text.empty())
    return;
  auto sheet = materials::parse_sheet(text, path.string(), problems);
  merge(tree, sheet, allowed, entry, problems);
  tree.erase(entry);
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

std::filesystem::path SheetFolder::find(const std::string &name, const std::string &kind) const
{
  std::error_code error;
  const auto      usable = [&](const fs::path &path) { return fs::is_regular_file(path, error); };
  if (name.empty() || name.size() > 1000 || name.find('\0') != std::string::npos)
    return {};
  const fs::path given(name);
  if (given.extension() == ".toml" || given.has_parent_path())
  {
    const auto beside = given.is_absolute() ? given : own_ / given;
    return usable(beside) ? beside : fs::path();
  }
  std::vector<fs::path> folders = {own_, own_ / kind};
  for (const auto &root : case_roots_)
    folders.push_back(root / kind);
  for (const auto &folder : folders)
    if (const auto path = folder / (name + ".toml"); usable(path))
      return path;
  return {};
}

std::vector<std::string> SheetFolder::names(const std::string &kind) const
{
  std::set<std::string> names;
  std::error_code       error;
  for (const auto &root : case_roots_)
    for (fs::directory_iterator it(root / kind, error), end; it != end; it.increment(error))
      if (it->path().extension() == ".toml")
        names.insert(it->path().stem().string());
  return {names.begin(), names.end()};
}

std::filesystem::path SheetFolder::data_file(const std::string &name) const
{
  std::error_code error;
  if (name.empty() || name.size() > 1000 || name.find('\0') != std::string::npos)
    return {};
  const auto path = fs::path(name).is_absolute() ? fs::path(name) : own_ / name;
  return fs::is_regular_file(path, error) ? path : fs::path();
}

const std::string &SheetFolder::text(const std::filesystem::path &path, Problems &problems)
{
  const auto known = texts_.find(path);
  if (known != texts_.end())
    return known->second;
  return texts_[path] = materials::read_sheet_text(path, problems);
}

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
  Change     change;
  const auto file   = "--set " + option;
  const auto equals = option.find('=');
  if (equals == std::string::npos || equals == 0 || equals + 1 == option.size())
  {
    problems.add({file, 0, 0, "", "this is no change", "Write for instance --set insert.thickness=\"2 mm\""});
    return change;
  }
  const auto trim = [](std::string text) {
    while (!text.empty() && text.back() == ' ')
      text.pop_back();
    return text.substr(std::min(text.find_first_not_of(' '), text.size()));
  };
  change.written = trim(option.substr(0, equals));
  const auto value = trim(option.substr(equals + 1));
  const auto parsed = [&](const std::string &text) {
    try
    {
      change.holder = toml::parse(fmt::format("{} = {}", value_key, text), file);
      return change.holder.size() == 1;
    }
    catch (const toml::parse_error &)
    {
      return false;
    }
  };
  std::string quoted = "\"";
  bool        plain  = true;
  for (const char c : value)
  {
    const auto byte = static_cast<unsigned char>(c);
    plain           = plain && byte >= 0x20 && byte < 0x7f;
    if (c == '"' || c == '\\')
      quoted += '\\';
    quoted += c;
  }
  quoted += '"';
  // Numbers, true/false, lists and quoted texts as they are; anything else is text that the shell unquoted.
  // Characters outside ASCII go only into quotes (the parser does not bear them elsewhere).
  if ((plain && parsed(value)) || parsed(quoted))
    change.address = split_address(change.written);
  else
    problems.add({file, 0, 0, "", "the value cannot be read", "Write for instance --set insert.thickness=\"2 mm\""});
  return change;
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
      problems.add(problem_at(value->source(), change.written, "there is no such entry",
                              "Write block and entry, such as core.thickness, or one of stack, rig, accuracy"));
  }
  merge_file(tree, "stack", "stacks", {"layer", "material", "plug"}, folder, problems);
  merge_file(tree, "rig", "rigs", {"drop", "ball", "press", "surroundings"}, folder, problems);
  if (later.empty())
    return;
  Addresses addresses(tree, known_materials);
  for (auto &change : later)
    addresses.apply(change, problems);
}
} // namespace solemech::tools
