// SPDX-License-Identifier: Apache-2.0
// solemech materials: the library as a table, or single materials with every number they have.
#include "tools/language/library.h"
#include "tools/language/missing_material.h"
#include "tools/language/quantity.h"
#include "tools/program/commands.h"
#include "tools/program/material_facts.h"
#include "tools/program/places.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>

namespace solemech::tools
{
using namespace materials;

namespace
{
constexpr const char *table_notes = "ball rebound: height of an ISO 8307 ball. pulse return: loop of a 2000 "
                                    "N, 185 ms press pulse. Both were read on\n"
                                    "the virtual bench; - means not read. Asker C of foams: sphere on "
                                    "an elastic half-space (Sneddon 1965);\n"
                                    "Shore A of rubber: Gent 1958, good to 25 %. modulus: slow, at small "
                                    "strain; of foams with the gas in their cells.\n"
                                    "`solemech materials NAME` shows every number of a material.\n";

std::string percent(double share)
{
  return share < 0 ? "-" : fmt::format("{:.0f} %", 100 * share);
}

std::string modulus_text(double modulus)
{
  if (modulus >= 1e9)
    return fmt::format("{:.3g} GPa", modulus / 1e9);
  return fmt::format("{:.3g} MPa", modulus / 1e6);
}

std::string library_table(const Library &library)
{
  TextTable table(
    {Align::left, Align::right, Align::right, Align::right, Align::right, Align::right, Align::left});
  table.add_row({"material", "density", "hardness", "ball", "pulse", "modulus", "source"});
  table.add_row({"", "kg/m3", "", "rebound", "return", "", ""});
  for (const Material &material : library.materials())
    table.add_row({material.name, fmt::format("{:.0f}", material.density), hardness_text(material),
                   percent(material.readings.ball_rebound), percent(material.readings.pulse_return),
                   modulus_text(slow_modulus(material)), material.source});
  return table.text(0, page_width());
}

/// Every number of a material, one a line.
class Description
{
public:
  explicit Description(const Material &material)
  {
    line("density", quantity_text(material.density, Dimension::density));
    line("hardness", hardness_text(material));
    line("modulus, slow, small strain", modulus_text(slow_modulus(material)));
    line("ball rebound", percent(material.readings.ball_rebound));
    line("pulse return", percent(material.readings.pulse_return));
    std::visit([this](const auto &data) { law(data); }, material.data);
    line("valid at", quantity_text(material.thermal.reference_temperature, Dimension::temperature));
    line("change of moduli per kelvin", fmt::format("{:+.2g} %", 100 * material.thermal.modulus_per_kelvin));
    line("source", material.source);
  }

  std::string text() const { return table_.text(2, page_width()); }

private:
  void line(const std::string &name, const std::string &value) { table_.add_row({name, value}); }

  void relaxing(const std::vector<RelaxingTerm> &terms)
  {
    for (const RelaxingTerm &term : terms)
      line("relaxing branch",
           fmt::format("share {:.3g} %, time {:g} ms", 100 * term.share, 1e3 * term.relaxation_time));
  }

  void law(const FoamData &foam)
  {
    for (const NetworkTerm &term : foam.network)
      line("network", fmt::format("shear modulus {}, exponent {:g}, beta {:g}",
                                  modulus_text(term.shear_modulus), term.exponent, term.volumetric_exponent));
    line("relative density", fmt::format("{:g}", foam.relative_density));
    line("closed cells", percent(foam.closed_cells));
    line("densification", fmt::format("{:.3g} kPa, exponent {:g}", foam.densification_modulus / 1e3,
                                      foam.densification_exponent));
    relaxing(foam.relaxing);
    for (const SlippingTerm &term : foam.slipping)
      line("slipping branch", fmt::format("share {:.3g} %, cap {:g}", 100 * term.share, term.cap));
    line("recovery of slip", fmt::format("{:g} s", foam.recovery_time));
  }

  void law(const RubberData &rubber)
  {
    line("coefficients",
         fmt::format("c10 {}, c20 {}, c30 {}, c01 {}", modulus_text(rubber.c10), modulus_text(rubber.c20),
                     modulus_text(rubber.c30), modulus_text(rubber.c01)));
    line("bulk modulus", modulus_text(rubber.bulk_modulus));
    relaxing(rubber.relaxing);
  }

  void law(const PlateData &plate)
  {
    line("Poisson ratio", fmt::format("{:g}", plate.poisson_ratio));
    relaxing(plate.relaxing);
  }

  TextTable table_{{Align::left, Align::left}};
};

const Material &find_or_suggest(const Library &library, const std::string &name)
{
  if (const Material *material = library.find(name))
    return *material;
  const std::string cure = instead_of_material(name, library.source());
  throw UsageError(
    fmt::format("there is no material '{}'. {}", name,
                cure.ends_with('?') ? cure + " `solemech materials` lists them." : cure + "."));
}
} // namespace

Exit list_materials(const MaterialsRequest &request)
{
  const Library library = Library::load(library_folder());
  if (request.names.empty())
  {
    fmt::print("{}\n{}", library_table(library), table_notes);
    return Exit::ok;
  }
  // All names are looked up before anything is printed.
  std::vector<const Material *> chosen;
  for (const std::string &name : request.names)
    chosen.push_back(&find_or_suggest(library, name));
  for (const Material *material : chosen)
    fmt::print("{}: {}\n{}", heading(material->name), material->title, Description(*material).text());
  return Exit::ok;
}
} // namespace solemech::tools
