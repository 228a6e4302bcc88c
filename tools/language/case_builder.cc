// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_builder.h"

#include "solver/rig_parts.h"
#include "tools/language/case_checks.h"
#include "tools/language/described_case.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/layer_swaps.h"
#include "tools/language/member_reader.h"
#include "tools/language/named_materials.h"
#include "tools/language/rig_reader.h"
#include "tools/language/schema.h"
#include "tools/language/slide_reader.h"
#include "tools/language/tread_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <string_view>

namespace solemech::tools
{
namespace
{
using materials::Fields;
using materials::Material;
using materials::Problems;
using solver::Case;

/// What a layer is that does not say it: by its material, or by a name that everybody gives an insert.
bool is_laid_in(const solver::Layer &layer)
{
  return layer.material.family == "insert" ||
         std::ranges::any_of(laid_in_names, [&](auto name) { return layer.name.starts_with(name); });
}

class CaseBuilder
{
public:
  CaseBuilder(const toml::table &tree, const materials::MaterialSource &library, SheetFolder &folder,
              Problems &problems)
    : tree_(tree), library_(library), materials_(library, problems), folder_(folder), problems_(problems),
      top_(tree, "", "", case_entries(), problems)
  {
  }

  Case build()
  {
    case_.invented = top_.flag("invented");
    surroundings();
    materials_.read(top_.blocks("material"));
    case_.doubts = read_doubts(top_.blocks("settled"), problems_);
    for (const auto *block : top_.blocks("layer"))
      layer(*block);
    if (top_.given("lug") || top_.given("slide") || top_.given("wear") || top_.given("tread") ||
        top_.given("zone"))
    {
      slide();
      return std::move(case_);
    }
    if (!top_.given("layer") && !top_.given("stack"))
      problems_.add({file_name(), 1, 1, "layer", "the case has no stack",
                     "Add stack = \"name\", or [[layer]] blocks from the foot down"});
    rig();
    if (const auto *block = top_.block("plug"))
      plug(*block);
    else
      plug(toml::table());
    check_case(case_, {layer_blocks_, plug_block_, rig_block_, rig_name_}, problems_);
    return std::move(case_);
  }

private:
  std::string file_name() const { return tree_.source().path ? *tree_.source().path : std::string("case"); }

  void surroundings()
  {
    case_.accuracy = top_.value("accuracy");
    const toml::table nothing;
    const auto       *block = top_.block("surroundings");
    const Fields fields(block ? *block : nothing, "surroundings", "surroundings", case_entries(), problems_);
    read_members(fields, case_);
  }

  void layer(const toml::table &block)
  {
    const auto   *name = block.get_as<std::string>("name");
    const auto    title = name ? name->get() : fmt::format("layer {}", case_.layers.size() + 1);
    const Fields  fields(block, "layer", title, case_entries(), problems_);
    solver::Layer layer;
    read_members(fields, layer);
    check_layer_name(fields, layer.name);
    if (solver::rig_part::is_one(layer.name) || layer.name == "rig")
      fields.problem("name",
                     fmt::format("\"{}\" is already the name of a part of the energy account", layer.name),
                     "Choose another name for the layer");
    layer.material = materials_.named(fields, "material");
    if (fields.given("ring"))
      layer.ring = materials_.named(fields, "ring");
    layer.laid_in = fields.given("laid_in") ? fields.flag("laid_in") : is_laid_in(layer);
    if (const auto *unit = fields.block("unit"))
      layer.unit = read_air_unit({*unit, "layer.unit", title, case_entries(), problems_}, materials_);
    layer_blocks_.push_back(&block);
    case_.layers.push_back(std::move(layer));
  }

  /// A bar of rubber; problems go to `entry`.
  Material rubber(const Fields &fields, const char *entry)
  {
    const auto found = materials_.named(fields, entry);
    if (!found.name.empty() && !std::holds_alternative<materials::RubberData>(found.data))
      fields.problem(entry, fmt::format("\"{}\" is not a rubber", found.name),
                     "Give a rubber such as \"rubber-60a\"");
    return found;
  }

  /// A bar that slides over a court: its skin and itself are the layers.
  void slide()
  {
    auto others = sections_of({BlockOf::bench});
    others.insert(others.begin(), {"layer", "stack", "plug"});
    for (const auto &name : others)
      if (top_.given(name))
        top_.problem(name, "cannot be combined with a slide", "Remove it: a slide has [lug] and [slide]");
    const auto *lug = top_.block("lug"), *way = top_.block("slide");
    if (!lug || !way)
    {
      top_.problem(lug ? "lug" : "slide", fmt::format("the case has no [{}]", lug ? "slide" : "lug"),
                   "A slide needs both [lug] and [slide]");
      return;
    }
    const Fields     of_lug(*lug, "lug", "lug", case_entries(), problems_);
    const Fields     of_way(*way, "slide", "slide", case_entries(), problems_);
    solver::SlideRig rig;
    read_lug(of_lug, rig);
    read_slide(of_way, library_.courts(), rig);
    const auto *life = top_.block("wear");
    Material    of_bar;
    if (of_lug.given("rubber"))
      of_bar = rubber(of_lug, "rubber");
    else if (of_lug.given("hardness"))
      of_bar = rubber_of_hardness(of_lug).value_or(Material());
    else
      of_lug.problem("rubber", "is missing", "Give rubber = \"rubber-60a\" or hardness = \"64 ShoreA\"");
    rig.lug_heat.density = of_bar.density;
    rig.tup.diameter = rig.lug.spacing;
    case_.plug.section = solver::Section::plane_strain;
    case_.plug.radius = 0.5 * rig.lug.spacing;
    case_.layers.resize(2);
    case_.layers[0].name = "skin";
    case_.layers[0].material = of_lug.given("skin_rubber") ? rubber(of_lug, "skin_rubber") : of_bar;
    case_.layers[0].thickness = rig.lug.skin;
    case_.layers[1].name = "lug";
    case_.layers[1].material = of_bar;
    case_.layers[1].thickness = rig.lug.height;
    if (life)
    {
      const Fields of_wear(*life, "wear", "wear", case_entries(), problems_);
      read_wear(of_wear, rubber(of_wear, "reference"), rig);
    }
    tread(of_lug, of_way, rig);
    case_.rig = std::move(rig);
  }

  /// A whole sole of bars like the one of the case.
  void tread(const Fields &of_lug, const Fields &of_way, solver::SlideRig &rig)
  {
    const auto *block = top_.block("tread");
    const auto  zones = top_.blocks("zone");
    if (!block && zones.empty())
      return;
    if (!block || zones.empty())
      return top_.problem(block ? "tread" : "zone", block ? "has no zones" : "is missing its [tread]",
                          "A tread needs [tread] and at least one [[zone]]");
    if (rig.wear)
      top_.problem("wear", "cannot be combined with a whole tread",
                   "Only a single bar can be worn: remove [tread] and the zones");
    if (of_way.given("player_mass"))
      of_way.problem("player_mass", "has no meaning for a whole tread",
                     "Give the force on the sole: tread.force = \"785 N\" is 80 kg");
    const Fields  of_tread(*block, "tread", "tread", case_entries(), problems_);
    solver::Tread tread = read_tread(of_tread);
    for (const auto *zone : zones)
    {
      const auto  *name = zone->get_as<std::string>("name");
      const Fields of_zone(*zone, "zone", name ? name->get() : fmt::format("zone {}", tread.zones.size() + 1),
                           case_entries(), problems_);
      auto         read = read_zone(of_zone, tread, rig);
      if (of_zone.given("rubber"))
        read.rubber = rubber(of_zone, "rubber");
      else if (of_zone.given("hardness"))
        read.rubber = rubber_of_hardness(of_zone);
      tread.zones.push_back(std::move(read));
    }
    check_tread(of_tread, of_lug, of_way, tread, rig);
    rig.tread = std::move(tread);
    rig.heading = 0;
  }

  void rig()
  {
    const auto  benches = sections_of({BlockOf::bench});
    std::string given;
    for (const auto &name : benches)
      if (const auto *block = top_.block(name))
      {
        if (!given.empty())
          top_.problem(name, fmt::format("{} is given as well", given),
                       fmt::format("A case has one of {}", fmt::join(benches, ", ")));
        given = name;
        rig_block_ = block;
        rig_name_ = name;
      }
    if (rig_block_)
    {
      const Fields fields(*rig_block_, given, given, case_entries(), problems_);
      const auto   named_rubber = [this](const Fields &of, const char *entry) { return rubber(of, entry); };
      case_.rig = read_rig(given, {fields, case_.gravity, folder_, problems_, named_rubber}).value();
    }
    else if (!top_.given("rig"))
      problems_.add({file_name(), 1, 1, "rig", "the case has no rig",
                     fmt::format("Add rig = \"name\", or one block of [{}]; a slide has [lug] and [slide]",
                                 fmt::join(benches, "], ["))});
  }

  void plug(const toml::table &block)
  {
    const Fields fields(block, "plug", "plug", case_entries(), problems_);
    auto        &plug = case_.plug;
    plug_block_ = top_.block("plug");
    read_members(fields, plug);
    if (!fields.word("radius").empty())
      plug.radius = std::max(solver::tup_of(case_.rig).diameter / 2 + stack_height(case_.layers),
                             least_plug_radius(case_.rig));
    const auto side = fields.text("side");
    for (const char *name : {"side_material", "side_thickness"})
      if (fields.given(name) != (side == "wrapped"))
        fields.problem(name, fields.given(name) ? "has no meaning unless side = \"wrapped\"" : "is missing",
                       fields.given(name) ? "Remove the line"
                                          : "A wrapped side needs side_material and side_thickness");
    if (fields.given("side_material"))
      plug.side_material = materials_.named(fields, "side_material");
    if (fields.given("shell_stiffness") != (side == "shell"))
      fields.problem(
        "shell_stiffness",
        fields.given("shell_stiffness") ? "has no meaning unless side = \"shell\"" : "is missing",
        fields.given("shell_stiffness") ? "Remove the line" : "Give shell_stiffness = \"5 MPa/m\"");
  }

  const toml::table               &tree_;
  const materials::MaterialSource &library_;
  NamedMaterials                   materials_;
  SheetFolder                     &folder_;
  Problems                        &problems_;
  Fields                           top_;
  Case                             case_;
  std::vector<const toml::table *> layer_blocks_;
  const toml::table               *plug_block_ = nullptr, *rig_block_ = nullptr;
  std::string                      rig_name_;
};
} // namespace

solver::Case build_case(const toml::table &tree, const materials::MaterialSource &library,
                        SheetFolder &folder, Problems &problems)
{
  return CaseBuilder(tree, library, folder, problems).build();
}
} // namespace solemech::tools
