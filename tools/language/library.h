// SPDX-License-Identifier: Apache-2.0
// The material library: every *.toml file of a folder, each with one or more [[material]] blocks.
#pragma once

#include "materials/material.h"
#include "tools/language/material_reader.h"

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::materials
{
class Library
{
public:
  /// Reads all files of a folder, in the order of their names.
  /// @throws CaseError with the problems of every file at once; a name that two files give is one of them
  /// @throws std::filesystem::filesystem_error when the folder cannot be read
  static Library load(const std::filesystem::path &folder);

  /// The material of that name, or nullptr. Stays valid as long as the library.
  const Material *find(std::string_view name) const;

  /// Names in the order in which people expect them: by family, then by name.
  std::vector<std::string> names() const;

  const std::vector<Material> &materials() const { return materials_; }

  /// View for the readers of sheets; valid as long as the library.
  MaterialSource source() const;

private:
  std::vector<Material> materials_;
  std::filesystem::path folder_;
};
} // namespace solemech::materials
