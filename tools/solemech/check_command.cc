// SPDX-License-Identifier: Apache-2.0
// solemech check: reads case files as a run would, and says in short what they hold and what is assumed.
#include "materials/library.h"
#include "materials/sheet.h"
#include "tools/results/air_text.h"
#include "tools/results/readings_table.h"
#include "tools/sheet/blank_sheet.h"
#include "tools/sheet/sheet.h"
#include "tools/solemech/assumptions.h"
#include "tools/solemech/commands.h"
#include "tools/solemech/inputs.h"
#include "tools/solemech/places.h"
#include "tools/solemech/sheet_input.h"
#include "tools/solemech/terminal.h"
#include "tools/solemech/text_table.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

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

/// What a bench sheet holds, and what is taken where nothing was written.
void check_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings)
{
  const auto  library = materials::Library::load(library_folder());
  const Sheet sheet = read_sheet(path, {settings, {case_folder()}, library.source()});
  TextTable   table({Align::left, Align::left});
  table.add_row({"stack", stack_text(sheet.setup)});
  table.add_row({"rig", rig_text(sheet.setup, Lengths::millimetre)});
  std::vector<std::string> names;
  for (const auto &unknown : sheet.unknowns)
    if (!unknown.parameter.minor)
      names.push_back(unknown.parameter.name);
  table.add_row(
    {"to settle", names.empty() ? "nothing is unknown" : fmt::format("{}", fmt::join(names, ", "))});
  names.clear();
  for (const auto &reading : sheet.readings)
    names.push_back(reading.observation.name + (reading.observation.held_out ? " (held out)" : ""));
  table.add_row({"readings", names.empty() ? "none yet" : fmt::format("{}", fmt::join(names, "; "))});
  for (const auto &taken : sheet.assumptions)
    table.add_row({"taken", taken});
  for (const auto &kept : sheet.kept)
    table.add_row({"kept", kept});
  fmt::print("{}: no errors\n{}", path.string(), table.text(2, page_width()));
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
  return tree.contains("drop") || tree.contains("ball") || tree.contains("press") ||
         tree.contains("durometer");
}

void check_rig(const std::filesystem::path &path)
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
  table.add_row({"use", fmt::format("rig = \"{}\" in a bench sheet beside it", path.filename().string())});
  materials::Problems told_before;
  if (const auto lines = invented_text(materials::read_sheet_text(path, told_before)); !lines.empty())
    table.add_row({"taken", lines});
  fmt::print("{}: no errors\n{}", path.string(), table.text(2, page_width()));
}
} // namespace

Exit check_files(const CheckRequest &request)
{
  if (request.files.size() == 1 && request.settings.empty() && is_rig_file(request.files.front()))
  {
    check_rig(request.files.front());
    return Exit::ok;
  }
  if (const auto path = sheet_among(request.files))
  {
    check_sheet(*path, request.settings);
    return Exit::ok;
  }
  for (const Input &input : read_inputs(request.files, request.settings))
  {
    const solver::Case &first = input.file.cases.front();
    TextTable           table({Align::left, Align::left});
    table.add_row({"stack", stack_text(first)});
    table.add_row({"rig", rig_text(first, Lengths::millimetre)});
    if (input.file.cases.size() > 1)
      table.add_row({"series", fmt::format("{}; stack and rig above are those of the first",
                                           plural(input.file.cases.size(), "case", "cases"))});
    table.add_row(
      {"assumed",
       fmt::format("{}", fmt::join(assumed_entries(input.path, input.file, request.settings), ", "))});
    fmt::print("{}: no errors\n{}", input.path.string(), table.text(2, page_width()));
  }
  return Exit::ok;
}
} // namespace solemech::tools
