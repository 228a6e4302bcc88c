// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/readings_block.h"

#include "solver/results/catalogue.h"
#include "solver/results/uncertainty.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
/// "core (soft moulded EVA) 16.0 mm".
std::string part_words(const Part &part)
{
  return fmt::format("{} ({}) {}", part.name, part.material, rigs::length(part.thickness));
}

std::vector<std::string> source_lines(const std::vector<Part> &parts)
{
  std::vector<std::pair<std::string, std::vector<std::string>>> by_source; // source -> names of parts
  for (const auto &part : parts)
  {
    const std::string source = part.source.empty() ? "no source given" : part.source;
    auto              found = std::find_if(by_source.begin(), by_source.end(),
                                           [&](const auto &entry) { return entry.first == source; });
    if (found == by_source.end())
      found = by_source.insert(found, {source, {}});
    found->second.push_back(part.name);
  }
  std::vector<std::string> lines;
  for (const auto &[source, names] : by_source)
    lines.push_back(fmt::format("Material of {}: {}.", listed(names), source));
  return lines;
}

std::string versions_line(const RecordFacts &record)
{
  std::vector<std::string> texts;
  for (const auto &[name, version] : record.versions)
    texts.push_back(name + " " + version);
  return texts.empty() ? "" : "Calculated with " + listed(texts) + ".";
}

std::vector<std::string> how(const Run &run, const solver::Reading &reading, const ReadingDisplay &display,
                             const std::vector<Part> &parts, const RecordFacts &record)
{
  std::vector<std::string> lines{capital(reading.meaning) + "."};
  if (const auto rule = solver::kind_of(reading).rule; !rule.empty())
    lines.emplace_back(rule);
  const auto error = error_words(reading);
  lines.push_back(error.empty() ? "Its numerical error was not estimated." : error);
  if (reading.doubt() >= 0)
    lines.push_back(fmt::format(
      "±{:.{}f}{} is a 90 % band. It includes that error and what the readings of the bench sheet left open, "
      "and was found from runs with the settled numbers at the ends of their bands.",
      solver::uncertainty(reading) * display.factor, display.digits,
      display.unit.empty() ? "" : " " + (display.unit == "%" ? "points" : display.unit)));
  if (const auto range = rigs::input_range(run, reading.name))
    lines.push_back(fmt::format("{:.{}f} to {:.{}f}{} is the range that {} allows. The numerical "
                                "error comes on top.",
                                range->low * display.factor, display.digits, range->high * display.factor,
                                display.digits, display.unit.empty() ? "" : " " + display.unit, range->why));
  if (!display.headline)
    return lines;

  std::vector<std::string> stack;
  for (const auto &part : parts)
    stack.push_back(part_words(part));
  lines.push_back("Rig: " + rig_text(run.setup, Lengths::millimetre) + ".");
  lines.push_back("Stack, from the foot down: " + listed(stack) + ".");
  for (const auto &change : run.changes)
    lines.push_back("Changed for this run: " + change + ".");
  for (auto &line : source_lines(parts))
    lines.push_back(std::move(line));
  if (layers_are_assumed(run))
    lines.emplace_back("The stack is invented for demonstration; nobody measured it.");
  if (!run.assumed.empty())
  {
    std::vector<std::string> entries = run.assumed;
    for (auto &entry : entries)
      std::replace(entry.begin(), entry.end(), '_', ' ');
    lines.push_back("Not in the sheet, default used: " + listed(entries) + ".");
  }
  const auto &facts = run.result.facts;
  const auto  picture = energy_picture(run.setup, run.result);
  lines.push_back(fmt::format(
    "Calculated as a moving, deforming section of {} cells in {} time steps{}.", facts.cells, facts.steps,
    picture.input > 0 ? fmt::format("; the energy account adds up to {:.1f} %", 100 * picture.accounted())
                      : ""));
  if (auto line = versions_line(record); !line.empty())
    lines.push_back(std::move(line));
  return lines;
}
} // namespace

std::string error_words(const solver::Reading &reading)
{
  if (reading.error < 0)
    return "";
  const auto   display = reading_display(reading);
  const double error = reading.error * display.factor;
  if (error < 0.5 * std::pow(10.0, -display.digits - 2))
    return "It follows from the rig alone and has no numerical error.";
  const std::string unit = display.unit == "%" ? "points" : display.unit;
  // One digit more than the value, so that a small error does not read as none.
  return fmt::format("Numerical error about ±{:.{}f}{}, from a second run with a coarser mesh and longer "
                     "time steps. Uncertainty in materials, thickness readings and the rig comes on top.",
                     error, display.digits + (error < std::pow(10.0, -display.digits) ? 1 : 0),
                     unit.empty() ? "" : " " + unit);
}

std::vector<ReadingBlock> reading_blocks(const Run &run, const std::vector<Part> &parts,
                                         const RecordFacts &record)
{
  std::vector<ReadingBlock> readings;
  for (const auto &reading : run.result.readings)
  {
    const ReadingDisplay display = reading_display(reading);
    const auto           shown = [&](double value) { return rounded(value * display.factor, 3); };
    ReadingBlock        &block = readings.emplace_back();
    block.name = reading.name;
    block.label = display.label;
    block.value = rounded(reading.value * display.factor, 8);
    block.unit = display.unit;
    block.digits = display.digits;
    if (reading.error >= 0)
      block.error = shown(reading.error);
    if (reading.doubt() >= 0)
      block.band = shown(solver::uncertainty(reading));
    if (const auto range = rigs::input_range(run, reading.name))
      block.range = {shown(range->low), shown(range->high)};
    block.meaning = reading.meaning;
    block.headline = display.headline;
    block.how = how(run, reading, display, parts, record);
  }
  return readings;
}

std::vector<PartBlock> part_blocks(const std::vector<Part> &parts, const Looks &looks)
{
  std::vector<PartBlock> blocks;
  for (const auto &part : parts)
  {
    const Look look = looks.of(part);
    blocks.push_back({part.name, part.material, look.tone, look.hatch, rounded(1e3 * part.thickness, 6),
                      part.assumed, part.source});
  }
  return blocks;
}

std::vector<solver::Warning> warning_blocks(const Run &run)
{
  std::vector<solver::Warning> warnings;
  for (const auto &warning : run.result.warnings)
    warnings.push_back({warning.reading, capital(warning.text) + "."});
  return warnings;
}

const std::vector<std::string> &model_limits(const RecordFacts &)
{
  static const std::vector<std::string> limits{
    "The model covers one spot of the sole under one striker: no bending at the ball of the foot, no rocker "
    "or toe spring, no plate working over its length.",
    "It has no side walls, no grooves and no shape of a foot; no shear in a side cut, no stability.",
    "Its plates are equally stiff in all directions of their plane. Its layers are glued perfectly.",
    "It has no scatter from shoe to shoe, and no person who adapts to a shoe.",
    "Do not take a difference below 2 points of energy return or 3 % of peak force as real, unless you know "
    "the inputs that well.",
    "A calculation does not prove that a shoe is safe."};
  return limits;
}
} // namespace solemech::tools::report
