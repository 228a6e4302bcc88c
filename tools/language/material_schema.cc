// SPDX-License-Identifier: Apache-2.0
// All entries of material blocks: those of the descriptions, law by law, each once.
#include "tools/language/described_materials.h"
#include "tools/language/material_reader.h"
#include "tools/language/member_reader.h"

#include <algorithm>

namespace solemech::materials
{
namespace
{
/// Adds the entries of a described struct as entries of a section; those that another law has as well are
/// there.
template <typename Struct>
void add_entries(std::string_view section, std::vector<Entry> &list)
{
  tools::for_each_entry<Struct>([&](const Entry &entry) {
    const auto is_same = [&](const Entry &known) {
      return known.section == section && known.name == entry.name;
    };
    if (std::ranges::any_of(list, is_same))
      return;
    list.push_back(entry);
    list.back().section = section;
  });
}
} // namespace

std::span<const Entry> material_entries()
{
  static const std::vector<Entry> entries = [] {
    std::vector<Entry> list;
    add_entries<Material>("material", list);
    add_entries<FoamData>("material", list);
    add_entries<RubberData>("material", list);
    add_entries<PlateData>("material", list);
    add_entries<BenchReadings>("material", list);
    add_entries<StatedReadings>("material", list);
    add_entries<NetworkTerm>("material.network", list);
    add_entries<RelaxingTerm>("material.relaxing", list);
    add_entries<SlippingTerm>("material.slipping", list);
    add_entries<UseBand>("material.after_use", list);
    return list;
  }();
  return entries;
}
} // namespace solemech::materials
