// SPDX-License-Identifier: Apache-2.0
// Material blocks of sheets: the schema of [[material]], and the reader that turns one block into a Material.
// Library files and bench sheets use the same blocks; a sheet may start from a known material and change
// entries.
#pragma once

#include "materials/court.h"
#include "materials/material.h"
#include "tools/language/fields.h"

#include <filesystem>
#include <functional>
#include <span>
#include <string>
#include <vector>

namespace solemech::materials
{
/// Where materials are found by name, and which names there are to suggest.
struct MaterialSource
{
  std::function<const Material *(const std::string &)> find = [](const std::string &) { return nullptr; };
  std::vector<std::string>                             names;
  /// Courts beside the library, read when first asked for. Throws CaseError.
  std::function<std::vector<Court>()> courts = [] { return std::vector<Court>(); };
};

/// Schema of the blocks "material", "material.network", "material.relaxing", "material.slipping",
/// "material.after_use".
std::span<const Entry> material_entries();

/// One [[material]] block. Slips go to `problems`; the material is then not to be used.
Material read_material(const toml::table &block, const MaterialSource &known, Problems &problems);

/// All [[material]] blocks of a library file (`format = 1` first). Throws CaseError with every problem of the
/// file.
std::vector<Material> read_material_file(const std::filesystem::path &path);

/// The same from text; `file` is the name for messages.
std::vector<Material> read_material_text(const std::string &text, const std::string &file);
} // namespace solemech::materials
