// SPDX-License-Identifier: Apache-2.0
// Entries by address: `core.thickness` is the entry of the layer of that name, `drop.energy` one of the
// section. The full form `layer.core.thickness` is needed only where a name stands for several things.
#pragma once

#include "tools/language/entries.h"
#include "tools/language/problem.h"
#include "tools/language/variant.h"

#include <toml++/toml.h>

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
/// Splits an address at its dots.
std::vector<std::string> split_address(const std::string &address);

/// Moves a node under a key; a moved node keeps its position, a copied one would not.
void put(toml::table &table, std::string_view key, toml::node &node);

/// Sets an entry of a block; the entry that says the same gives way.
void set_entry(toml::table &block, std::string_view section, std::string_view name, toml::node &value);

/// All addresses of a tree: sections, layers with their units, materials; short ("core.thickness") and full.
class Addresses
{
public:
  /// `known_materials` are library names that an address may begin with.
  Addresses(toml::table &tree, const std::vector<std::string> &known_materials);

  /// Makes a change, or notes why it cannot be made and what was probably meant.
  /// @return the address; "" after a slip
  std::string apply(Change &change, materials::Problems &problems);

private:
  /// An entry of this case by its last name: short address and line of the schema.
  struct Found
  {
    std::string             address; ///< "unit.gauge_pressure"
    const materials::Entry *entry;
  };

  /// Where a change may go.
  struct Target
  {
    std::string kind;    ///< "layer", "material", or the section itself
    std::string name;    ///< of the layer or material
    std::string section; ///< schema section
    std::string entry;
    std::string full() const
    {
      return name.empty() ? section + "." + entry : kind + "." + name + "." + entry;
    }
  };

  /// The entries of layers, units, plug, surroundings and rig of this case that are called so, by address;
  /// all of them for an empty name. Materials are left out.
  std::vector<Found> entries_called(std::string_view name) const;

  /// Address of the number that is called so where no other entry is. "" after a slip.
  std::string address_of(const PlacedText &name, const std::string &option,
                         materials::Problems &problems) const;

  void        add(const Target &target, const std::string &address);
  std::string cure(const std::string &address, const std::vector<std::string> &all) const;
  bool        has_unit() const;
  void        assign(const Target &target, toml::node &value);

  toml::table                       &tree_;
  std::multimap<std::string, Target> targets_;
};
} // namespace solemech::tools
