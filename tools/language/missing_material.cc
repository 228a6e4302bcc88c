// SPDX-License-Identifier: Apache-2.0
#include "tools/language/missing_material.h"

#include "tools/language/nearest_name.h"
#include "tools/language/small_letters.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::materials
{
namespace
{
/// Stuff that a bench may hold against a sole, with its Young's modulus; handbook values, from memory.
struct Everyday
{
  const char *word;
  double      youngs_modulus; ///< [Pa]
};
constexpr Everyday everyday[] = {{"steel", 200e9},         {"titanium", 110e9}, {"brass", 100e9},
                                 {"aluminium", 70e9},      {"aluminum", 70e9},  {"wood", 10e9},
                                 {"polycarbonate", 2.4e9}, {"acrylic", 3e9},    {"plywood", 8e9},
                                 {"abs", 2.2e9},           {"leather", 50e6}};

const Everyday *everyday_stuff(const std::string &given)
{
  const auto name = tools::in_small_letters(given);
  for (const auto &one : everyday)
    if (const std::string word = one.word;
        name == word || name.starts_with(word + "-") || name.ends_with("-" + word))
      return &one;
  return nullptr;
}

/// Plate, board or sheet whose stiffness is nearest by ratio.
const Material *nearest_by_stiffness(double youngs_modulus, const MaterialSource &known)
{
  const Material *best = nullptr;
  double          least = 0;
  for (const auto &name : known.names)
    if (const auto *material = known.find(name))
      if (const auto *plate = std::get_if<PlateData>(&material->data))
        if (const double apart = std::abs(std::log(plate->youngs_modulus / youngs_modulus));
            !best || apart < least)
          best = material, least = apart;
  return best;
}

std::string modulus_words(double modulus)
{
  return modulus >= 1e9 ? fmt::format("{:g} GPa", modulus / 1e9) : fmt::format("{:g} MPa", modulus / 1e6);
}
} // namespace

std::string instead_of_material(const std::string &name, const MaterialSource &known)
{
  if (const auto near = nearest_name(name, known.names); !near.empty())
    return fmt::format("Did you mean \"{}\"?", near);
  if (const auto *stuff = everyday_stuff(name))
    if (const auto *nearest = nearest_by_stiffness(stuff->youngs_modulus, known))
      return fmt::format("The library holds no {}, about {} (from memory); nearest in stiffness is \"{}\", "
                         "{}. Or define a [[material]] of your own",
                         stuff->word, modulus_words(stuff->youngs_modulus), nearest->name,
                         modulus_words(std::get<PlateData>(nearest->data).youngs_modulus));
  return "See the list: solemech materials";
}
} // namespace solemech::materials
