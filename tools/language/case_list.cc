// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_file.h"
#include "tools/language/nearest_name.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace solemech::tools
{
namespace fs = std::filesystem;
using materials::Problems;

namespace
{
/// A group of cases, not one of the folders of what cases use.
bool holds_cases(const fs::directory_entry &group)
{
  std::error_code error;
  const auto      folder = group.path().filename();
  return group.is_directory(error) && folder != "stacks" && folder != "rigs" && folder != "sheets" &&
         folder != "soles";
}
} // namespace

std::vector<CaseHeading> case_headings(const std::vector<fs::path> &case_roots)
{
  std::vector<CaseHeading> headings;
  std::error_code          error;
  for (const auto &root : case_roots)
    for (fs::directory_iterator group(root, error), end; group != end; group.increment(error))
    {
      if (!holds_cases(*group))
        continue;
      for (fs::directory_iterator it(group->path(), error); it != end; it.increment(error))
      {
        if (it->path().extension() != ".toml")
          continue;
        Problems   problems;
        const auto text = materials::read_sheet_text(it->path(), problems);
        const auto tree = materials::parse_sheet(text, it->path().string(), problems);
        if (!problems.empty())
          continue;
        headings.push_back({it->path(), it->path().stem().string(), tree["title"].value_or(std::string()),
                            tree["group"].value_or(std::string("Own cases")),
                            tree["question"].value_or(std::string()),
                            static_cast<int>(tree["lesson"]["number"].value_or(0))});
      }
    }
  std::sort(headings.begin(), headings.end(), [](const auto &a, const auto &b) {
    return std::tie(a.group, a.label) < std::tie(b.group, b.label);
  });
  return headings;
}

fs::path find_case(const std::string &name_or_path, const std::vector<fs::path> &case_roots)
{
  std::error_code error;
  const fs::path  given(name_or_path);
  if (given.extension() == ".toml" || given.has_parent_path())
    return given; // reading it tells what is wrong with it
  std::vector<std::string> names;
  for (const auto &root : case_roots)
    for (fs::directory_iterator group(root, error), end; group != end; group.increment(error))
    {
      if (!holds_cases(*group))
        continue;
      if (const auto path = group->path() / (name_or_path + ".toml"); fs::is_regular_file(path, error))
        return path;
      for (fs::directory_iterator it(group->path(), error); it != end; it.increment(error))
        if (it->path().extension() == ".toml")
          names.push_back(it->path().stem().string());
    }
  Problems   problems;
  const auto near = materials::nearest_name(name_or_path, names);
  problems.add({name_or_path, 0, 0, "", "there is no case of this name",
                near.empty() ? "See the list: solemech cases; a file of your own needs its ending .toml"
                             : fmt::format("Did you mean \"{}\"?", near)});
  problems.throw_if_any();
  return {};
}
} // namespace solemech::tools
