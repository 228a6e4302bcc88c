// SPDX-License-Identifier: Apache-2.0
#include "tools/input/sheet_folder.h"

#include "materials/sheet.h"

#include <set>

namespace solemech::tools
{
namespace fs = std::filesystem;
using materials::Problems;

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

std::map<std::string, std::string> SheetFolder::texts_beside() const
{
  std::map<std::string, std::string> texts;
  for (const auto &[path, text] : texts_)
  {
    const fs::path beside = path.lexically_proximate(own_);
    const bool     is_below = beside.is_relative() && *beside.begin() != "..";
    texts[(is_below ? beside : path.parent_path().filename() / path.filename()).generic_string()] = text;
  }
  return texts;
}
} // namespace solemech::tools
