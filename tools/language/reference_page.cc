// SPDX-License-Identifier: Apache-2.0
// Writes the schema as a Markdown page; `cases/REFERENCE.md` is compared with it by a test.
#include "tools/language/schema.h"
#include "tools/language/sheet_entries.h"
#include "tools/language/sole_entries.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

namespace solemech::tools
{
namespace
{
using materials::Dimension;

std::string kind_text(const materials::Entry &entry)
{
  const auto  units = materials::unit_list(entry.dimension);
  std::string kind(materials::dimension_name(entry.dimension));
  if (entry.dimension == Dimension::choice)
    kind.clear();
  else if (!units.empty() && entry.dimension != Dimension::share)
    kind += " (" + units + ")";
  else if (entry.dimension == Dimension::hardness)
    kind += " (ShoreA, ShoreD, ShoreOO, AskerC)";
  else if (entry.dimension == Dimension::share)
    kind += " (%, or a plain number)";
  for (const auto &word : materials::word_list(entry))
    kind += (kind.empty() ? "`" : ", `") + word + "`";
  return kind;
}

std::string section_text(const Section &section, std::span<const materials::Entry> entries)
{
  auto text =
    fmt::format("\n## {}\n\n{}\n\n| entry | value | range | default | meaning |\n|---|---|---|---|---|\n",
                section.heading, section.meaning);
  for (const auto &entry : entries)
  {
    if (entry.section != section.name)
      continue;
    auto meaning = std::string(entry.meaning);
    if (!entry.instead_of.empty())
      meaning += fmt::format(" Not together with `{}`.", entry.instead_of);
    text += fmt::format(
      "| `{}` | {} | {} | {} | {} |\n", entry.name, kind_text(entry), materials::range_text(entry),
      entry.fallback.empty() || entry.fallback == materials::required ? std::string(entry.fallback)
                                                                      : fmt::format("`{}`", entry.fallback),
      meaning);
  }
  return text;
}
} // namespace

std::string reference_page()
{
  std::string page =
    "# Entries of case, stack, rig and material files\n\n"
    "Written by the program from the table that it reads files with. Write values with units in quotes: "
    "`thickness = \"12 mm\"`.\nOn the command line, name an entry by its block or layer: "
    "`--set core.thickness=\"18 mm\"`, `--set unit.gauge_pressure=\"20 psi\"`,\n`--set drop.energy=\"7 J\"`, "
    "`--set eva-soft.shear_modulus=\"0.5 MPa\"`. Only when a name stands for a layer and a material as well, "
    "the full\n"
    "address is needed: `layer.core.thickness`, `material.core.density`.\n\n"
    "A stack file holds layers or a lug, a plug and your own materials; a rig file holds one of ";
  page += fmt::format("{} and slide, and surroundings.\n", fmt::join(sections_of({BlockOf::bench}), ", "));
  for (const auto &section : case_sections())
    page += section_text(section, case_entries());
  page +=
    "\n# Entries that only a bench sheet has\n\n"
    "A bench sheet is a case file with readings, or with something unknown or uncertain. In it "
    "`material` and `ring` may "
    "be `\"unknown foam\"` or `\"unknown rubber\"`, with a letter\nafter it when there are several; a "
    "layer may carry "
    "`hardness = \"42 AskerC\"` and `density = \"175 kg/m3\"`; and an uncertainty may follow `thickness`, "
    "`gauge_pressure`, and "
    "`height`, `mass` and\n`guide_loss` of `[drop]`: `\"16.0 mm +- 0.5\"`; +- is a 90 % band. A rig file "
    "cannot hold it: write the entry with its +- under `[drop]` of the sheet. Text entries below take values "
    "with units and +-.\n";
  for (const auto &section : sheet_sections())
    page += section_text(section, sheet_entries());
  page += "\n# Entries of sole files\n\n"
          "A sole file describes a whole left sole by callipers; `solemech sheet --sole my-sole.toml` writes "
          "one to "
          "fill in. It may hold [[material]] blocks like a case file.\n";
  for (const auto &section : sole_sections())
    page += section_text(section, sole_entries());
  return page;
}
} // namespace solemech::tools
