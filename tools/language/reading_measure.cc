// SPDX-License-Identifier: Apache-2.0
#include "tools/language/reading_measure.h"

#include "tools/language/nearest_name.h"
#include "tools/language/schema.h"

#include <fmt/format.h>

#include <algorithm>
#include <span>
#include <sstream>

namespace solemech::tools
{
using materials::Dimension;
using materials::nearest_name;

namespace
{
constexpr std::string_view of_unit[] = {"fibre_tension", "threshold_load", "heat_time"};
constexpr std::string_view of_drop[] = {"rebound_by_height", "rebound_height", "return_by_speed",
                                        "return_by_loop",    "contact_time",   "peak_deceleration",
                                        "left_in_stack"};
constexpr std::string_view of_press[] = {"loop_return", "loop_energy_in", "loop_energy_lost",
                                         "secant_stiffness"};
constexpr std::string_view of_gauge[] = {"hardness"};
constexpr std::string_view of_slide[] = {"effective_grip", "edge_pressure", "deflection", "contact_share",
                                         "trailing_lift"};
constexpr std::string_view of_wear[] = {"life_steps",         "relative_life",  "worn_grip",
                                        "worn_edge_pressure", "effective_grip", "edge_pressure"};
constexpr std::string_view of_tread[] = {"grip_push_off", "grip_braking", "grip_side_cut", "pivot_moment"};
constexpr std::string_view of_abrasion[] = {"ground_depth", "ground_volume", "through_time",
                                            "loss_over_reference", "found_volume"};
constexpr std::string_view lost_in = "lost_in.";

/// A kind of rig as people call it, what it alone gives, and what to take instead of something else.
struct RigWords
{
  RigKind                           kind;
  const char                       *word;
  std::span<const std::string_view> own;
  const char                       *instead;
};
constexpr RigWords rig_words[] = {
  {RigKind::drop, "drop", of_drop,
   "Take return_by_loop, rebound_by_height, peak_force or greatest_compression"},
  {RigKind::press, "press", of_press, "Take loop_return, peak_force or greatest_compression"},
  {RigKind::gauge, "gauge", of_gauge, "Take hardness"},
  {RigKind::slide, "slide", of_slide,
   "Take effective_grip, deflection, edge_pressure, contact_share or trailing_lift"},
  {RigKind::wear, "wear", of_wear, "Take life_steps, relative_life, worn_grip or worn_edge_pressure"},
  {RigKind::tread, "whole tread", of_tread,
   "Take grip_push_off, grip_braking, grip_side_cut or pivot_moment"},
  {RigKind::abrasion, "abrasion bench", of_abrasion, "Take ground_depth, ground_volume or through_time"}};

const RigWords &words_of(RigKind kind)
{
  return *std::find_if(std::begin(rig_words), std::end(rig_words),
                       [&](const auto &words) { return words.kind == kind; });
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
    throw InvalidMeasure("does not say which run is meant",
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
  if (const auto &words = words_of(runs[run].rig); !rig_gives(name, words.kind))
    throw InvalidMeasure(fmt::format("a {} does not give {}", words.word, name), words.instead);
  if (contains(of_unit, name) && !runs[run].has_unit)
    throw InvalidMeasure(fmt::format("the stack of this run has no air unit that could have a {}", name),
                         "Take a run with an air unit");
  return {name, run, runs[run].ending, dimension};
}
} // namespace

Dimension reading_dimension(std::string_view name)
{
  if (name == "heat_time")
    return Dimension::time;
  if (contains(of_unit, name))
    return Dimension::force;
  if (name == "label" || name == "source" || name == "outside")
    return Dimension::text;
  const auto *entry = find_entry("expect", name);
  return entry ? entry->dimension : Dimension::text;
}

bool rig_gives(std::string_view reading, RigKind rig)
{
  if (contains(words_of(rig).own, reading))
    return true;
  // A press and a drop share what no rig has for itself alone.
  return (rig == RigKind::drop || rig == RigKind::press) &&
         std::none_of(std::begin(rig_words), std::end(rig_words),
                      [&](const auto &words) { return contains(words.own, reading); });
}

std::vector<std::string> measured_readings()
{
  std::vector<std::string> names;
  for (const auto &name : entry_names("expect"))
    if (reading_dimension(name) != Dimension::text)
      names.push_back(name);
  for (const auto name : of_unit)
    names.emplace_back(name);
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
    throw InvalidMeasure(
      fmt::format("\"{}\" is no measure", text),
      "Write a reading, a - b, a / b or a / b - 1, with blanks round the signs; a reading with its "
      "run: peak_force:heel");
  measure.first = reading_of(parts[0], runs);
  measure.dimension = measure.first.dimension;
  if (!has_two)
    return measure;

  measure.second = reading_of(parts[2], runs);
  if (measure.first.dimension != measure.second.dimension)
    throw InvalidMeasure(fmt::format("{} and {} are of different kinds", parts[0], parts[2]),
                         "Compare readings of one kind");
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
