// SPDX-License-Identifier: Apache-2.0
#include "tools/language/slide_reader.h"

#include "geometry/errors.h"
#include "geometry/tread_pattern.h"
#include "materials/hardness.h"
#include "tools/language/court_reader.h"
#include "tools/language/described_rigs.h"
#include "tools/language/member_reader.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
using materials::Dimension;
using materials::Fields;
using materials::quantity_text;

namespace
{
constexpr double most_slender = 3;      // height over width that is taken; common practice, no source
constexpr double rubber_density = 1150; // of a rubber known by its hardness alone [kg/m3], from memory
constexpr double rubber_bulk = 1.5e9;   // [Pa], from memory
constexpr double usual_player =
  80; // whom a pressure is of when none is named [kg], common practice, no source
constexpr double deepest_wear = 0.9; ///< of the lug's height

std::string length(double value)
{
  return quantity_text(value, Dimension::length);
}

/// Entry that a complaint of the mesh about a shape is about.
const char *entry_of(const std::string &name)
{
  constexpr std::pair<const char *, const char *> known[] = {
    {"lug width", "width"}, {"lug height", "height"},       {"lug spacing", "spacing"}, {"skin", "skin"},
    {"draft", "draft"},     {"edge radius", "edge_radius"}, {"fillet", "fillet"}};
  for (const auto &[words, entry] : known)
    if (name.find(words) != std::string::npos)
      return entry;
  return "width";
}

void check_shape(const Fields &fields, const geometry::LugOutline &lug)
{
  const double numbers[] = {lug.width, lug.height,      lug.spacing, lug.skin,
                            lug.draft, lug.edge_radius, lug.fillet};
  if (!std::all_of(std::begin(numbers), std::end(numbers), [](double value) { return std::isfinite(value); }))
    return; // told already
  if (lug.height > most_slender * lug.width)
  {
    fields.problem("height",
                   fmt::format("{} on a width of {} is too slender", length(lug.height), length(lug.width)),
                   fmt::format("Give at most {}, or a wider bar", length(most_slender * lug.width)));
    return;
  }
  const double root = 2 * geometry::lug_wall(lug).toe[0];
  if (lug.spacing < root)
  {
    fields.problem(
      "spacing",
      fmt::format("the clearance between the bars is negative: the root with its fillets is {} wide",
                  length(root)),
      fmt::format("Give more than {}, or a narrower bar", length(1.05 * root)));
    return;
  }
  try
  {
    geometry::check(lug);
  }
  catch (const geometry::InvalidGeometry &error)
  {
    fields.problem(entry_of(error.name()), fmt::format("is not possible: {} is allowed", error.allowed()),
                   "Change it, or the size of the bar");
  }
}
/// What each pattern needs beside the section of its bar, and what to write for instance.
struct PatternEntry
{
  const char *pattern, *entry, *example;
};
constexpr PatternEntry pattern_entries[] = {{"herringbone", "arm_angle", "30 deg"},
                                            {"wavy-bar", "wave_length", "20 mm"},
                                            {"wavy-bar", "swing", "2 mm"},
                                            {"pad", "length", "6 mm"}};

void read_pattern(const Fields &fields, solver::SlideRig &rig)
{
  const auto pattern = fields.text("pattern");
  bool       whole = true;
  for (const auto &[of, entry, example] : pattern_entries)
    if ((pattern == of) != fields.given(entry))
    {
      whole = false;
      fields.problem(entry,
                     pattern == of ? "is missing" : fmt::format("has no meaning for pattern \"{}\"", pattern),
                     pattern == of ? fmt::format("Give {} = \"{}\"", entry, example)
                                   : fmt::format("Remove the line, or write pattern = \"{}\"", of));
    }
  if (fields.given("gap") && pattern != "pad")
    fields.problem("gap", "is allowed between pads only", "Remove the line, or write pattern = \"pad\"");
  if (!whole)
    return;
  if (pattern == "herringbone")
    rig.heading = fields.value("arm_angle");
  else if (pattern == "wavy-bar")
    rig.heading = geometry::wavy_bar_angle(fields.value("swing"), fields.value("wave_length"));
  else if (pattern == "pad")
  {
    rig.pad_length = fields.value("length");
    rig.pad_gap = fields.given("gap") ? fields.value("gap") : rig.lug.spacing - rig.lug.width;
  }
}
} // namespace

void read_lug(const Fields &fields, solver::SlideRig &rig)
{
  auto &lug = rig.lug;
  read_members(fields, lug);
  lug.height = fields.value("height");
  lug.skin = fields.value("skin");
  rig.neighbours =
    fields.text("neighbours") == "none" ? solver::LugNeighbours::free : solver::LugNeighbours::periodic;
  rig.lug_heat.conductivity = fields.value("conductivity");
  rig.lug_heat.specific_heat = fields.value("specific_heat");
  read_pattern(fields, rig);
  check_shape(fields, lug);
}

std::optional<materials::Material> rubber_of_hardness(const Fields &lug)
{
  const auto reading = lug.hardness("hardness");
  if (!reading)
    return std::nullopt;
  double modulus = 0;
  for (const auto &gauge : materials::gauges)
    if (gauge.name == reading->scale)
      modulus =
        gauge.scale == materials::HardnessScale::shore_a && reading->value >= 20 && reading->value <= 80
          ? materials::modulus_gent(reading->value)
          : materials::modulus_from_reading(gauge, reading->value, 0.5);
  materials::RubberData data;
  data.c10 = modulus / 6; // RubberData::youngs_modulus, the other way round
  data.bulk_modulus = rubber_bulk;
  materials::Material rubber;
  rubber.name = fmt::format("rubber-{:g}{}", reading->value, reading->scale);
  rubber.title = fmt::format("rubber of {:g} {}", reading->value, reading->scale);
  rubber.family = "rubber";
  rubber.density = rubber_density;
  rubber.hardness = fmt::format("{:g} {}", reading->value, reading->scale);
  rubber.source = "modulus from the hardness, good to 25 % at best; no loss";
  rubber.data = data;
  return rubber;
}

void read_slide(const Fields &fields, const std::vector<materials::Court> &courts, solver::SlideRig &rig)
{
  read_members(fields, rig);
  if (fields.given("player_mass"))
    rig.pressure *= fields.value("player_mass") / usual_player;
  const double heading = fields.value("heading");
  if (rig.heading > 0 && heading > 0)
    fields.problem("heading",
                   "a herringbone or a wavy bar is slid straight: at another heading its two sides differ",
                   "Remove the line, slide each arm as a straight bar at its own heading, or make a "
                   "[tread] with a [[zone]] of them");
  if (!(rig.heading > 0))
    rig.heading = heading;
  if (rig.court.empty())
    return; // told already
  const materials::Court *court = nullptr;
  try
  {
    court = &materials::find_court(courts, rig.court);
  }
  catch (const materials::InvalidQuantity &error)
  {
    fields.problem("court", error.what(), error.cure);
    return;
  }
  rig.court_heat = court->heat;
  std::vector<std::string> states;
  for (const auto &state : court->states)
    states.push_back(state.name);
  if (std::find(states.begin(), states.end(), rig.court_state) == states.end())
  {
    const auto near = materials::nearest_name(rig.court_state, states);
    fields.problem("state", fmt::format("{} is not known \"{}\"", rig.court, rig.court_state),
                   near.empty() ? fmt::format("Use one of {}", fmt::join(states, ", "))
                                : fmt::format("Did you mean \"{}\"?", near));
    return;
  }
  if (fields.given("friction"))
  {
    rig.friction.mu_ref = fields.value("friction");
    rig.friction_lowest = rig.friction_highest = rig.friction.mu_ref;
    return;
  }
  rig.friction = court->friction_when(rig.court_state).data();
  std::tie(rig.friction_lowest, rig.friction_highest) = court->friction_band(rig.court_state);
}

void read_wear(const Fields &fields, const materials::Material &reference, solver::SlideRig &rig)
{
  solver::WearLife wear;
  read_members(fields, wear);
  wear.reference = reference.name;
  if (!fields.word("coefficient_lowest").empty())
    wear.lowest = 0.1 * wear.coefficient;
  if (!fields.word("coefficient_highest").empty())
    wear.highest = 10 * wear.coefficient;
  if (wear.lowest > wear.coefficient)
    fields.problem("coefficient_lowest", "is more than the coefficient", "Give less, or remove the line");
  if (wear.highest < wear.coefficient)
    fields.problem("coefficient_highest", "is less than the coefficient", "Give more, or remove the line");
  if (fields.given("known_hours") != fields.given("known_depth"))
    fields.problem(fields.given("known_hours") ? "known_hours" : "known_depth", "stands alone",
                   "A worn pair needs both known_hours and known_depth");
  if (fields.given("steps_per_minute"))
  {
    wear.steps_per_second = fields.value("steps_per_minute") / 60;
    if (!fields.given("known_hours"))
      fields.problem("steps_per_minute", "needs a worn pair: hours do not follow from steps alone",
                     "Give known_hours and known_depth, or remove the line");
  }
  if (wear.depth > deepest_wear * rig.lug.height)
    fields.problem("depth",
                   fmt::format("{} is too deep for a lug of {}", length(wear.depth), length(rig.lug.height)),
                   fmt::format("Give at most {}", length(deepest_wear * rig.lug.height)));
  if (const auto *rubber = std::get_if<materials::RubberData>(&reference.data))
    wear.reference_modulus = rubber->youngs_modulus();
  rig.wear = wear;
}
} // namespace solemech::tools
