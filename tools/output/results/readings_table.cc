// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/readings_table.h"

#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
namespace
{
using Options = SummaryOptions;

using Cell = std::function<std::string(const Run &, const Options &)>;

/// A cell that shows one reading, or nothing when the run has none.
template <typename Print>
Cell shows(const std::string &name, Print print)
{
  return [name, print](const Run &run, const Options &options) {
    const auto *reading = run.result.find(name);
    return reading ? print(reading->value, run, options) : std::string();
  };
}

Cell plain(const std::string &name, double scale, const std::string &unit_text)
{
  return shows(name, [=](double value, const Run &, const Options &) {
    return digits_text(value * scale) + (unit_text.empty() ? "" : " " + unit_text);
  });
}

Cell share(const std::string &name, const std::string &definition)
{
  return shows(name, [=](double value, const Run &, const Options &options) {
    return percent_text(value, options.details) + (definition.empty() ? "" : " " + definition);
  });
}

std::string rebound(double value, const Run &run, const Options &options)
{
  const auto *height = run.result.find("rebound_height");
  return (height ? length_text(height->value, options.lengths) + "  " : std::string()) +
         percent_text(value, options.details);
}

std::string compression(double value, const Run &run, const Options &options)
{
  const auto *part = run.result.find("compression_share");
  return length_text(value, options.lengths, false) + " of " +
         length_text(stack_height(run.setup.layers), options.lengths) +
         (part ? "  " + percent_text(part->value, options.details) : std::string());
}

std::string bottoming(double value, const Run &, const Options &)
{
  return value <= 0 ? "bottomed" : fmt::format("{:.0f} % of travel left", 100 * value);
}

Cell length(const std::string &name, bool with_unit)
{
  return shows(name, [=](double value, const Run &, const Options &options) {
    return length_text(value, options.lengths, with_unit);
  });
}

/// Three digits, for depths that a rule does not show.
Cell small_length(const std::string &name, bool with_unit)
{
  return shows(name, [=](double value, const Run &, const Options &options) {
    return digits_text(value * length_factor(options.lengths)) +
           (with_unit ? std::string(" ") + length_unit(options.lengths) : "");
  });
}

/// Points of a gauge with its scale: "58.6 Shore A".
std::string points(double value, const Run &run, const Options &)
{
  return hardness_text(value, run.setup);
}

std::vector<ReadingRow> make_rows()
{
  const Cell force =
    shows("peak_force", [](double v, const Run &, const Options &) { return force_text(v); });
  return {
    {"rebound (return by height)",
     "rebound %",
     {"rebound_by_height", "rebound_height"},
     false,
     shows("rebound_by_height", rebound),
     shows("rebound_by_height",
           [](double v, const Run &, const Options &) { return fmt::format("{:.1f}", 100 * v); })},
    {"hardness",
     "hardness",
     {"hardness"},
     false,
     shows("hardness", points),
     shows("hardness", [](double v, const Run &, const Options &) { return fmt::format("{:.1f}", v); })},
    {"ground away",
     "ground mm",
     {"ground_depth"},
     false,
     small_length("ground_depth", true),
     small_length("ground_depth", false)},
    {"  at least, at most",
     "",
     {"ground_depth_lowest"},
     false,
     shows("ground_depth_lowest",
           [](double v, const Run &run, const Options &options) {
             const double in_unit = length_factor(options.lengths);
             return fmt::format("{}, {} {}", digits_text(in_unit * v),
                                digits_text(in_unit * run.result.find("ground_depth_highest")->value),
                                length_unit(options.lengths));
           }),
     nullptr},
    {"volume taken",
     "mm3",
     {"ground_volume"},
     false,
     plain("ground_volume", 1e9, "mm3"),
     plain("ground_volume", 1e9, "")},
    {"through after",
     "through s",
     {"through_time"},
     false,
     plain("through_time", 1, "s"),
     plain("through_time", 1, "")},
    {"taken over reference's",
     "taken x",
     {"loss_over_reference"},
     false,
     plain("loss_over_reference", 1, ""),
     plain("loss_over_reference", 1, "")},
    {"face warms by at most",
     "warm K",
     {"face_rise"},
     false,
     plain("face_rise", 1, "K"),
     plain("face_rise", 1, "")},
    {"loss by the standard",
     "loss mm3",
     {"found_volume"},
     false,
     plain("found_volume", 1e9, "mm3"),
     plain("found_volume", 1e9, "")},
    {"bench took",
     "found",
     {"found_loss"},
     false,
     plain("found_loss", 1e9, "mm3/(N m)"),
     plain("found_loss", 1e9, "")},
    {"  over what was expected",
     "",
     {"found_over_expected"},
     false,
     plain("found_over_expected", 1, "x"),
     nullptr},
    {"life in steps",
     "steps",
     {"life_steps"},
     false,
     shows("life_steps", [](double v, const Run &, const Options &) { return rounded_count(v); }),
     shows("life_steps", [](double v, const Run &, const Options &) { return rounded_count(v); })},
    {"  at least, at most",
     "",
     {"life_steps_lowest"},
     false,
     shows("life_steps_lowest",
           [](double v, const Run &run, const Options &) {
             return rounded_count(v) + ", " + rounded_count(run.result.find("life_steps_highest")->value);
           }),
     nullptr},
    {"life over the reference's",
     "life x",
     {"relative_life"},
     false,
     plain("relative_life", 1, ""),
     plain("relative_life", 1, "")},
    {"playing time",
     "hours",
     {"life_hours"},
     false,
     plain("life_hours", 1.0 / 3600, "h"),
     plain("life_hours", 1.0 / 3600, "")},
    {"wear by the worn pair",
     "",
     {"pair_coefficient"},
     false,
     shows("pair_coefficient",
           [](double v, const Run &, const Options &) { return fmt::format("{:.2g} mm3/(N m)", 1e9 * v); }),
     nullptr},
    {"depth lost, mean",
     "lost mm",
     {"worn_depth"},
     false,
     small_length("worn_depth", true),
     small_length("worn_depth", false)},
    {"  where most is lost",
     "",
     {"greatest_worn_depth"},
     false,
     small_length("greatest_worn_depth", true),
     nullptr},
    {"grip in a push-off",
     "push-off",
     {"grip_push_off"},
     false,
     plain("grip_push_off", 1, ""),
     plain("grip_push_off", 1, "")},
    {"grip in braking",
     "braking",
     {"grip_braking"},
     false,
     plain("grip_braking", 1, ""),
     plain("grip_braking", 1, "")},
    {"grip in a side cut",
     "side cut",
     {"grip_side_cut"},
     false,
     plain("grip_side_cut", 1, ""),
     plain("grip_side_cut", 1, "")},
    {"  lowest, highest in any direction",
     "",
     {"lowest_grip", "highest_grip"},
     false,
     shows("lowest_grip",
           [](double v, const Run &run, const Options &) {
             return digits_text(v) + ", " + digits_text(run.result.find("highest_grip")->value);
           }),
     nullptr},
    {"pivot on the ball",
     "pivot N m",
     {"pivot_moment"},
     false,
     plain("pivot_moment", 1, "N m"),
     plain("pivot_moment", 1, "")},
    {"  pressure on the bars, at most",
     "",
     {"highest_zone_pressure"},
     false,
     plain("highest_zone_pressure", 1e-3, "kPa"),
     nullptr},
    {"zones down, rolled out by 15°",
     "",
     {"rolled_contact_share"},
     false,
     share("rolled_contact_share", ""),
     nullptr},
    {"grip along the slide",
     "grip",
     {"effective_grip", "steady_way"},
     false,
     plain("effective_grip", 1, ""),
     plain("effective_grip", 1, "")},
    {"  when worn", "worn grip", {"worn_grip"}, false, plain("worn_grip", 1, ""), plain("worn_grip", 1, "")},
    {"face in contact",
     "contact %",
     {"contact_share"},
     false,
     share("contact_share", ""),
     shows("contact_share",
           [](double v, const Run &, const Options &) { return fmt::format("{:.0f}", 100 * v); })},
    {"pressure at the edge",
     "edge kPa",
     {"edge_pressure"},
     false,
     plain("edge_pressure", 1e-3, "kPa"),
     plain("edge_pressure", 1e-3, "")},
    {"  when worn",
     "worn edge kPa",
     {"worn_edge_pressure"},
     false,
     plain("worn_edge_pressure", 1e-3, "kPa"),
     plain("worn_edge_pressure", 1e-3, "")},
    {"leading end off the court", "", {"leading_lift"}, true, share("leading_lift", ""), nullptr},
    {"trailing end off the court",
     "trail %",
     {"trailing_lift"},
     false,
     share("trailing_lift", ""),
     shows("trailing_lift",
           [](double v, const Run &, const Options &) { return fmt::format("{:.0f}", 100 * v); })},
    {"the face goes along by",
     "along mm",
     {"deflection"},
     false,
     small_length("deflection", true),
     small_length("deflection", false)},
    {"wall that lies on the court",
     "wall mm",
     {"wall_contact"},
     false,
     small_length("wall_contact", true),
     small_length("wall_contact", false)},
    {"shear stiffness of the lug",
     "kPa/mm",
     {"lug_shear_stiffness"},
     false,
     plain("lug_shear_stiffness", 1e-6, "kPa/mm"),
     plain("lug_shear_stiffness", 1e-6, "")},
    {"work of friction",
     "kJ/m2/m",
     {"friction_work"},
     false,
     plain("friction_work", 1e-3, "kJ/m2 per m"),
     plain("friction_work", 1e-3, "")},
    {"the face warms by",
     "warm K",
     {"temperature_rise"},
     false,
     plain("temperature_rise", 1, "K"),
     plain("temperature_rise", 1, "")},
    {"depth of the tip",
     "tip mm",
     {"tip_depth"},
     false,
     small_length("tip_depth", true),
     small_length("tip_depth", false)},
    {"force of the gauge's spring",
     "spring N",
     {"tip_force"},
     false,
     plain("tip_force", 1, "N"),
     plain("tip_force", 1, "")},
    {"modulus of the rubber",
     "E MPa",
     {"youngs_modulus"},
     false,
     plain("youngs_modulus", 1e-6, "MPa"),
     plain("youngs_modulus", 1e-6, "")},
    {"modulus Gent reads from it",
     "Gent MPa",
     {"modulus_gent"},
     false,
     plain("modulus_gent", 1e-6, "MPa"),
     plain("modulus_gent", 1e-6, "")},
    {"endless block, no friction",
     "endless",
     {"half_space_hardness"},
     false,
     shows("half_space_hardness", points),
     shows("half_space_hardness",
           [](double v, const Run &, const Options &) { return fmt::format("{:.1f}", v); })},
    {"rubber for the reading wanted",
     "wanted MPa",
     {"modulus_for_wanted"},
     false,
     plain("modulus_for_wanted", 1e-6, "MPa"),
     plain("modulus_for_wanted", 1e-6, "")},
    {"  it reads on a thick sheet",
     "thick",
     {"thick_for_wanted"},
     false,
     shows("thick_for_wanted", points),
     shows("thick_for_wanted",
           [](double v, const Run &, const Options &) { return fmt::format("{:.1f}", v); })},
    {"peak force",
     "force kN",
     {"peak_force", "peak_force_raw"},
     false,
     force,
     shows("peak_force",
           [](double v, const Run &, const Options &) { return fmt::format("{:.2f}", v / 1e3); })},
    {"greatest compression",
     "compr.",
     {"greatest_compression", "compression_share"},
     false,
     shows("greatest_compression", compression),
     length("greatest_compression", false)},
    {"energy return, by height", "", {}, true, share("rebound_by_height", ""), nullptr},
    {"energy return, by speed", "", {"return_by_speed"}, true, share("return_by_speed", ""), nullptr},
    {"energy return, by loop", "", {"return_by_loop"}, true, share("return_by_loop", ""), nullptr},
    {"energy return, by loop",
     "return %",
     {"loop_return"},
     false,
     share("loop_return", ""),
     shows("loop_return",
           [](double v, const Run &, const Options &) { return fmt::format("{:.1f}", 100 * v); })},
    {"energy put in",
     "in J",
     {"loop_energy_in"},
     false,
     plain("loop_energy_in", 1, "J"),
     plain("loop_energy_in", 1, "")},
    {"energy lost in the loop",
     "lost J",
     {"loop_energy_lost"},
     false,
     plain("loop_energy_lost", 1, "J"),
     plain("loop_energy_lost", 1, "")},
    {"stiffness, zero to peak",
     "N/mm",
     {"secant_stiffness"},
     false,
     plain("secant_stiffness", 1e-3, "N/mm"),
     plain("secant_stiffness", 1e-3, "")},
    {"displacement at peak",
     "at peak",
     {"peak_displacement"},
     false,
     length("peak_displacement", true),
     length("peak_displacement", false)},
    {"deceleration of the weight",
     "decel. g",
     {"peak_deceleration"},
     false,
     plain("peak_deceleration", 1, "g"),
     plain("peak_deceleration", 1, "")},
    {"peak force over weight",
     "",
     {"peak_force_over_weight"},
     true,
     plain("peak_force_over_weight", 1, ""),
     nullptr},
    {"peak force, unsmoothed",
     "",
     {},
     true,
     shows("peak_force_raw", [](double v, const Run &, const Options &) { return force_text(v); }),
     nullptr},
    {"contact time",
     "contact ms",
     {"contact_time"},
     false,
     plain("contact_time", 1e3, "ms"),
     plain("contact_time", 1e3, "")},
    {"peak pressure",
     "peak pressure kPa",
     {"peak_pressure"},
     false,
     plain("peak_pressure", 1e-3, "kPa"),
     plain("peak_pressure", 1e-3, "")},
    {"bottoming",
     "travel left %",
     {"bottoming_margin"},
     false,
     shows("bottoming_margin", bottoming),
     shows("bottoming_margin",
           [](double v, const Run &, const Options &) {
             return v <= 0 ? std::string("bottomed") : fmt::format("{:.0f}", 100 * v);
           })},
    {"time of greatest compression", "", {"time_of_peak"}, true, plain("time_of_peak", 1e3, "ms"), nullptr},
    {"speed at first touch", "", {"impact_speed"}, true, plain("impact_speed", 1, "m/s"), nullptr},
    {"speed at contact loss", "", {"rebound_speed"}, true, plain("rebound_speed", 1, "m/s"), nullptr},
    {"left in the stack", "", {"left_in_stack"}, true, plain("left_in_stack", 1, "J"), nullptr},
  };
}

} // namespace

std::string hardness_text(double points, const solver::Case &setup)
{
  const std::string scale = rigs::kind_of(setup).scale(setup);
  return fmt::format("{:.1f}{}{}", points, scale.empty() ? "" : " ", scale);
}

std::string rig_text(const solver::Case &setup, Lengths lengths)
{
  return rigs::kind_of(setup).text(setup, lengths) + fmt::format("; {:.0f} °C", setup.temperature - 273.15);
}

const std::vector<ReadingRow> &reading_rows()
{
  static const std::vector<ReadingRow> rows = make_rows();
  return rows;
}
} // namespace solemech::tools
