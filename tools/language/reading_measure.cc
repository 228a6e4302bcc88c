// SPDX-License-Identifier: Apache-2.0
#include "tools/language/reading_measure.h"

#include "solver/results/catalogue.h"
#include "tools/language/described_rigs.h"
#include "tools/language/nearest_name.h"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <sstream>

namespace solemech::tools
{
using materials::Dimension;
using materials::nearest_name;

namespace
{
using solver::ReadingKind;

constexpr UnitFact unit_facts[] = {
  {"fibre_tension", Dimension::force, &solver::ChamberFacts::fibre_tension},
  {"threshold_load", Dimension::force, &solver::ChamberFacts::threshold_load},
  {"heat_time", Dimension::time, &solver::ChamberFacts::heat_time}};

RigWords words_of(RigKind kind)
{
  RigWords found{};
  for_each_rig_block([&]<typename Struct>() {
    if constexpr (requires { Description<Struct>::words; })
      if (Description<Struct>::words.kind == kind)
        found = Description<Struct>::words;
  });
  assert(!found.word.empty());
  return found;
}

/// "Take a, b or c".
std::string cure_of(const RigWords &words)
{
  std::vector<std::string_view> names;
  for (const auto *kind : words.instead)
    if (kind)
      names.push_back(kind->name);
  const auto last = names.back();
  names.pop_back();
  return names.empty() ? fmt::format("Take {}", last)
                       : fmt::format("Take {} or {}", fmt::join(names, ", "), last);
}

bool contains(const auto &list, std::string_view name)
{
  return std::find(std::begin(list), std::end(list), name) != std::end(list);
}

std::string near_or_all(const std::string &name, const std::vector<std::string> &names)
{
  const auto near = nearest_name(name, names);
  return near.empty() ? fmt::format("Known: {}", fmt::join(names, ", "))
                      : fmt::format("Did you mean \"{}\"?", near);
}

std::size_t run_named(const std::string &label, const std::vector<NamedRun> &runs)
{
  std::vector<std::string> endings;
  for (std::size_t i = 0; i < runs.size(); ++i)
  {
    if (runs[i].ending == label)
      return i;
    endings.push_back(runs[i].ending);
  }
  if (runs.size() == 1)
    throw InvalidMeasure(fmt::format("there is a single run and none called \"{}\"", label),
                         "Leave out the colon and what follows");
  if (label.empty())
    throw InvalidMeasure("does not name its run",
                         fmt::format("Write the reading, a colon and one of {}", fmt::join(endings, ", ")));
  throw InvalidMeasure(fmt::format("there is no run \"{}\"", label), near_or_all(label, endings));
}

ReadingOf reading_of(const std::string &text, const std::vector<NamedRun> &runs)
{
  const auto        colon = text.find(':');
  const std::string name = text.substr(0, colon);
  const auto run = run_named(colon == std::string::npos ? std::string() : text.substr(colon + 1), runs);
  if (name.starts_with(lost_in))
  {
    const auto layer = name.substr(lost_in.size());
    if (!contains(runs[run].layers, layer))
      throw InvalidMeasure(fmt::format("the stack of this run has no layer \"{}\"", layer),
                           near_or_all(layer, runs[run].layers));
    return {name, run, runs[run].ending, Dimension::share};
  }
  const auto dimension = reading_dimension(name);
  if (dimension == Dimension::text)
    throw InvalidMeasure(fmt::format("there is no reading \"{}\"", name),
                         near_or_all(name, measured_readings()));
  if (const auto words = words_of(runs[run].rig); !rig_gives(name, words.kind))
    throw InvalidMeasure(fmt::format("a {} does not give {}", words.word, name), cure_of(words));
  if (find_unit_fact(name) && !runs[run].has_unit)
    throw InvalidMeasure(fmt::format("the stack of this run has no air unit that could have a {}", name),
                         "Take a run with an air unit");
  return {name, run, runs[run].ending, dimension};
}
} // namespace

Dimension dimension_of(const ReadingKind &kind)
{
  using D = Dimension;
  constexpr std::pair<std::string_view, D> dimensions[] = {
    {"m", D::length}, {"s", D::time},    {"N", D::force},       {"Pa", D::pressure},
    {"J", D::energy}, {"m3", D::volume}, {"N/m", D::stiffness}, {"N m", D::moment}};
  for (const auto &[unit, dimension] : dimensions)
    if (kind.unit == unit)
      return dimension;
  return kind.shown.unit == "%" ? D::share : D::number;
}

const UnitFact *find_unit_fact(std::string_view name)
{
  const auto *found = std::find_if(std::begin(unit_facts), std::end(unit_facts),
                                   [&](const auto &fact) { return fact.name == name; });
  return found == std::end(unit_facts) ? nullptr : found;
}

Dimension reading_dimension(std::string_view name)
{
  if (const auto *fact = find_unit_fact(name))
    return fact->dimension;
  const auto *kind = solver::find_reading(name);
  return kind && !kind->expected.empty() ? dimension_of(*kind) : Dimension::text;
}

bool rig_gives(std::string_view reading, RigKind rig)
{
  if (find_unit_fact(reading))
    return words_of(rig).on_unit;
  const auto *kind = solver::find_reading(reading);
  return kind && kind->given_by.has(rig);
}

std::vector<std::string> measured_readings()
{
  std::vector<std::string> names;
  for (const auto &kind : solver::all_readings())
    if (!kind.expected.empty())
      names.emplace_back(kind.name);
  for (const auto &fact : unit_facts)
    names.emplace_back(fact.name);
  return names;
}

ReadingMeasure read_measure(std::string_view text, const std::vector<NamedRun> &runs)
{
  std::istringstream       words{std::string(text)};
  std::vector<std::string> parts;
  for (std::string word; words >> word;)
    parts.push_back(word);

  ReadingMeasure measure;
  measure.written = fmt::format("{}", fmt::join(parts, " "));
  const bool has_two = parts.size() >= 3 && (parts[1] == "-" || parts[1] == "/");
  const bool is_change = parts.size() == 5 && parts[1] == "/" && parts[3] == "-" && parts[4] == "1";
  if (parts.size() != 1 && !(has_two && parts.size() == 3) && !is_change)
    throw InvalidMeasure(fmt::format("\"{}\" is not a measure", text),
                         "Write a reading, a - b, a / b or a / b - 1, with spaces around the signs. A "
                         "reading of one run: peak_force:heel");
  measure.first = reading_of(parts[0], runs);
  measure.dimension = measure.first.dimension;
  if (!has_two)
    return measure;

  measure.second = reading_of(parts[2], runs);
  if (measure.first.dimension != measure.second.dimension)
    throw InvalidMeasure(fmt::format("{} and {} are of different kinds", parts[0], parts[2]),
                         "Compare readings of the same kind");
  measure.kind = is_change         ? MeasureKind::change
                 : parts[1] == "-" ? MeasureKind::difference
                                   : MeasureKind::ratio;
  if (measure.kind == MeasureKind::ratio)
    measure.dimension = Dimension::number;
  else if (is_change)
    measure.dimension = Dimension::share;
  return measure;
}
} // namespace solemech::tools
