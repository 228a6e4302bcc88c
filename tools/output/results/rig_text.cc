// SPDX-License-Identifier: Apache-2.0
// What a rig is, in one line.
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <numbers>

namespace solemech::tools
{
namespace
{
using solver::DropRig;
using solver::PressRig;

/// "ShoreA" as people write it.
std::string scale_text(const materials::Gauge &gauge)
{
  std::string text(gauge.name);
  const auto  letter = text.find_last_not_of("ABCDO");
  return text.insert(letter + 1, " ");
}

std::string tup_text(const solver::Tup &tup, Lengths lengths)
{
  const std::string size = length_text(tup.diameter, lengths);
  switch (tup.shape)
  {
  case solver::TupShape::flat:
    return "flat " + size + " face";
  case solver::TupShape::sphere:
    return size + " ball";
  case solver::TupShape::spherical_ended:
    return size + " rod with a " + length_text(tup.end_radius, lengths) + " round end";
  case solver::TupShape::cone:
    return "cone on a " + size + " rod";
  }
  return size;
}

std::string drop_text(const DropRig &rig, double gravity, Lengths lengths)
{
  std::string text =
    fmt::format("drop weight {:.3g} kg, {}, falls {} ({:.3g} J)", rig.mass, tup_text(rig.tup, lengths),
                length_text(rig.height, lengths), rig.mass * gravity * rig.height);
  if (rig.guide_loss > 0)
    text += fmt::format("; the guide takes {:.2g} % each way", 100 * rig.guide_loss);
  if (rig.discarded > 0 || rig.hits > 1)
    text +=
      fmt::format("; {} hit{} counted, {} before not", rig.hits, rig.hits == 1 ? "" : "s", rig.discarded);
  if (rig.base_mass > 0)
    text += fmt::format("; base {:.3g} kg", rig.base_mass);
  return text;
}

std::string press_text(const PressRig &rig, Lengths lengths)
{
  const std::string peak =
    rig.control == solver::PressControl::force ? force_text(rig.peak) : length_text(rig.peak, lengths);
  const char *wave = rig.wave == solver::PressWave::triangle    ? "up and down"
                     : rig.wave == solver::PressWave::half_sine ? "in a half sine"
                                                                : "along a table";
  return fmt::format("press, {}, to {} {} in {} ms, {} time{}", tup_text(rig.tup, lengths), peak, wave,
                     digits_text(1e3 * rig.duration), rig.cycles, rig.cycles == 1 ? "" : "s");
}

std::string slide_text(const solver::SlideRig &rig, Lengths lengths)
{
  std::string text = fmt::format("slide over {} {}, friction {:.2g}", rig.court_state, rig.court,
                                 rig.friction.mu_ref * rig.friction.state);
  if (rig.friction_highest > rig.friction_lowest)
    text += fmt::format(" ({:.2g} to {:.2g})", rig.friction_lowest, rig.friction_highest);
  text += fmt::format(", {:.0f} kPa, {:.2g} m/s, {:.0f}° from across the bar; bar {} wide, {} high, {} apart",
                      1e-3 * rig.pressure, rig.speed, rig.heading * 180 / std::numbers::pi,
                      length_text(rig.lug.width, lengths), length_text(rig.lug.height, lengths),
                      length_text(rig.lug.spacing, lengths));
  if (rig.pad_length > 0)
    text += fmt::format(", cut into pads {} long", length_text(rig.pad_length, lengths));
  if (rig.tread)
    text = fmt::format("sole of {} on {} {}, friction {:.2g} ({:.2g} to {:.2g}), {:.0f} N, {:.2g} m/s, {} headings; bars {} wide, {} "
                       "high, {} apart",
                       rig.tread->zones.size() == 1 ? "1 zone" : fmt::format("{} zones", rig.tread->zones.size()), rig.court_state, rig.court, rig.friction.mu_ref * rig.friction.state, rig.friction_lowest,
                       rig.friction_highest, rig.tread->force, rig.speed, rig.tread->n_headings, length_text(rig.lug.width, lengths),
                       length_text(rig.lug.height, lengths), length_text(rig.lug.spacing, lengths));
  if (rig.wear)
    text += fmt::format("; worn down by {}, {} of slip a step{}, {} loses {:.2g} mm3/(N m) ({:.2g} to {:.2g})",
                        length_text(rig.wear->depth, lengths), length_text(rig.wear->slip, lengths),
                        rig.wear->to_and_fro ? " to and fro" : "", rig.wear->reference, 1e9 * rig.wear->coefficient,
                        1e9 * rig.wear->lowest, 1e9 * rig.wear->highest);
  return text;
}

std::string abrasion_text(const solver::AbrasionRig &rig, Lengths lengths)
{
  std::string text =
    rig.tool == solver::AbrasionTool::drum
      ? fmt::format("abrasion drum after ISO 4649, {} piece, {:.3g} N, {:.3g} m of way",
                    length_text(rig.drum.piece_diameter, lengths), rig.drum.load, rig.drum.way)
      : fmt::format("abrasive sleeve {} across, {} wide, at {:.0f} rpm, {:.3g} N, held for {:.3g} s",
                    length_text(rig.sleeve.sleeve_diameter, lengths), length_text(rig.sleeve.sleeve_width, lengths),
                    60 * rig.sleeve.speed, rig.sleeve.force, rig.seconds);
  return text + fmt::format("; it takes {:.2g} mm3/(N m) from {} ({:.2g} to {:.2g})", 1e9 * rig.coefficient, rig.reference,
                            1e9 * rig.lowest, 1e9 * rig.highest);
}
} // namespace

std::string hardness_text(double points, const solver::Case &setup)
{
  const auto *rig = std::get_if<solver::DurometerRig>(&setup.rig);
  return fmt::format("{:.1f}", points) + (rig ? " " + scale_text(rig->gauge) : std::string());
}

std::string rig_text(const solver::Case &setup, Lengths lengths)
{
  std::string text;
  if (const auto *drop = std::get_if<DropRig>(&setup.rig))
    text = drop_text(*drop, setup.gravity, lengths);
  else if (const auto *press = std::get_if<PressRig>(&setup.rig))
    text = press_text(*press, lengths);
  else if (const auto *rig = std::get_if<solver::DurometerRig>(&setup.rig))
    text = fmt::format("{} gauge on {} of specimen, read after {:.3g} s", scale_text(rig->gauge),
                       length_text(stack_height(setup.layers), lengths), rig->read_after);
  else if (const auto *slide = std::get_if<solver::SlideRig>(&setup.rig))
    text = slide_text(*slide, lengths);
  else if (const auto *bench = std::get_if<solver::AbrasionRig>(&setup.rig))
    text = abrasion_text(*bench, lengths);
  return text + fmt::format("; {:.0f} °C", setup.temperature - 273.15);
}
} // namespace solemech::tools
