// SPDX-License-Identifier: Apache-2.0
#include "tools/language/schema.h"

#include "solver/results/catalogue.h"
#include "tools/language/described_case.h"
#include "tools/language/doubt_reader.h"
#include "tools/language/material_reader.h"
#include "tools/language/member_reader.h"
#include "tools/language/reading_measure.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
using namespace materials;
using D = Dimension;

/// Entries that stand for no member of a case: heads, lists, lessons, expectations. The blocks of the rigs
/// follow on [plug].
const Entry entries[] = {
  {"", "format", D::count, within(1, 1), required, "Version of the file format; this program reads 1."},
  {"", "title", D::text, any_value, "", "Title, one line."},
  {"", "group", D::text, any_value, "Own cases", "Heading under which the case is listed."},
  {"", "question", D::text, any_value, "", "The question that the case answers."},
  {"", "invented", D::flag, any_value, "false",
   "Whether stack and bench are made up: answers then say that they describe no product."},
  {"", "note", D::text, any_value, "", "Anything else: scenario, sources, reasons."},
  {"", "stack", D::text, any_value, "", "Stack file to use, by name or path.", "", "layer"},
  {"", "rig", D::text, any_value, "",
   "Rig file to use, by name or path. A block in this file changes single entries of it."},
  {"", "accuracy", D::share, within(1e-4, 0.1), "1 %",
   "Target accuracy of the readings, relative. Mesh and time step follow from it."},
  {"", "layer", D::blocks, any_value, "",
   "The layers of the stack, foot side first (for a gauge: from the gauge down).", "", "stack"},
  {"", "material", D::blocks, any_value, "", "Your own materials, or changed ones of the library."},
  {"", "plug", D::block, any_value, "", "The round plug of the stack under the striker."},
  {"", "surroundings", D::block, any_value, "", "Temperature, gravity, air."},
  {"", "change", D::block, any_value, "",
   "Changes to the stack and rig files, e.g. core.thickness = \"18 mm\"."},
  {"", "series", D::blocks, any_value, "", "Entries to vary; several series give every combination."},
  {"", "settled", D::blocks, any_value, "",
   "Numbers with an uncertainty. Every reading then has a band. A settled stack has them."},
  {"", "expect", D::blocks, any_value, "", "Expected ranges of readings, with their source."},
  {"", "lesson", D::block, any_value, "",
   "A question to guess first, answered from the numbers of the runs."},

  {"series", "vary", D::text, any_value, required,
   "Entry to vary, named as on the command line, or stack, or rig."},
  {"series", "values", D::list, any_value, required, "Its values, one case for each."},
  {"series", "labels", D::list, any_value, "", "Endings of the case labels; default: the values."},

  {"expect", "label", D::text, any_value, "", "Case of the series (label or its ending); default: all."},
  {"expect", "source", D::text, any_value, required, "Source of the ranges."},
  {"expect", "outside", D::text, any_value, "",
   "Readings that fall outside, by name, and the reason: \"contact_time: ...; peak_force: ...\"."},

  {"lesson", "number", D::count, within(1, 1000), required, "Position in the list of lessons."},
  {"lesson", "measure", D::text, any_value, "",
   "The number that decides: `reading:run`, `a - b`, `a / b` or `a / b - 1`. Without it, each choice needs "
   "its own.",
   "", "winner"},
  {"lesson", "winner", D::choice, any_value, "greatest",
   "Which choice is right when each has a measure: the one with the largest or with the smallest size.",
   "greatest|least", "measure"},
  {"lesson", "close", D::share, within(0, 0.5), "0 %",
   "If the two leading sizes differ by less than this they count as equal: the choice without a measure is "
   "then right."},
  {"lesson", "choice", D::blocks, any_value, "", "The choices, two to six."},
  {"lesson", "explanation", D::list, any_value, required,
   "Paragraphs shown with every answer. Insert numbers as `{reading:run}`, with their sign as `{+a - b}`."},
  {"lesson", "readings", D::list, any_value, required, "Readings of the table to fill in."},
  {"lesson", "source", D::text, any_value, required,
   "Source of the finding outside this program, or \"common practice, no source\"."},

  {"lesson.choice", "text", D::text, any_value, required, "The choice as shown."},
  {"lesson.choice", "below", D::text, any_value, "",
   "The choice is right when the measure is below this value, and not below that of the choice before. Not "
   "given on the last choice."},
  {"lesson.choice", "measure", D::text, any_value, "", "Its own number, if the lesson has none."},
  {"lesson.choice", "because", D::text, any_value, required,
   "Shown when this is the right choice. Numbers as in the explanation."},
};

/// The sections of the rigs follow on [plug].
const Section sections_beside_rigs[] = {
  {"", "Top of the file", "Title of the case, and which stack and rig it uses."},
  {"layer", "[[layer]]", "One block per layer, foot side first.", BlockOf::stack},
  {"layer.unit", "[layer.unit]", "An air unit inside the layer above this block."},
  {"plug", "[plug]", "The piece of the stack that is modelled.", BlockOf::stack},
  {"surroundings", "[surroundings]", "Where the test is done.", BlockOf::surroundings},
  {"series", "[[series]]", "Several cases from one file."},
  {"settled", "[[settled]]",
   "Numbers with an uncertainty, one block for each. `run SHEET` writes them into settled.toml; readings "
   "then have a band.",
   BlockOf::stack},
  {"expect", "[[expect]]",
   "Expected ranges, each a list of two values: `peak_force = [\"1.20 kN\", \"1.45 kN\"]`."},
  {"lesson", "[lesson]",
   "A teaching case for `solemech learn`. The right choice is found from the runs, never written down."},
  {"lesson.choice", "[[lesson.choice]]", "One choice of the lesson."},
  {"material", "[[material]]",
   "Your own materials and changed library materials, with the same entries as in the library.",
   BlockOf::stack},
  {"material.network", "network = [{...}]", "Terms of the foam network."},
  {"material.relaxing", "relaxing = [{...}]", "Relaxing branches."},
  {"material.slipping", "slipping = [{...}]", "Slipping branches."},
  {"material.after_use", "[[material.after_use]]",
   "What use leaves of a material, as a band. Printed by `solemech materials`; no run uses it yet."},
};

/// Names of the sections for which the condition holds, in order.
template <typename Condition>
std::vector<std::string> section_names(const Condition &condition)
{
  std::vector<std::string> names;
  for (const auto &section : case_sections())
    if (condition(section))
      names.emplace_back(section.name);
  return names;
}

/// Adds the entries of a described struct as a section.
template <typename Struct>
void add_entries(std::string_view section, std::vector<Entry> &list)
{
  for_each_entry<Struct>([&](const Entry &entry) {
    list.push_back(entry);
    list.back().section = section;
  });
}
} // namespace

std::span<const Entry> case_entries()
{
  static const std::vector<Entry> all = [] {
    std::vector<Entry> list;
    for (const auto &entry : entries)
    {
      list.push_back(entry);
      if (entry.section.empty() && entry.name == "plug")
        for_each_rig_block([&]<typename Struct>() {
          constexpr auto &block = Description<Struct>::block;
          list.push_back({"", block.name, block.is_list ? D::blocks : D::block, any_value, "", block.entry});
        });
    }
    const auto of_doubts = doubt_entries();
    list.insert(list.end(), of_doubts.begin(), of_doubts.end());
    for (const auto &kind : solver::all_readings())
      if (!kind.expected.empty())
        list.push_back({"expect", kind.name, dimension_of(kind), any_value, "", kind.expected});
    add_entries<solver::Layer>("layer", list);
    add_entries<solver::AirUnit>("layer.unit", list);
    add_entries<solver::Plug>("plug", list);
    for_each_rig_block(
      [&]<typename Struct>() { add_entries<Struct>(Description<Struct>::block.name, list); });
    add_entries<solver::Case>("surroundings", list);
    const auto of_materials = material_entries();
    list.insert(list.end(), of_materials.begin(), of_materials.end());
    return list;
  }();
  return all;
}

const Entry *find_entry(std::string_view section, std::string_view name)
{
  for (const auto &entry : case_entries())
    if (entry.section == section && entry.name == name)
      return &entry;
  return nullptr;
}

std::vector<std::string> entry_names(std::string_view section)
{
  std::vector<std::string> names;
  for (const auto &entry : case_entries())
    if (entry.section == section)
      names.emplace_back(entry.name);
  return names;
}

std::span<const Section> case_sections()
{
  static const std::vector<Section> all = [] {
    std::vector<Section> list;
    for (const auto &section : sections_beside_rigs)
    {
      list.push_back(section);
      if (section.name == "plug")
        for_each_rig_block([&]<typename Struct>() {
          constexpr auto &block = Description<Struct>::block;
          const auto      name = std::string(block.name);
          list.push_back(
            {block.name, block.is_list ? "[[" + name + "]]" : "[" + name + "]", block.about, block.of});
        });
    }
    return list;
  }();
  return all;
}

std::vector<std::string> sections_of(std::initializer_list<BlockOf> kinds)
{
  return section_names(
    [&](const Section &section) { return std::ranges::find(kinds, section.of) != kinds.end(); });
}

std::vector<std::string> single_blocks()
{
  return section_names([](const Section &section) {
    const auto *entry = find_entry("", section.name);
    return entry && entry->dimension == Dimension::block && section.name != "lesson";
  });
}
} // namespace solemech::tools
