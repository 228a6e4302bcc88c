// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/reading_display.h"

#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace solemech::tools::report
{
namespace
{
struct Known
{
  const char *name, *label, *unit;
  double      factor;
  int         digits;
  bool        headline;
};

constexpr Known known[] = {
  {"rebound_by_height", "rebound, share of the drop height", "%", 1e2, 1, true},
  {"rebound_height", "rebound", "mm", 1e3, 0, false},
  {"return_by_speed", "energy return, by speed", "%", 1e2, 1, false},
  {"return_by_loop", "energy return, by loop", "%", 1e2, 1, false},
  {"loop_return", "energy return, by loop", "%", 1e2, 1, true},
  {"loop_energy_in", "energy put in", "J", 1, 2, false},
  {"loop_energy_lost", "energy lost in the loop", "J", 1, 2, false},
  {"peak_force", "peak force", "N", 1, 0, true},
  {"peak_force_raw", "peak force, unsmoothed", "N", 1, 0, false},
  {"peak_deceleration", "deceleration of the weight", "g", 1, 1, false},
  {"peak_force_over_weight", "peak force over weight", "", 1, 1, false},
  {"greatest_compression", "greatest compression", "mm", 1e3, 2, true},
  {"compression_share", "compression, share of the stack", "%", 1e2, 1, false},
  {"peak_displacement", "displacement at peak", "mm", 1e3, 2, false},
  {"secant_stiffness", "stiffness, zero to peak", "N/mm", 1e-3, 1, false},
  {"contact_time", "contact time", "ms", 1e3, 2, false},
  {"time_of_peak", "time of greatest compression", "ms", 1e3, 2, false},
  {"peak_pressure", "peak pressure", "kPa", 1e-3, 0, false},
  {"impact_speed", "speed at first touch", "m/s", 1, 2, false},
  {"rebound_speed", "speed at contact loss", "m/s", 1, 2, false},
  {"guide_loss_up", "lost in the guide on the way up", "J", 1, 3, false},
  {"left_in_stack", "left in the stack", "J", 1, 3, false},
  {"hardness", "hardness", "points", 1, 1, true},
  {"half_space_hardness", "hardness of an endless block, small strain, tip without friction", "points", 1, 1, false},
  {"tip_depth", "depth of the tip", "mm", 1e3, 2, false},
  {"tip_force", "force of the gauge's spring", "N", 1, 2, false},
  {"tip_contact_radius", "radius that touches the tip", "mm", 1e3, 2, false},
  {"youngs_modulus", "modulus of the rubber", "MPa", 1e-6, 2, false},
  {"modulus_gent", "modulus that Gent's relation takes from the reading", "MPa", 1e-6, 2, false},
  {"modulus_for_wanted", "modulus of the rubber for the wanted reading", "MPa", 1e-6, 2, false},
  {"thick_for_wanted", "reading on a thick sheet of that rubber", "points", 1, 1, false},
  {"ground_depth", "depth that the abrasive took", "mm", 1e3, 2, true},
  {"ground_depth_lowest", "depth, with the least loss of the band", "mm", 1e3, 2, false},
  {"ground_depth_highest", "depth, with the greatest loss of the band", "mm", 1e3, 2, false},
  {"ground_volume", "volume that it took", "mm³", 1e9, 1, true},
  {"rubbing_speed", "speed of the abrasive over the piece", "m/s", 1, 2, false},
  {"rubbing_power", "power of the rubbing", "W", 1, 1, false},
  {"abrasive_loss", "taken from the outermost layer", "mm³/(N m)", 1e9, 3, false},
  {"loss_over_reference", "taken over what is taken from the reference rubber", "", 1, 2, false},
  {"through_time", "until the piece was through", "s", 1, 1, false},
  {"groove_width", "width of the groove", "mm", 1e3, 1, false},
  {"face_rise", "the face warms by at most", "K", 1, 0, true},
  {"found_volume", "relative volume loss by ISO 4649", "mm³", 1e9, 1, false},
  {"found_loss", "taken from the outermost layer, as the bench found", "mm³/(N m)", 1e9, 3, false},
  {"found_over_expected", "found over expected", "", 1, 2, false},
  {"life_steps", "steps until the depth is gone", "thousand", 1e-3, 0, true},
  {"life_steps_lowest", "steps, with the greatest wear of the band", "thousand", 1e-3, 0, false},
  {"life_steps_highest", "steps, with the least wear of the band", "thousand", 1e-3, 0, false},
  {"relative_life", "life over that of the reference rubber", "", 1, 2, true},
  {"life_hours", "playing time until the depth is gone", "h", 1.0 / 3600, 0, true},
  {"pair_life_steps", "steps until the depth is gone, by the worn pair", "thousand", 1e-3, 0, false},
  {"pair_coefficient", "wear of the reference rubber, by the worn pair", "mm³/(N m)", 1e9, 4, false},
  {"worn_grip", "grip along the slide, worn", "", 1, 2, true},
  {"worn_edge_pressure", "pressure at the edge, worn", "kPa", 1e-3, 0, false},
  {"worn_depth", "depth lost, mean", "mm", 1e3, 2, false},
  {"greatest_worn_depth", "depth lost where most is lost", "mm", 1e3, 2, false},
  {"first_wear_place", "where it wears first, from leading to trailing end", "%", 1e2, 0, false},
  {"depth_per_way", "depth lost a kilometre of slip", "mm", 1e6, 3, false},
  {"volume_balance", "volume drawn over volume asked for, less one", "%", 1e2, 2, false},
  {"grip_push_off", "grip in a push-off", "", 1, 2, true},
  {"grip_braking", "grip in braking", "", 1, 2, true},
  {"grip_side_cut", "grip in a side cut", "", 1, 2, true},
  {"lowest_grip", "lowest grip in any direction", "", 1, 2, false},
  {"highest_grip", "greatest grip of all headings", "", 1, 2, false},
  {"lowest_grip_heading", "heading of the least grip, from ahead outwards", "°", 180 / 3.14159265358979, 0,
   false},
  {"pivot_moment", "moment that holds a foot turning on its ball", "N·m", 1, 1, true},
  {"highest_zone_pressure", "greatest pressure on a zone's bars", "kPa", 1e-3, 0, false},
  {"rolled_contact_share", "zones that touch, rolled out by 15°", "%", 1e2, 0, false},
  {"effective_grip", "grip along the slide", "", 1, 2, true},
  {"contact_share", "face in contact", "%", 1e2, 0, true},
  {"edge_pressure", "pressure at the edge", "kPa", 1e-3, 0, true},
  {"leading_lift", "leading end off the court, share of the face", "%", 1e2, 0, false},
  {"trailing_lift", "trailing end off the court, share of the face", "%", 1e2, 0, false},
  {"deflection", "way the face goes along", "mm", 1e3, 2, false},
  {"lug_shear_stiffness", "shear stiffness of the lug", "kPa/mm", 1e-6, 0, false},
  {"bending_stiffness", "stiffness if it only bent", "kPa/mm", 1e-6, 0, false},
  {"shearing_stiffness", "stiffness if it only sheared", "kPa/mm", 1e-6, 0, false},
  {"friction_work", "work of friction a metre of slide", "kJ/m²", 1e-3, 0, false},
  {"temperature_rise", "the face warms by", "K", 1, 1, false},
  {"wall_contact", "wall that lies on the court", "mm", 1e3, 2, false},
  {"steady_way", "steady part of the slide", "mm", 1e3, 1, false},
  {"bottoming_margin", "travel left before bottoming", "%", 1e2, 0, false},
};

struct UnitDisplay
{
  const char *si, *unit;
  double      factor;
  int         digits;
};
constexpr UnitDisplay units[] = {
  {"m", "mm", 1e3, 2},   {"s", "ms", 1e3, 2},  {"Pa", "kPa", 1e-3, 0},   {"N", "N", 1, 0},
  {"J", "J", 1, 3},      {"1", "", 1, 3},      {"N/m", "N/mm", 1e-3, 1}, {"K", "K", 1, 1},
  {"m3", "cm³", 1e6, 2}, {"m/s", "m/s", 1, 2},
};

std::string spoken(std::string name)
{
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}
} // namespace

ReadingDisplay reading_display(const solver::Reading &reading)
{
  for (const auto &entry : known)
    if (reading.name == entry.name)
    {
      // Small forces and energies, as of a ball, would lose their digits.
      const std::string_view unit = entry.unit;
      const double           size = std::abs(reading.value);
      const int              more = unit == "N" && size < 99.95 ? 2 : unit == "J" && size < 0.0995 ? 2 : 0;
      return {entry.label, entry.unit, entry.factor, entry.digits + more, entry.headline};
    }
  constexpr std::string_view layer = "compression.", hit = "rebound_by_height.hit_", lost = "lost.";
  if (reading.name.starts_with(layer))
    return {"compression of " + reading.name.substr(layer.size()), "mm", 1e3, 2, false};
  if (reading.name.starts_with(hit))
    return {"rebound of hit " + reading.name.substr(hit.size()), "%", 1e2, 1, false};
  if (reading.name.starts_with(lost))
    return {"turned into heat in " + reading.name.substr(lost.size()), "J", 1, 3, false};
  for (const auto &entry : units)
    if (reading.unit == entry.si)
      return {spoken(reading.name), entry.unit, entry.factor, entry.digits, false};
  return {spoken(reading.name), reading.unit, 1, 3, false};
}

std::string display_text(const solver::Reading &reading)
{
  const ReadingDisplay display = reading_display(reading);
  return fixed_text(reading.value * display.factor, display.digits) +
         (display.unit.empty() ? "" : " " + display.unit);
}
} // namespace solemech::tools::report
