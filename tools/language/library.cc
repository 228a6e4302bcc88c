// SPDX-License-Identifier: Apache-2.0
#include "tools/language/library.h"

#include "tools/language/case_errors.h"
#include "tools/language/court_reader.h"
#include "tools/language/sheet.h"

#include <algorithm>
#include <array>

namespace solemech::materials
{
namespace fs = std::filesystem;

namespace
{
std::size_t family_rank(const std::string &family)
{
  static const std::array<std::string, 6> order{"foam", "rubber", "plate", "insert", "board", "film"};
  return std::find(order.begin(), order.end(), family) - order.begin();
}
} // namespace

Library Library::load(const fs::path &folder)
{
  Library library;
  library.folder_ = folder;
  CaseErrors errors;
  for (const fs::path &file : sheet_files(folder))
  {
    try
    {
      for (Material &material : read_material_file(file))
      {
        if (library.find(material.name) != nullptr)
        {
          Problems twice;
          twice.add({file.string(), 0, 0, material.name, "another file of the library has this name too",
                     "Rename one of the two"});
          twice.throw_if_any();
        }
        library.materials_.push_back(std::move(material));
      }
    }
    catch (const CaseError &error)
    {
      errors.add(error);
    }
  }
  errors.throw_if_any();
  std::stable_sort(
    library.materials_.begin(), library.materials_.end(),
    [](const Material &a, const Material &b) { return family_rank(a.family) < family_rank(b.family); });
  return library;
}

const Material *Library::find(std::string_view name) const
{
  const auto found = std::find_if(materials_.begin(), materials_.end(),
                                  [&](const Material &material) { return material.name == name; });
  return found == materials_.end() ? nullptr : &*found;
}

std::vector<std::string> Library::names() const
{
  std::vector<std::string> names;
  for (const Material &material : materials_)
    names.push_back(material.name);
  return names;
}

MaterialSource Library::source() const
{
  return {[this](const std::string &name) { return find(name); }, names(),
          [this] {
            const auto courts = folder_.lexically_normal().parent_path() / "courts";
            return fs::is_directory(courts) ? read_court_folder(courts) : std::vector<Court>();
          }};
}
} // namespace solemech::materials
