// SPDX-License-Identifier: Apache-2.0
// solemech check: reads case files as a run would, and says in short what they hold and what is assumed.
#include "tools/answers/sheet/blank_sheet.h"
#include "tools/answers/sheet/pair_file.h"
#include "tools/answers/sheet/plausible.h"
#include "tools/answers/sheet/sheet.h"
#include "tools/answers/sheet/value_words.h"
#include "tools/language/case_errors.h"
#include "tools/language/library.h"
#include "tools/language/schema.h"
#include "tools/language/sheet.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/program/commands.h"
#include "tools/program/inputs.h"
#include "tools/program/pair_input.h"
#include "tools/program/places.h"
#include "tools/program/sheet_input.h"
#include "tools/program/sole_input.h"
#include "tools/program/sole_text.h"
#include "tools/program/terminal.h"
#include "tools/program/text_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <sstream>
#include <system_error>

namespace solemech::tools
{
namespace
{
std::string layer_text(const solver::Layer &layer)
{
  std::string text = fmt::format("{} {} {}", layer.name, layer.material.name,
                                 length_text(layer.thickness, Lengths::millimetre));
  if (layer.ring)
    text += fmt::format(" ringed by {}", layer.ring->name);
  if (layer.unit)
    text += fmt::format(" with air unit ({})", air_text(*layer.unit));
  return text;
}

std::string stack_text(const solver::Case &setup)
{
  std::vector<std::string> layers;
  for (const solver::Layer &layer : setup.layers)
    layers.push_back(layer_text(layer));
  return fmt::format("{}; {} in all", fmt::join(layers, ", "),
                     length_text(stack_height(setup.layers), Lengths::millimetre));
}

std::string plural(std::size_t count, const char *one, const char *many)
{
  return fmt::format("{} {}", count, count == 1 ? one : many);
}

std::string answer_text(const std::filesystem::path &path, const TextTable &table)
{
  return fmt::format("{}: no errors\n{}", path.string(), table.text(2, page_width()));
}

/// "rebound 244 mm +-7": with the +- that the sheet is settled with.
std::string reading_text(const SheetReading &reading)
{
  const auto  &seen = reading.observation;
  const double half = seen.doubt * doubts_in_half_band;
  return fmt::format("{} {}{}{}", seen.name, seen.meaning == settle::Meaning::at_least ? "at least " : "",
                     band_text({seen.value, seen.value - half, seen.value + half}, reading.probe.dimension,
                               reading.probe.unit),
                     seen.held_out ? " (held out)" : "");
}

/// What a bench sheet holds, and what is assumed where nothing was written.
TextTable sheet_table(const Sheet &sheet)
{
  TextTable table({Align::left, Align::left});
  table.add_row({"stack", stack_text(sheet.setup)});
  table.add_row({"rig", rig_text(sheet.setup, Lengths::millimetre)});
  std::vector<std::string> names;
  for (const auto &unknown : sheet.unknowns)
    if (!unknown.parameter.minor)
      names.push_back(unknown.parameter.name);
  table.add_row(
    {"to settle", names.empty() ? "nothing (no unknowns)" : fmt::format("{}", fmt::join(names, ", "))});
  names.clear();
  for (const auto &reading : sheet.readings)
    names.push_back(reading_text(reading));
  table.add_row({"readings", names.empty() ? "none yet" : fmt::format("{}", fmt::join(names, "; "))});
  for (const auto &question : sheet.asked)
    table.add_row({"please check", question});
  for (const auto &assumed : sheet.assumptions)
    table.add_row({"assumed", assumed});
  for (const auto &kept : sheet.kept)
    table.add_row({"kept", kept});
  return table;
}

/// Both parts of one file.
std::string check_pair(const std::string &name, const std::vector<std::string> &settings)
{
  const auto  pair = pair_named({name}, settings);
  std::string text = fmt::format("{}: no errors\n", name);
  for (const auto &sheet : pair.parts)
    text += fmt::format("  {}\n{}", sheet.part, sheet_table(sheet).text(4, page_width()));
  for (const auto &note : pair.notes)
    text += fmt::format("  {}\n", note);
  return text;
}

/// A rig file stands alone when it is still to be used: read with a plain block of rubber under it.
bool is_rig_file(const std::filesystem::path &path)
{
  std::error_code error;
  if (path.extension() != ".toml" || !std::filesystem::is_regular_file(path, error))
    return false;
  materials::Problems told_later; // whoever reads the file next
  const auto tree = materials::parse_sheet(materials::read_sheet_text(path, told_later), "", told_later);
  for (const char *other : {"layer", "stack", "rig", "pair", "reading", "lug"})
    if (tree.contains(other))
      return false;
  return std::ranges::any_of(sections_of({BlockOf::bench}),
                             [&](const auto &bench) { return tree.contains(bench); });
}

std::string check_rig(const std::filesystem::path &path)
{
  const auto        library = materials::Library::load(library_folder());
  std::stringstream name;
  name << toml::value<std::string>(path.filename().string());
  const auto text =
    fmt::format("format = 1\nrig = {}\n[[layer]]\nname = \"block\"\nmaterial = \"rubber-60a\"\n"
                "thickness = \"20 mm\"\n",
                name.str());
  const auto file = read_case_text(text, path.string(), {{}, {case_folder()}, library.source()});
  TextTable  table({Align::left, Align::left});
  table.add_row({"rig", rig_text(file.cases.front(), Lengths::millimetre)});
  table.add_row(
    {"use", fmt::format("rig = \"{}\" in a bench sheet in the same folder", path.filename().string())});
  materials::Problems told_before;
  if (const auto lines = invented_text(materials::read_sheet_text(path, told_before)); !lines.empty())
    table.add_row({"assumed", lines});
  return answer_text(path, table);
}

std::string check_case(const std::string &name, const std::vector<std::string> &settings)
{
  const Input         input = read_inputs({name}, settings).front();
  const solver::Case &first = input.file.cases.front();
  TextTable           table({Align::left, Align::left});
  table.add_row({"stack", stack_text(first)});
  table.add_row({"rig", rig_text(first, Lengths::millimetre)});
  if (input.file.cases.size() > 1)
    table.add_row({"series", fmt::format("{}; the stack and rig above are those of the first case",
                                         plural(input.file.cases.size(), "case", "cases"))});
  for (const auto &question : asked_of_stack(first))
    table.add_row({"please check", question});
  table.add_row({"assumed", fmt::format("{}", fmt::join(input.file.assumed, ", "))});
  return answer_text(input.path, table);
}

std::string check_sole(const std::string &name)
{
  const auto               file = sole_named(name);
  const geometry::SoleBody body(solver::shape_of(file.sole));
  return fmt::format("{}: no errors\n{}", name, sole_text(sole_facts(file.sole, body), file.assumed));
}

/// A rig, a sole, a bench sheet or a case.
std::string check_file(const std::string &name, const std::vector<std::string> &settings)
{
  if (settings.empty() && names_sole(name))
    return check_sole(name);
  if (settings.empty() && is_rig_file(name))
    return check_rig(name);
  const auto sheet = sheet_among({name});
  if (!sheet)
    return check_case(name, settings);
  materials::Problems told_later; // whoever reads the file next
  if (is_pair_file(materials::read_sheet_text(*sheet, told_later)))
    return check_pair(name, settings);
  return answer_text(*sheet, sheet_table(settleable_sheet(*sheet, settings)));
}
} // namespace

Exit check_files(const CheckRequest &request)
{
  std::string              text;
  materials::CaseErrors    errors; // of all files, before anything is printed
  std::vector<std::string> done;
  for (const auto &name : request.files)
    try
    {
      if (std::find(done.begin(), done.end(), name) == done.end())
        text += check_file(name, request.settings);
      done.push_back(name);
    }
    catch (const materials::CaseError &error)
    {
      errors.add(error);
    }
  errors.throw_if_any();
  fmt::print("{}", text);
  return Exit::ok;
}
} // namespace solemech::tools
