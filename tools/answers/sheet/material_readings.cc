// SPDX-License-Identifier: Apache-2.0
// Hardness and density of a layer, as a block of their own or noted at the layer.
#include "materials/pad_hardness.h"
#include "solver/results/catalogue.h"
#include "tools/answers/sheet/instruments.h"
#include "tools/answers/sheet/reading_kinds.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
using namespace materials;
using D = Dimension;

namespace
{
constexpr double thinnest_for_gauge = 6e-3; // [m], ISO 48-4 (from memory)
constexpr double scales_apart = 2.5;        // ratio of moduli that two gauges on one spot cannot differ by

/// What both kinds need to stand in their block; empty text: a slip was noted.
MaterialNote note_of(const Fields &fields, const char *example)
{
  const auto layer = fields.text("layer");
  if (layer.empty())
    fields.problem("layer", "is missing: a material reading needs its layer",
                   "Write layer = \"core\", for example");
  const auto *value = fields.table().get("value");
  if (!value)
    fields.problem("value", "is missing", fmt::format("Write value = \"{}\"", example));
  const bool usable = !layer.empty() && value;
  return {usable ? fields.text("value") : "", layer, value ? *value : fields.table(), "reading.value",
          fields.flag("hold_out")};
}
} // namespace

void take_hardness(ReadingDesk &desk, const MaterialNote &note, const std::string &where)
{
  const auto &[text, layer, node, title, held_out] = note;
  Doubted reading;
  try
  {
    reading = parse_doubted(text, D::hardness);
  }
  catch (const InvalidQuantity &error)
  {
    desk.problems.add(problem_at(node.source(), title, error.what(), error.cure));
    return;
  }
  const Gauge &gauge = gauge_named(reading.scale);
  const auto   reliable = reliable_readings(gauge.scale);
  if (reading.value < reliable.lowest || reading.value > reliable.highest)
  {
    desk.problems.add(problem_at(
      node.source(), title,
      fmt::format("{} of {:.0f} is outside {:.0f} to {:.0f}, the reliable range of the gauge", reading.scale,
                  reading.value, reliable.lowest, reliable.highest),
      reading.value > reliable.highest ? "Take a harder scale: ShoreA above AskerC, ShoreD above ShoreA"
                                       : "Take a softer scale: ShoreA below ShoreD, AskerC below ShoreA"));
    return;
  }
  if (reading.half_band == 0)
  {
    reading.half_band = instruments::gauge_by_hand;
    desk.sheet.assumptions.push_back(fmt::format("{} has no ±: ±{:.0f} {} assumed, for a hand-held gauge",
                                                 title, instruments::gauge_by_hand, reading.scale));
  }
  const auto *known = desk.find_layer(layer, node, title);
  if (!known)
    return;
  const double poisson = slow_stiffness(known->material).poisson_ratio;
  const double modulus = modulus_from_reading(gauge, reading.value, poisson);
  for (const auto &other : desk.sheet.readings)
    if (other.layer == layer && !other.probe.unit.empty() && other.probe.unit != reading.scale)
    {
      const double there =
        modulus_from_reading(gauge_named(other.probe.unit), other.observation.value, poisson);
      if (std::max(there / modulus, modulus / there) > scales_apart)
        desk.problems.add(
          problem_at(node.source(), title,
                     fmt::format("{:.0f} {} and {:.0f} {} on the same layer contradict each other: they mean "
                                 "stiffnesses that differ {:.1f} times",
                                 reading.value, reading.scale, other.observation.value, other.probe.unit,
                                 std::max(there / modulus, modulus / there)),
                     "Check which gauge was used: one of the two scales is wrong"));
    }
  const bool is_last = known == &desk.sheet.setup.layers.back(),
             is_first = known == &desk.sheet.setup.layers.front();
  const bool thin_rubber =
    where.empty() && is_last && known->material.family == "rubber" && known->thickness < thinnest_for_gauge;
  const bool in_place = where == "in place" || thin_rubber;
  if (in_place && !is_last && !is_first)
  {
    desk.problems.add(problem_at(node.source(), title, fmt::format("a gauge cannot reach {} in place", layer),
                                 "Write where = \"pad\" when it was read on a cut piece"));
    return;
  }
  Probe  probe{fmt::format("hardness of {}{}", layer, in_place ? " in place" : ""),
              D::number,
              reading.scale,
              0,
              "",
              "",
              {}};
  double half_band = reading.half_band;
  if (in_place)
  {
    probe.bench = desk.add_bench([gauge, is_last](solver::Case &setup) {
      if (is_last)
        std::reverse(setup.layers.begin(), setup.layers.end());
      solver::DurometerRig rig;
      rig.gauge = gauge;
      rig.tup = solver::gauge_tip(gauge);
      setup.rig = rig;
    });
    probe.reading = solver::catalogue.hardness;
    if (thin_rubber)
      desk.sheet.assumptions.push_back(
        fmt::format("{}: taken as read on the stack, because the rubber is thinner than 6 mm. The gauge also "
                    "feels what lies under it",
                    title));
  }
  else
  {
    half_band = instruments::hardness_on_pad(half_band, gauge, modulus, poisson);
    probe.direct = pad_hardness(gauge, layer);
  }
  if (half_band >= reading.value)
    half_band = 0.99 * reading.value;
  desk.add(std::move(probe), reading.value, half_band, held_out, layer);
}

void take_density(ReadingDesk &desk, const MaterialNote &note)
{
  const auto &[text, layer, node, title, held_out] = note;
  Doubted reading;
  try
  {
    reading = parse_doubted(text, D::density);
    if (!(reading.value >= 10 && reading.value <= 9000))
      throw InvalidQuantity(fmt::format("\"{}\" cannot be the density of a sole material", text),
                            "Weigh a cut cube and divide by its volume, for example 170 kg/m3");
  }
  catch (const InvalidQuantity &error)
  {
    desk.problems.add(problem_at(node.source(), title, error.what(), error.cure));
    return;
  }
  if (reading.half_band == 0)
  {
    reading.half_band = instruments::weighed_cube * reading.value;
    desk.sheet.assumptions.push_back(fmt::format("{} has no ±: ±{:.0f} % assumed, for a weighed cube", title,
                                                 100 * instruments::weighed_cube));
  }
  if (!desk.find_layer(layer, node, title))
    return;
  Probe probe{
    fmt::format("density of {}", layer), D::density, "", 0, "", "", [layer](const solver::Case &setup) {
      for (const auto &one : setup.layers)
        if (one.name == layer)
          return one.material.density;
      return 0.0;
    }};
  desk.add(std::move(probe), reading.value, reading.half_band, held_out, layer);
}

void read_hardness(ReadingDesk &desk, const Fields &fields)
{
  if (const auto note = note_of(fields, "42 AskerC"); !note.text.empty())
    take_hardness(desk, note, fields.text("where"));
}

void read_density(ReadingDesk &desk, const Fields &fields)
{
  if (const auto note = note_of(fields, "170 kg/m3"); !note.text.empty())
    take_density(desk, note);
}
} // namespace solemech::tools
