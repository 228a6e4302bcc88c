// SPDX-License-Identifier: Apache-2.0
#include "tools/input/stack_text.h"

#include "materials/sheet.h"
#include "tools/input/case_tree.h"

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
  toml::table stack;
  for (const char *name : {"format", "title", "note", "layer", "lug", "plug", "material", "settled"})
    if (auto *node = tree.get(name))
      put(stack, name, *node);
  std::ostringstream out;
  out << toml::toml_formatter(stack) << '\n';
  return out.str();
}
} // namespace solemech::tools
