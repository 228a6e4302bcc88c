// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sole_file.h"

#include "tools/language/nearest_name.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace solemech::tools
{
namespace fs = std::filesystem;
using materials::Problems;

bool is_sole_file(const std::string &text)
{
  Problems told_later; // whoever reads the file next
  return materials::parse_sheet(text, "", told_later).contains("outline");
}

fs::path find_sole(const std::string &name_or_path, const std::vector<fs::path> &case_roots)
{
  const fs::path given(name_or_path);
  if (given.extension() == ".toml" || given.has_parent_path())
    return given; // reading it tells what is wrong with it
  std::error_code error;
  for (const auto &root : case_roots)
    if (const auto path = root / "soles" / (name_or_path + ".toml"); fs::is_regular_file(path, error))
      return path;
  const auto names = SheetFolder(case_roots, {}).names("sole");
  const auto near = materials::nearest_name(name_or_path, names);
  Problems   problems;
  problems.add({name_or_path, 0, 0, "", "there is no sole of this name",
                near.empty() ? fmt::format("Prepared ones: {}; a file of your own needs its ending .toml",
                                           fmt::join(names, ", "))
                             : fmt::format("Did you mean \"{}\"?", near)});
  problems.throw_if_any();
  return {};
}
} // namespace solemech::tools
