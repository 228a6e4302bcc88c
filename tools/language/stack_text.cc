// SPDX-License-Identifier: Apache-2.0
#include "tools/language/stack_text.h"

#include "tools/language/addresses.h"
#include "tools/language/case_tree.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/language/swap_option.h"

#include <sstream>

namespace solemech::tools
{
namespace
{
/// The case with the files that it names merged in and all changes made, those of the command line too.
toml::table complete(toml::table tree, const std::string &file, const ReadOptions &options,
                     materials::Problems &problems)
{
  Variant variant;
  for (const auto &option : options.overrides)
    variant.emplace_back(change_from_option(option, problems));
  SheetFolder folder(options.case_roots, std::filesystem::path(file).parent_path(), options.copies);
  complete_tree(tree, std::move(variant), folder, options.library.names, problems);
  problems.throw_if_any();
  return tree;
}

/// Some blocks and entries of it, those that are there.
std::string part_of(toml::table &tree, const std::vector<std::string> &names)
{
  toml::table part;
  for (const auto &name : names)
    if (auto *node = tree.get(name))
      put(part, name, *node);
  std::ostringstream out;
  out << toml::toml_formatter(part) << '\n';
  return out.str();
}
} // namespace

std::string stack_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  materials::Problems problems;
  auto                tree = complete(materials::parse_sheet(text, file, problems), file, options, problems);
  drop_rig_doubts(tree);
  auto names = sections_of({BlockOf::stack});
  names.insert(names.end(), {"format", "title", "note"});
  return part_of(tree, names);
}

std::string bench_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  materials::Problems problems;
  auto                tree = complete(materials::parse_sheet(text, file, problems), file, options, problems);
  return part_of(tree, sections_of({BlockOf::bench, BlockOf::slide, BlockOf::surroundings}));
}

std::string changed_stack_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  materials::Problems problems;
  auto                tree = materials::parse_sheet(text, file, problems);
  if (!tree.contains("stack") && !tree.contains("change") && options.overrides.empty())
    return "";
  tree = complete(std::move(tree), file, options, problems);
  return part_of(tree, sections_of({BlockOf::stack}));
}
} // namespace solemech::tools
