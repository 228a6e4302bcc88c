// SPDX-License-Identifier: Apache-2.0
// solemech materials: the library as a table, single materials with every number they have, or those
// nearest to what somebody has read.
#include "tools/language/library.h"
#include "tools/language/missing_material.h"
#include "tools/language/quantity.h"
#include "tools/program/commands.h"
#include "tools/program/material_facts.h"
#include "tools/program/material_likeness.h"
#include "tools/program/places.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>

namespace solemech::tools
{
using namespace materials;

namespace
{
constexpr const char *table_notes =
  R"(All readings are the model's: a gauge after 3 s and an ISO 8307 ball on a block of 50 mm, and the loop of a 2000 N,
185 ms press pulse, read on the virtual bench; - means not read. In brackets: what the source states, where that is
another number (a plate's or film's hardness is the stated one). Moduli of rubber: Gent 1958, good to 25 %. modulus:
slow, at small strain; of foams with the gas in their cells.
`solemech materials NAME` shows every number of a material, `--like "55 AskerC, 48 % ball"` the nearest ones.
)";

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
                   return_text(material.readings.ball_rebound, material.stated.ball_rebound),
                   return_text(material.readings.pulse_return, material.stated.pulse_return),
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
    readings(material);
    line("modulus, slow, small strain", modulus_text(slow_modulus(material)));
    std::visit([this](const auto &data) { law(data); }, material.data);
    line("valid at", quantity_text(material.thermal.reference_temperature, Dimension::temperature));
    line("change of moduli per kelvin", fmt::format("{:+.2g} %", 100 * material.thermal.modulus_per_kelvin));
    line("source", material.source);
    for (const UseBand &band : material.after_use)
      use(band);
  }

  std::string text() const { return table_.text(2, page_width()); }

private:
  void line(const std::string &name, const std::string &value) { table_.add_row({name, value}); }

  /// What the model reads, and what the source states.
  void readings(const Material &material)
  {
    const auto share = [this](const std::string &name, double read, double stated) {
      line(name + ", model", percent(read));
      if (stated >= 0)
        line(name + ", stated", percent(stated));
    };
    const auto points = [](double value, const char *scale) {
      return fmt::format("{:.1f} {}", value, scale);
    };
    if (material.readings.asker_c >= 0)
      line("hardness, model", points(material.readings.asker_c, "AskerC"));
    if (material.readings.shore_a >= 0)
      line("hardness, model", points(material.readings.shore_a, "ShoreA"));
    line("hardness, stated", material.hardness.empty() ? "-" : material.hardness);
    share("ball rebound", material.readings.ball_rebound, material.stated.ball_rebound);
    share("pulse return", material.readings.pulse_return, material.stated.pulse_return);
  }

  void use(const UseBand &band)
  {
    const auto range = [](double from, double to) {
      return fmt::format("{:.0f}..{:.0f} %", 100 * from, 100 * to);
    };
    line(fmt::format("{}, after {}", band.kind, band.use),
         fmt::format("{} of the stiffness and {} of the return are left. No run uses it yet. Source: {}",
                     range(band.stiffness_from, band.stiffness_to), range(band.return_from, band.return_to),
                     band.source));
  }

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

constexpr std::size_t n_nearest = 5;

std::string nearest_table(const Library &library, const std::vector<Wanted> &wanted)
{
  using namespace likeness_scale;
  TextTable table({Align::left, Align::right, Align::right, Align::right, Align::right, Align::right,
                   Align::right, Align::left});
  table.add_row({"material", "apart", "density", "hardness", "ball", "pulse", "modulus", "beside yours"});
  table.add_row({"", "", "kg/m3", "", "rebound", "return", "", ""});
  auto list = by_likeness(library.materials(), wanted);
  list.resize(std::min(n_nearest, list.size()));
  for (const auto &[material, distance] : list)
  {
    std::vector<std::string> differences;
    for (const Wanted &number : wanted)
      if (auto words = difference_text(*material, number); !words.empty())
        differences.push_back(std::move(words));
    table.add_row({material->name, fmt::format("{:.1f}", distance), fmt::format("{:.0f}", material->density),
                   hardness_text(*material),
                   return_text(material->readings.ball_rebound, material->stated.ball_rebound),
                   return_text(material->readings.pulse_return, material->stated.pulse_return),
                   modulus_text(slow_modulus(*material)),
                   differences.empty() ? "the same" : fmt::format("{}", fmt::join(differences, ", "))});
  }
  std::vector<std::string> words;
  for (const Wanted &number : wanted)
    words.push_back(wanted_text(number));
  return fmt::format(
    "Nearest to {}:\n{}"
    "apart: root mean square of the differences, each counted in steps of {:g} points of hardness, "
    "{:.0f} % of density,\n{:.0f} points of a return, {:.0f} % of modulus; a number that an entry "
    "does not have counts as {:g} steps. Under 1 is as near as\nhand tools can tell.\n",
    fmt::join(words, ", "), table.text(0, page_width()), hardness, 100 * (density_ratio - 1), 100 * share,
    100 * (modulus_ratio - 1), likeness_scale::lacking);
}
} // namespace

Exit list_materials(const MaterialsRequest &request)
{
  if (request.like && !request.names.empty())
    throw UsageError("`materials` takes names or --like, not both");
  const auto    wanted = request.like ? read_wanted(*request.like) : std::vector<Wanted>();
  const Library library = Library::load(library_folder());
  if (request.like)
  {
    fmt::print("{}", nearest_table(library, wanted));
    return Exit::ok;
  }
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
