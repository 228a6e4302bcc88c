// SPDX-License-Identifier: Apache-2.0
#include "tools/language/material_reader.h"

#include "materials/hardness.h"
#include "tools/language/missing_material.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>

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
    fields_.take(material_.density, "density", fresh_);
    if (const auto hardness = fields_.hardness("hardness"))
      material_.hardness = fmt::format("{:g} {}", hardness->value, hardness->scale);
    fields_.take(material_.thermal.reference_temperature, "reference_temperature", fresh_);
    fields_.take(material_.thermal.activation_energy, "activation_energy", fresh_);
    fields_.take(material_.thermal.modulus_per_kelvin, "modulus_per_kelvin", fresh_);
    fields_.take(material_.readings.ball_rebound, "ball_rebound", false);
    fields_.take(material_.readings.pulse_return, "pulse_return", false);
    choose_law();
    std::visit([this](auto &data) { law(data); }, material_.data);
    if (material_.title.empty())
      material_.title = material_.name;
  }

private:
  void text(std::string &target, const char *name)
  {
    if (fresh_ || fields_.given(name))
      target = fields_.text(name);
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
  void refuse(std::initializer_list<const char *> names, const char *law)
  {
    for (const char *name : names)
      if (fields_.given(name))
        fields_.problem(name, fmt::format("means nothing for a {}", law),
                        "Take the line out, or give another law");
  }

  void relaxing(std::vector<RelaxingTerm> &terms)
  {
    if (!fields_.given("relaxing"))
      return;
    terms.clear();
    for (const auto *block : fields_.blocks("relaxing"))
    {
      const Fields term(*block, "material.relaxing", fields_.title("relaxing"), material_entries(),
                        problems_);
      terms.push_back({term.value("share"), term.value("time")});
    }
  }

  static NetworkTerm network_term(const Fields &fields)
  {
    const NetworkTerm term{fields.value("shear_modulus"), fields.value("exponent"),
                           volumetric_exponent(fields)};
    if (term.exponent == 0)
      fields.problem("exponent", "0 is not allowed", "Give an exponent such as 6");
    return term;
  }

  void law(FoamData &foam)
  {
    refuse({"youngs_modulus", "c10", "c20", "c30", "c01", "bulk_modulus"}, "foam");
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
          fields_.problem(name, "network is given as well", "Put it into the network terms");
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
                      "Change them by a network list");
    if (foam.network.empty())
      fields_.problem("shear_modulus", "is missing", "Add a line such as: shear_modulus = \"0.42 MPa\"");

    fields_.take(foam.relative_density, "relative_density", fresh_);
    if (fields_.given("polymer_density"))
    {
      foam.relative_density = material_.density / fields_.value("polymer_density");
      if (foam.relative_density > 0.95)
        fields_.problem("polymer_density", "the foam is as dense as its polymer", "Check both densities");
    }
    fields_.take(foam.closed_cells, "closed_cells", fresh_);
    fields_.take(foam.gas_exponent, "gas_exponent", fresh_);
    fields_.take(foam.densification_modulus, "densification_modulus", fresh_);
    fields_.take(foam.densification_exponent, "densification_exponent", fresh_);
    fields_.take(foam.recovery_time, "recovery_time", fresh_);
    relaxing(foam.relaxing);
    if (fields_.given("slipping"))
    {
      foam.slipping.clear();
      for (const auto *block : fields_.blocks("slipping"))
      {
        const Fields term(*block, "material.slipping", fields_.title("slipping"), material_entries(),
                          problems_);
        foam.slipping.push_back({term.value("share"), term.value("cap")});
      }
    }
  }

  void law(RubberData &rubber)
  {
    refuse({"exponent", "poisson", "volumetric_exponent", "network", "relative_density", "polymer_density",
            "closed_cells", "gas_exponent", "densification_modulus", "densification_exponent", "slipping",
            "recovery_time"},
           "rubber");
    fields_.take(rubber.c10, "c10", false);
    fields_.take(rubber.c20, "c20", fresh_);
    fields_.take(rubber.c30, "c30", fresh_);
    fields_.take(rubber.c01, "c01", fresh_);
    fields_.take(rubber.bulk_modulus, "bulk_modulus", fresh_);
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
    relaxing(rubber.relaxing);
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
    refuse({"shear_modulus", "exponent", "volumetric_exponent", "network", "relative_density",
            "polymer_density", "closed_cells", "gas_exponent", "densification_modulus",
            "densification_exponent", "slipping", "recovery_time", "c10", "c20", "c30", "c01",
            "bulk_modulus"},
           "plate");
    if (fresh_ && !fields_.given("youngs_modulus"))
      fields_.problem("youngs_modulus", "is missing", "Add a line such as: youngs_modulus = \"8 GPa\"");
    fields_.take(plate.youngs_modulus, "youngs_modulus", false);
    fields_.take(plate.poisson_ratio, "poisson", fresh_);
    if (plate.poisson_ratio > 0.45)
      fields_.problem("poisson", "a plate takes at most 0.45",
                      "Make it a rubber if it is nearly incompressible");
    relaxing(plate.relaxing);
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
    material.readings = BenchReadings();
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
