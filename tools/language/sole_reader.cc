// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/sole_body.h"
#include "geometry/sole/sole_flaws.h"
#include "tools/language/described_sole.h"
#include "tools/language/member_reader.h"
#include "tools/language/named_materials.h"
#include "tools/language/outline_reader.h"
#include "tools/language/sheet.h"
#include "tools/language/shown_text.h"
#include "tools/language/sole_entries.h"
#include "tools/language/sole_file.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace fs = std::filesystem;
using geometry::Flaw;
using materials::Fields;
using materials::Problems;

namespace
{
std::string millimetres(double length)
{
  return materials::quantity_text(std::round(length * 1e5) / 1e5, materials::Dimension::length);
}

class SoleReader
{
public:
  SoleReader(const std::string &text, const std::string &file, const ReadOptions &options)
    : tree_(materials::parse_sheet(text, file, problems_)), file_(file),
      folder_(options.case_roots, fs::path(file).parent_path(), options.copies),
      materials_(options.library, problems_), top_(tree_, "", "", sole_entries(), problems_)
  {
  }

  SoleFile read()
  {
    if (tree_.empty())
      problems_.throw_if_any();
    auto &sole = result_.sole;
    sole.label = materials::shown_text(fs::path(file_).stem().string());
    sole.title = top_.text("title");
    if (sole.title.empty())
      sole.title = sole.label;
    sole.note = top_.text("note");
    sole.invented = top_.flag("invented");
    materials_.read(top_.blocks("material"));
    outline();
    if (const auto *block = top_.block("bottom"))
      read_members(Fields(*block, "bottom", "bottom", sole_entries(), problems_), sole.bottom);
    for (const auto *block : top_.blocks("layer"))
      layer(*block);
    hosts();
    for (const char *kind : {"pod", "groove"})
      for (const auto *block : top_.blocks(kind))
        patch(*block, kind);
    for (const auto &flaw : geometry::flaws(shape_of(sole)))
      place(flaw);
    problems_.throw_if_any();
    assumptions();
    result_.files = folder_.used();
    return std::move(result_);
  }

private:
  void outline()
  {
    const auto *block = top_.block("outline");
    if (!block)
    {
      if (!top_.given("outline"))
        top_.problem(
          "outline", "the sole has no outline",
          "Add [outline] with its length and half widths; solemech sheet --sole writes one to fill in");
      return;
    }
    has_no_outline_ = !read_outline({*block, "outline", "outline", sole_entries(), problems_}, folder_,
                                    result_.sole.outline, problems_);
  }

  void layer(const toml::table &block)
  {
    auto             &sole = result_.sole;
    const auto       *name = block.get_as<std::string>("name");
    const auto        title = name ? name->get() : fmt::format("layer {}", sole.layers.size() + 1);
    const Fields      fields(block, "layer", title, sole_entries(), problems_);
    solver::SoleLayer layer;
    read_members(fields, layer);
    check_layer_name(fields, layer.name);
    if (std::ranges::any_of(sole.layers, [&](const auto &other) { return other.name == layer.name; }) &&
        !layer.name.empty())
      fields.problem("name", fmt::format("there is another layer \"{}\"", layer.name),
                     "Give each its own name");
    layer.material = materials_.named(fields, "material");
    own_edges(fields, layer.shape);
    for (const auto *slot : fields.blocks("slot"))
      read_members(Fields(*slot, "layer.slot", title + ".slot", sole_entries(), problems_),
                   layer.shape.slots.emplace_back());
    plate(fields, layer, title);
    for (const auto *pocket : fields.blocks("pocket"))
      add_pocket(*pocket, title + ".pocket");
    blocks_.push_back(&block);
    filled_by_.push_back(fields.text("filled_by"));
    sole.layers.push_back(std::move(layer));
  }

  static void own_edges(const Fields &fields, geometry::LayerShape &shape)
  {
    if (!fields.given("medial") && !fields.given("lateral"))
      return;
    for (const char *side : {"medial", "lateral"})
      if (!fields.given(side))
        fields.problem(side, "is missing", "An edge of its own needs medial and lateral");
    auto &own = shape.own.emplace();
    for (auto *side : {&own.medial, &own.lateral})
      std::ranges::copy(fields.row(side == &own.medial ? "medial" : "lateral", side->size()), side->begin());
  }

  void plate(const Fields &fields, solver::SoleLayer &layer, const std::string &title)
  {
    for (const auto *ply : fields.blocks("ply"))
      read_members(Fields(*ply, "layer.ply", title + ".ply", sole_entries(), problems_),
                   layer.plies.emplace_back());
    if (const auto *block = fields.block("flexural"))
      read_members(Fields(*block, "layer.flexural", title + ".flexural", sole_entries(), problems_),
                   layer.flexural.emplace());
    const bool is_plate = std::holds_alternative<materials::PlateData>(layer.material.data);
    for (const char *entry : {"ply", "flexural", "slot"})
      if (fields.given(entry) && !is_plate && !layer.material.name.empty())
        fields.problem(entry, fmt::format("\"{}\" is not a plate", layer.material.name),
                       "Give the layer the material of a plate, for its density");
    if (fields.given("ply") && fields.given("flexural"))
      fields.problem("flexural", "ply is given as well, and both set the stiffness of the plate",
                     "Keep one of the two");
    if (is_plate && fields.given("pocket"))
      fields.problem("pocket", "a pocket cuts the plate",
                     "Put it into a foam layer, or cut the plate by a slot");
    double together = 0;
    for (const auto &ply : layer.plies)
      together += ply.thickness;
    for (const double thickness : layer.shape.thickness)
      if (!layer.plies.empty() && std::abs(thickness - together) > 0.02 * together)
        return fields.problem("ply",
                              fmt::format("the plies are {} thick together, the layer {}",
                                          millimetres(together), millimetres(thickness)),
                              "Make both the same; a laminate has one thickness");
  }

  void add_pocket(const toml::table &block, const std::string &title)
  {
    auto        &pocket = result_.sole.pockets.emplace_back();
    const Fields fields(block, "layer.pocket", title, sole_entries(), problems_);
    read_members(fields, pocket);
    pocket.shape.layer = result_.sole.layers.size();
    if (const auto *unit = fields.block("unit"))
    {
      pocket.unit =
        read_air_unit({*unit, "layer.pocket.unit", title + ".unit", sole_entries(), problems_}, materials_);
      pocket.unit->diameter = std::max(pocket.shape.plan.length, pocket.shape.plan.width);
    }
    pocket_blocks_.push_back(&block);
  }

  /// Layers that fill others, by name.
  void hosts()
  {
    auto &layers = result_.sole.layers;
    for (std::size_t i = 0; i < layers.size(); ++i)
    {
      if (filled_by_[i].empty())
        continue;
      const auto host = std::ranges::find(layers, filled_by_[i], &solver::SoleLayer::name);
      layers[i].shape.host = static_cast<int>(host - layers.begin());
      if (host == layers.end() || layers[i].shape.host == static_cast<int>(i))
      {
        layers[i].shape.host = -1;
        problems_.add(materials::problem_at(
          blocks_[i]->get("filled_by")->source(), layers[i].name + ".filled_by",
          fmt::format("there is no other layer \"{}\"", filled_by_[i]), "Name another layer of this sole"));
      }
    }
  }

  void patch(const toml::table &block, const std::string &kind)
  {
    auto &patch = result_.sole.patches.emplace_back();
    patch.kind = kind == "pod" ? geometry::PatchShape::Kind::pod : geometry::PatchShape::Kind::groove;
    read_members(Fields(block, kind, kind, sole_entries(), problems_), patch);
    patch_blocks_.push_back({&block, kind});
  }

  /// The place in the file that a flaw of the geometry is about.
  void place(const Flaw &flaw)
  {
    const auto at = block_of(flaw);
    // A trace is refused where it is named; its own lines have been read without fault.
    auto entry = flaw.entry;
    if (entry == "points" && at.first && at.first->contains("path"))
      entry = "path";
    if (!at.first || (flaw.of == Flaw::Of::outline && has_no_outline_))
      return;
    const auto *node = at.first->get(entry);
    problems_.add(materials::problem_at(node ? node->source() : at.first->source(), at.second + "." + entry,
                                        flaw.reason, flaw.cure));
  }

  std::pair<const toml::table *, std::string> block_of(const Flaw &flaw) const
  {
    switch (flaw.of)
    {
    case Flaw::Of::outline:
      return {top_.table()["outline"].as_table(), "outline"};
    case Flaw::Of::bottom:
      return {top_.table()["bottom"].as_table(), "bottom"};
    case Flaw::Of::layer:
      if (flaw.index < blocks_.size())
        return {blocks_[flaw.index], result_.sole.layers[flaw.index].name};
      return {&tree_, "sole"};
    case Flaw::Of::slot:
      if (const auto *slots = blocks_[flaw.index]->get("slot"))
      {
        const auto *list = slots->as_array();
        return {list ? list->get(flaw.slot)->as_table() : slots->as_table(),
                result_.sole.layers[flaw.index].name + ".slot"};
      }
      return {nullptr, ""};
    case Flaw::Of::pocket:
      return {pocket_blocks_[flaw.index],
              result_.sole.layers[result_.sole.pockets[flaw.index].shape.layer].name + ".pocket"};
    case Flaw::Of::patch:
      return patch_blocks_[flaw.index];
    }
    return {nullptr, ""};
  }

  void assumptions()
  {
    const auto              &sole = result_.sole;
    const geometry::SoleBody body(shape_of(sole));
    const auto               assume = [&](const std::string &what) { result_.assumed.push_back(what); };
    if (sole.outline.ball_medial == 0)
      assume("outline.ball_medial " + millimetres(body.ball_line().medial[0]));
    if (sole.outline.ball_lateral == 0)
      assume("outline.ball_lateral " + millimetres(body.ball_line().lateral[0]));
    if (sole.bottom.toe_spring_rise > 0 && sole.bottom.toe_spring_start == 0)
      assume("bottom.toe_spring_start " +
             millimetres(bottom_of(shape_of(sole), body.ball_line().centre()).toe_spring_start));
    for (std::size_t i = 0; i < sole.layers.size(); ++i)
      if (const auto &layer = sole.layers[i];
          layer.shape.host < 0 && body.region(i).area() < 0.999 * body.outline().area())
        assume(fmt::format("{}.filled_by {}", layer.name, sole.layers[body.host(i)].name));
  }

  Problems                                                 problems_;
  toml::table                                              tree_;
  std::string                                              file_;
  SheetFolder                                              folder_;
  NamedMaterials                                           materials_;
  Fields                                                   top_;
  SoleFile                                                 result_;
  std::vector<const toml::table *>                         blocks_, pocket_blocks_;
  std::vector<std::string>                                 filled_by_; ///< of each layer
  std::vector<std::pair<const toml::table *, std::string>> patch_blocks_;
  bool                                                     has_no_outline_ = false;
};
} // namespace

SoleFile read_sole_text(const std::string &text, const std::string &file, const ReadOptions &options)
{
  return SoleReader(text, file, options).read();
}

} // namespace solemech::tools
