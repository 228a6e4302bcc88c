// SPDX-License-Identifier: Apache-2.0
#include "tools/language/material_reader.h"

#include "materials/hardness.h"
#include "tools/language/described_materials.h"
#include "tools/language/member_reader.h"
#include "tools/language/missing_material.h"
#include "tools/language/sheet.h"
#include "tools/language/use_band_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::materials
{
namespace
{
/// Exponent beta from whichever of the two entries is given: beta = nu/(1 - 2 nu).
double volumetric_exponent(const Fields &fields)
{
  if (fields.given("volumetric_exponent"))
    return fields.value("volumetric_exponent");
  const double nu = fields.value("poisson");
  return nu / (1 - 2 * nu);
}

bool contains(const std::vector<std::string_view> &list, std::string_view name)
{
  return std::ranges::find(list, name) != list.end();
}

/// Reads one material block, entry by entry, on top of a material to start from.
class MaterialReader
{
public:
  MaterialReader(const Fields &fields, Problems &problems, Material &material, bool fresh)
    : fields_(fields), problems_(problems), material_(material), fresh_(fresh)
  {
  }

  void read()
  {
    text(material_.title, "title");
    if (fresh_ || fields_.given("family"))
      material_.family = fields_.text("family");
    text(material_.source, "source");
    flag(material_.invented, "invented");
    flag(material_.from_memory, "from_memory");
    if (const auto hardness = fields_.hardness("hardness"))
      material_.hardness = fmt::format("{:g} {}", hardness->value, hardness->scale);
    tools::read_members(fields_, material_, fresh_);
    tools::read_members(fields_, material_.readings, fresh_);
    tools::read_members(fields_, material_.stated, fresh_);
    if (fields_.given("after_use"))
      material_.after_use = read_use_bands(fields_, problems_);
    choose_law();
    std::visit(
      [this]<typename Law>(Law &data) {
        refuse_others<Law>();
        tools::read_members(fields_, data, fresh_);
        law(data);
      },
      material_.data);
    if (material_.title.empty())
      material_.title = material_.name;
  }

private:
  void text(std::string &target, const char *name)
  {
    if (fresh_ || fields_.given(name))
      target = fields_.text(name);
  }

  /// What is known of the source goes with it: another source says it anew.
  void flag(bool &target, const char *name)
  {
    if (fresh_ || fields_.given("source") || fields_.given(name))
      target = fields_.flag(name);
  }

  void choose_law()
  {
    auto law = fields_.text("law");
    if (law.empty() && !fresh_)
      return;
    const auto &family = material_.family;
    if (law.empty())
      law = family == "foam" ? "foam" : family == "rubber" || family == "film" ? "rubber" : "plate";
    if (law == "foam")
      material_.data = FoamData();
    else if (law == "rubber")
      material_.data = RubberData();
    else
      material_.data = PlateData();
  }

  /// Entries of another law are a slip, not to be dropped in silence.
  template <typename Law>
  void refuse_others() const
  {
    std::vector<std::string_view> own;
    tools::for_each_entry<Law>([&](const Entry &entry) { own.push_back(entry.name); });
    std::vector<std::string_view> told;
    const auto                    refuse = [&](const Entry &entry) {
      if (!fields_.given(entry.name) || contains(own, entry.name) || contains(told, entry.name))
        return;
      told.push_back(entry.name);
      fields_.problem(entry.name, fmt::format("has no meaning for a {}", tools::Description<Law>::kind),
                                         "Remove the line, or give another law");
    };
    tools::for_each_entry<FoamData>(refuse);
    tools::for_each_entry<RubberData>(refuse);
    tools::for_each_entry<PlateData>(refuse);
  }

  /// Terms of a list of blocks, when it is given.
  template <typename Term>
  void terms(std::vector<Term> &list, const char *name) const
  {
    if (!fields_.given(name))
      return;
    list.clear();
    for (const auto *block : fields_.blocks(name))
    {
      const auto section = fmt::format("material.{}", name);
      tools::read_members(Fields(*block, section, fields_.title(name), material_entries(), problems_),
                          list.emplace_back());
    }
  }

  static NetworkTerm network_term(const Fields &fields)
  {
    NetworkTerm term;
    tools::read_members(fields, term);
    term.volumetric_exponent = volumetric_exponent(fields);
    if (term.exponent == 0)
      fields.problem("exponent", "0 is not allowed", "Give an exponent such as 6");
    return term;
  }

  void law(FoamData &foam)
  {
    const bool one_term = fields_.given("shear_modulus") || fields_.given("exponent") ||
                          fields_.given("poisson") || fields_.given("volumetric_exponent");
    if (fields_.given("network"))
    {
      foam.network.clear();
      for (const auto *block : fields_.blocks("network"))
        foam.network.push_back(network_term(
          Fields(*block, "material.network", fields_.title("network"), material_entries(), problems_)));
      for (const char *name : {"exponent", "poisson", "volumetric_exponent"})
        if (fields_.given(name))
          fields_.problem(name, "network is given as well", "Put it in the network terms");
    }
    else if (fresh_ && fields_.given("shear_modulus"))
      foam.network = {network_term(fields_)};
    else if (one_term && foam.network.size() == 1)
    {
      auto &term = foam.network.front();
      fields_.take(term.shear_modulus, "shear_modulus", false);
      fields_.take(term.exponent, "exponent", false);
      if (fields_.given("poisson") || fields_.given("volumetric_exponent"))
        term.volumetric_exponent = volumetric_exponent(fields_);
    }
    else if (one_term && foam.network.size() > 1)
      fields_.problem("shear_modulus", "the material has several network terms",
                      "Change them with a network list");
    if (foam.network.empty())
      fields_.problem("shear_modulus", "is missing", "Add a line such as: shear_modulus = \"0.42 MPa\"");

    if (fields_.given("polymer_density"))
    {
      foam.relative_density = material_.density / fields_.value("polymer_density");
      if (foam.relative_density > 0.95)
        fields_.problem("polymer_density", "the foam is as dense as its polymer", "Check both densities");
    }
    terms(foam.relaxing, "relaxing");
    terms(foam.slipping, "slipping");
  }

  void law(RubberData &rubber)
  {
    // Small strains: mu = 2 (c10 + c01) and E = 3 mu when nearly incompressible.
    if (fields_.given("shear_modulus"))
      rubber.c10 = fields_.value("shear_modulus") / 2 - rubber.c01;
    else if (fields_.given("youngs_modulus"))
      rubber.c10 = fields_.value("youngs_modulus") / 6 - rubber.c01;
    else if (!fields_.given("c10") && (fresh_ || fields_.given("hardness")))
      from_hardness(rubber);
    if (fields_.given("c10") && (fields_.given("shear_modulus") || fields_.given("youngs_modulus")))
      fields_.problem("c10", "a modulus is given as well", "Keep one of the two");
    if (rubber.bulk_modulus <= 20 * 2 * (rubber.c10 + rubber.c01))
      fields_.problem("bulk_modulus", "is below 20 times the shear modulus",
                      "A rubber is nearly incompressible; make it a foam or raise the bulk modulus");
    terms(rubber.relaxing, "relaxing");
  }

  void from_hardness(RubberData &rubber)
  {
    const auto reading = fields_.hardness("hardness");
    if (!reading)
    {
      if (!fields_.given("hardness"))
        fields_.problem("youngs_modulus", "is missing", "Give a modulus, c10, or hardness = \"60 ShoreA\"");
      return;
    }
    if (reading->scale != "ShoreA" || reading->value < 20 || reading->value > 80)
      fields_.problem("hardness", fmt::format("\"{:g} {}\" gives no modulus", reading->value, reading->scale),
                      "Give 20 to 80 ShoreA, or a modulus");
    else
      rubber.c10 = modulus_gent(reading->value) / 6 - rubber.c01;
  }

  void law(PlateData &plate)
  {
    if (fresh_ && !fields_.given("youngs_modulus"))
      fields_.problem("youngs_modulus", "is missing", "Add a line such as: youngs_modulus = \"8 GPa\"");
    if (plate.poisson_ratio > 0.45)
      fields_.problem("poisson", "a plate takes at most 0.45",
                      "Make it a rubber if it is nearly incompressible");
    terms(plate.relaxing, "relaxing");
  }

  const Fields &fields_;
  Problems     &problems_;
  Material     &material_;
  bool          fresh_; ///< not started from another material: defaults hold
};
} // namespace

Material read_material(const toml::table &block, const MaterialSource &known, Problems &problems)
{
  const auto *name_node = block.get_as<std::string>("name");
  const auto  title = name_node ? name_node->get() : std::string("material");
  Fields      fields(block, "material", title, material_entries(), problems);
  Material    material;
  bool        fresh = true;
  if (fields.given("from"))
  {
    const auto  start = fields.text("from");
    const auto *found = known.find(start);
    if (found)
    {
      material = *found;
      fresh = false;
    }
    else if (!start.empty())
    {
      fields.problem("from", fmt::format("there is no material \"{}\"", start),
                     instead_of_material(start, known));
      return material;
    }
  }
  if (!fresh)
    material.readings = BenchReadings(), material.stated = StatedReadings();
  material.name = fields.text("name");
  MaterialReader(fields, problems, material, fresh).read();
  return material;
}

std::vector<Material> read_material_text(const std::string &text, const std::string &file)
{
  Problems              problems;
  std::vector<Material> materials;
  const auto            table = parse_sheet(text, file, problems);
  for (const auto &[key, node] : table)
    if (key.str() != "format" && key.str() != "material")
      problems.add(problem_at(key.source(), std::string(key.str()), "there is no such entry",
                              "A material file holds format = 1 and [[material]] blocks"));
  if (const auto *blocks = table.get_as<toml::array>("material"))
    for (const auto &node : *blocks)
    {
      if (!node.is_table())
        continue;
      MaterialSource earlier;
      earlier.find = [&](const std::string &name) -> const Material * {
        for (const auto &material : materials)
          if (material.name == name)
            return &material;
        return nullptr;
      };
      for (const auto &material : materials)
        earlier.names.push_back(material.name);
      const auto material = read_material(*node.as_table(), earlier, problems);
      if (!material.name.empty() && earlier.find(material.name))
        problems.add(problem_at(node.source(), material.name, "is given twice", "Rename one of the two"));
      materials.push_back(material);
    }
  problems.throw_if_any();
  return materials;
}

std::vector<Material> read_material_file(const std::filesystem::path &path)
{
  Problems   problems;
  const auto text = read_sheet_text(path, problems);
  problems.throw_if_any();
  return read_material_text(text, path.string());
}
} // namespace solemech::materials
