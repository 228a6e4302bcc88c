// SPDX-License-Identifier: Apache-2.0
// Sheets and a small made-up material library for the tests of the reader.
#pragma once

#include "tools/language/case_file.h"

#include <string>

namespace solemech::tests
{
/// One foam, one film; enough for any stack.
inline tools::ReadOptions small_library()
{
  static const auto  materials = materials::read_material_text(R"(
format = 1
[[material]]
name = "eva-soft"
density = "170 kg/m3"
shear_modulus = "0.42 MPa"
exponent = 6
relative_density = 0.18
densification_modulus = "30 kPa"
[[material]]
name = "eva-firm"
from = "eva-soft"
shear_modulus = "0.75 MPa"
[[material]]
name = "tpu-film"
family = "film"
density = "1150 kg/m3"
youngs_modulus = "25 MPa"
)",
                                                               "library");
  tools::ReadOptions options;
  options.case_roots = {std::string(SOLEMECH_SOURCE) + "/cases"};
  for (const auto &material : materials)
    options.library.names.push_back(material.name);
  options.library.find = [](const std::string &name) -> const materials::Material * {
    for (const auto &material : materials)
      if (material.name == name)
        return &material;
    return nullptr;
  };
  return options;
}

/// A sound sheet of one foam layer and one drop; `layer` replaces the lines of the layer block.
inline std::string
sheet(const std::string &layer = "name = \"core\"\nmaterial = \"eva-soft\"\nthickness = \"16 mm\"\n",
      const std::string &rest = "")
{
  return "format = 1\n[drop]\nmass = \"1.2 kg\"\nheight = \"400 mm\"\ndiameter = \"40 mm\"\n[[layer]]\n" +
         layer + rest;
}

/// Text of the problems of a sheet, or "" when it is sound.
inline std::string problems_of(const std::string &text, std::vector<std::string> overrides = {})
{
  auto options = small_library();
  options.overrides = std::move(overrides);
  try
  {
    tools::read_case_text(text, "my.toml", options);
  }
  catch (const materials::CaseError &error)
  {
    return error.what();
  }
  return {};
}
} // namespace solemech::tests
