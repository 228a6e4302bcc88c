// SPDX-License-Identifier: Apache-2.0
#include "tools/language/sole_entries.h"

#include "tools/language/described_sole.h"
#include "tools/language/material_reader.h"
#include "tools/language/member_reader.h"

namespace solemech::tools
{
namespace
{
using namespace materials;
using D = Dimension;

const Entry top_entries[] = {
  {"", "format", D::count, within(1, 1), required, "Version of the file format; this program reads 1."},
  {"", "title", D::text, any_value, "", "Title, one line."},
  {"", "invented", D::flag, any_value, "false",
   "Whether the sole is made up: answers then say that it describes no product."},
  {"", "note", D::text, any_value, "", "Anything else: scenario, sources, reasons."},
  {"", "outline", D::block, any_value, required, "The edge of the sole in plan, and the ball line."},
  {"", "bottom", D::block, any_value, "", "How far heel and toe lift off a flat floor."},
  {"", "layer", D::blocks, any_value, required, "The layers of the sole, foot side first; at most 25."},
  {"", "pod", D::blocks, any_value, "",
   "Pods of the tread. Where there are any, the outsole reaches the floor in them only."},
  {"", "groove", D::blocks, any_value, "", "Grooves in the outsole."},
  {"", "material", D::blocks, any_value, "", "Your own materials, or changed ones of the library."},
};

const Section sections[] = {
  {"", "Top of a sole file", "What the sole is called, and its blocks."},
  {"outline", "[outline]",
   "Seventeen measurements, or a length and a trace. The middle line runs from the centre of the heel to the "
   "tip of the toe; lengths along the foot start at the rearmost point of the heel."},
  {"bottom", "[bottom]", "Gaps under heel and toe of a sole that stands on a flat floor."},
  {"layer", "[[layer]]", "One block per layer, foot side first. A shank or plate is a layer."},
  {"layer.slot", "[[layer.slot]]", "A slot in the plate above this block; two at most."},
  {"layer.ply", "[[layer.ply]]", "A ply of the laminated plate above this block, foot side first."},
  {"layer.flexural", "[layer.flexural]", "Moduli of the plate above this block, from bending it as a whole."},
  {"layer.pocket", "[[layer.pocket]]", "A hollow in the layer above this block."},
  {"layer.pocket.unit", "[layer.pocket.unit]",
   "An air unit that fills the pocket above this block; entries as of [layer.unit] in a case."},
  {"pod", "[[pod]]", "A patch of the outsole that reaches the floor."},
  {"groove", "[[groove]]", "A groove in the outsole."},
};

template <typename Struct>
void add_entries(std::string_view section, std::vector<Entry> &list, std::string_view without = "")
{
  for_each_entry<Struct>([&](const Entry &entry) {
    if (entry.name == without)
      return;
    list.push_back(entry);
    list.back().section = section;
  });
}
} // namespace

std::span<const Entry> sole_entries()
{
  static const std::vector<Entry> all = [] {
    std::vector<Entry> list(std::begin(top_entries), std::end(top_entries));
    add_entries<geometry::OutlineShape>("outline", list);
    add_entries<geometry::BottomShape>("bottom", list);
    add_entries<solver::SoleLayer>("layer", list);
    add_entries<geometry::SlotShape>("layer.slot", list);
    add_entries<materials::Ply>("layer.ply", list);
    add_entries<materials::FlexuralData>("layer.flexural", list);
    add_entries<solver::SolePocket>("layer.pocket", list);
    add_entries<solver::AirUnit>("layer.pocket.unit", list, "diameter"); // it fills its pocket
    add_entries<geometry::PatchShape>("pod", list);
    add_entries<geometry::PatchShape>("groove", list, "coverage");
    return list;
  }();
  return all;
}

std::span<const Section> sole_sections()
{
  return sections;
}
} // namespace solemech::tools
