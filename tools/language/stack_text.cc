// SPDX-License-Identifier: Apache-2.0
#include "tools/language/stack_text.h"

#include "tools/language/case_tree.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"

#include <sstream>

namespace solemech::tools
{
std::string stack_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  materials::Problems problems;
  SheetFolder         folder(options.case_roots, std::filesystem::path(file).parent_path(), options.copies);
  auto                tree = materials::parse_sheet(text, file, problems);
  complete_tree(tree, {}, folder, options.library.names, problems);
  problems.throw_if_any();
  drop_rig_doubts(tree);
  toml::table stack;
  auto        names = sections_of({BlockOf::stack});
  names.insert(names.end(), {"format", "title", "note"});
  for (const auto &name : names)
    if (auto *node = tree.get(name))
      put(stack, name, *node);
  std::ostringstream out;
  out << toml::toml_formatter(stack) << '\n';
  return out.str();
}

std::string bench_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  materials::Problems problems;
  SheetFolder         folder(options.case_roots, std::filesystem::path(file).parent_path(), options.copies);
  auto                tree = materials::parse_sheet(text, file, problems);
  std::vector<Change> changes;
  for (const auto &option : options.overrides)
    changes.push_back(change_from_option(option, problems));
  complete_tree(tree, std::move(changes), folder, options.library.names, problems);
  problems.throw_if_any();
  toml::table bench;
  for (const auto &block : sections_of({BlockOf::bench, BlockOf::slide, BlockOf::surroundings}))
    if (auto *node = tree.get(block))
      put(bench, block, *node);
  std::ostringstream out;
  out << toml::toml_formatter(bench) << '\n';
  return out.str();
}
} // namespace solemech::tools
