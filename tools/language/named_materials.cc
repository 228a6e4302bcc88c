// SPDX-License-Identifier: Apache-2.0
#include "tools/language/named_materials.h"

#include "tools/language/described_case.h"
#include "tools/language/member_reader.h"
#include "tools/language/missing_material.h"

#include <fmt/format.h>

#include <limits>

namespace solemech::tools
{
using materials::Fields;
using materials::Material;

void NamedMaterials::read(const std::vector<const toml::table *> &blocks)
{
  materials::MaterialSource known = library_;
  known.find = [this](const std::string &name) -> const Material * {
    const auto own = own_.find(name);
    return own != own_.end() ? &own->second : library_.find(name);
  };
  for (const auto *block : blocks)
  {
    const auto material = materials::read_material(*block, known, problems_);
    if (material.name.empty())
      continue;
    const auto *from = block->get_as<std::string>("from");
    if (own_.contains(material.name))
      problems_.add(materials::problem_at(block->source(), material.name, "this material is defined twice",
                                          "Rename one of the two"));
    else if (library_.find(material.name) && !(from && from->get() == material.name))
      problems_.add(materials::problem_at(
        block->source(), material.name, "the library has a material of this name",
        fmt::format("Choose another name, or start from it: from = \"{}\"", material.name)));
    own_[material.name] = material;
    names_.push_back(material.name);
    known.names = names_;
  }
}

Material NamedMaterials::named(const Fields &fields, const char *entry) const
{
  const auto name = fields.text(entry);
  if (name.empty())
    return {};
  const auto own = own_.find(name);
  if (own != own_.end())
    return own->second;
  if (const auto *found = library_.find(name))
    return *found;
  auto known = library_;
  known.names = names_;
  fields.problem(entry, fmt::format("there is no material \"{}\"", name),
                 materials::instead_of_material(name, known));
  return {};
}

solver::AirUnit read_air_unit(const Fields &fields, const NamedMaterials &materials)
{
  solver::AirUnit unit;
  read_members(fields, unit);
  unit.film = materials.named(fields, "film");
  if (const auto heat = fields.word("heat_time"); !heat.empty())
    unit.heat_time = heat == "adiabatic"    ? std::numeric_limits<double>::infinity()
                     : heat == "isothermal" ? 0
                                            : -1;
  return unit;
}

void check_layer_name(const Fields &fields, const std::string &name)
{
  if (name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") !=
      std::string::npos)
    fields.problem("name", fmt::format("\"{}\" cannot be used as a name", name),
                   "Use letters, digits, - and _ in layer names");
}
} // namespace solemech::tools
