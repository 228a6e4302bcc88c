// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sheet_folder.h"

#include "tools/language/sheet.h"

#include <algorithm>
#include <set>

namespace solemech::tools
{
namespace fs = std::filesystem;
using State = materials::FileText::State;

namespace
{
fs::path folder_of(const fs::path &root, const std::string &kind)
{
  return root / (kind + "s");
}

bool is_path(const std::string &name)
{
  const fs::path given(name);
  return given.extension() == ".toml" || given.has_parent_path();
}
} // namespace

SheetFolder::Found SheetFolder::sheet(const std::string &kind, const std::string &name)
{
  auto found = copies_ ? copy(kind, name) : sought(kind, name);
  if (found.file.state == State::read && found.file.text.empty())
    found.file = {State::refused, "", "the file is empty", "Write the " + kind + " into it"};
  return noted(kind, name, std::move(found));
}

SheetFolder::Found SheetFolder::data(const std::string &kind, const std::string &name)
{
  return noted(kind, name, copies_ ? copy(kind, name) : below(name));
}

SheetFolder::Found SheetFolder::copy(const std::string &kind, const std::string &name) const
{
  for (const auto &one : *copies_)
    if (one.kind == kind && one.name == name)
      return {{State::read, one.text, "", ""}, name, one.is_prepared};
  return {{}, name, false};
}

SheetFolder::Found SheetFolder::below(const std::string &name) const
{
  return {materials::file_text_below(own_, name, materials::largest_sheet), (own_ / name).string(), false};
}

SheetFolder::Found SheetFolder::sought(const std::string &kind, const std::string &name) const
{
  if (is_path(name))
    return below(name);
  Found found;
  for (const auto &beside : {name + ".toml", kind + "s/" + name + ".toml"})
    if (found = below(beside); found.file.state != State::missing)
      return found;
  for (const auto &root : case_roots_)
  {
    const auto path = folder_of(root, kind) / (name + ".toml");
    found = {materials::file_text(path, materials::largest_sheet), path.string(), true};
    if (found.file.state != State::missing)
      return found;
  }
  return found;
}

SheetFolder::Found SheetFolder::noted(const std::string &kind, const std::string &name, Found found)
{
  const bool is_known = std::any_of(
    used_.begin(), used_.end(), [&](const NamedFile &one) { return one.kind == kind && one.name == name; });
  if (found.file.state == State::read && !is_known)
    used_.push_back({kind, name, found.file.text, found.is_prepared});
  return found;
}

std::vector<std::string> SheetFolder::names(const std::string &kind) const
{
  std::set<std::string> names;
  std::error_code       error;
  for (const auto &root : case_roots_)
    for (fs::directory_iterator it(folder_of(root, kind), error), end; it != end; it.increment(error))
      if (it->path().extension() == ".toml")
        names.insert(it->path().stem().string());
  return {names.begin(), names.end()};
}
} // namespace solemech::tools
