// SPDX-License-Identifier: Apache-2.0
// What a sheet names: its own materials and those of the library, air units made of them, layers.
#pragma once

#include "solver/case.h"
#include "tools/language/fields.h"
#include "tools/language/material_reader.h"

#include <map>
#include <string>
#include <vector>

namespace solemech::tools
{
class NamedMaterials
{
public:
  NamedMaterials(const materials::MaterialSource &library, materials::Problems &problems)
    : library_(library), problems_(problems), names_(library.names)
  {
  }

  /// The [[material]] blocks of a sheet; a later one may start from an earlier one.
  void read(const std::vector<const toml::table *> &blocks);

  /// The one that an entry names; an empty one after a slip.
  materials::Material named(const materials::Fields &fields, const char *entry) const;

private:
  const materials::MaterialSource           &library_;
  materials::Problems                       &problems_;
  std::map<std::string, materials::Material> own_;
  std::vector<std::string>                   names_;
};

/// An air unit from its block; one in a pocket has no diameter of its own.
solver::AirUnit read_air_unit(const materials::Fields &fields, const NamedMaterials &materials);

/// Names of layers are part of addresses.
void check_layer_name(const materials::Fields &fields, const std::string &name);
} // namespace solemech::tools
