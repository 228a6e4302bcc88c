// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/abrasion_story.h"

#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"

#include <fmt/format.h>

namespace solemech::tools::report
{
namespace
{
const solver::AbrasionRig &rig_of(const Run &run)
{
  return std::get<solver::AbrasionRig>(run.setup.rig);
}

bool is_drum(const Run &run)
{
  return rig_of(run).tool == solver::AbrasionTool::drum;
}

double number(const Run &run, const char *name)
{
  return value_of(run, name).value_or(0);
}

/// The layer in which the abrasive ends.
std::string last_layer(const Run &run)
{
  double bottom = 0;
  for (const auto &layer : run.setup.layers)
    if (bottom += layer.thickness; number(run, "ground_depth") < bottom)
      return layer.name;
  return run.setup.layers.back().name;
}

std::string warning_on(const Run &run, const char *reading)
{
  for (const auto &warning : run.result.warnings)
    if (warning.reading == reading)
      return " " + capital(warning.text) + ".";
  return "";
}

std::string length_band(const Run &run)
{
  return fmt::format("{} to {}", length(number(run, "ground_depth_lowest")),
                     length(number(run, "ground_depth_highest")));
}
} // namespace

bool has_abraded(const Run &run)
{
  return run.result.complete && std::holds_alternative<solver::AbrasionRig>(run.setup.rig) &&
         value_of(run, "ground_depth");
}

std::string abrasion_sentence(const Run &run)
{
  if (const auto through = value_of(run, "through_time"))
    return fmt::format("The abrasive wears through all {} after {:.1f} s: the depth is a lower bound.",
                       length(number(run, "ground_depth")), *through);
  if (is_drum(run))
    return fmt::format("The drum takes {:.0f} mm³, that is {} of the {}.", 1e9 * number(run, "ground_volume"),
                       length(number(run, "ground_depth")), run.setup.layers.front().name);
  return fmt::format("In {:.3g} s the sleeve grinds {} deep and ends in the {}.", rig_of(run).seconds,
                     length(number(run, "ground_depth")), last_layer(run));
}

std::vector<Headline> abrasion_headline(const Run &run)
{
  std::vector<Headline> headline{
    {"depth", (value_of(run, "through_time") ? "≥ " : "") + length(number(run, "ground_depth")),
     length_band(run)},
    {"taken", fmt::format("{:.0f} mm³", 1e9 * number(run, "ground_volume")),
     fmt::format("{:.2f} × what the reference rubber loses", number(run, "loss_over_reference"))}};
  if (is_drum(run))
    headline.push_back({"work of rubbing", energy_text(run.result.input_energy), "all of it becomes heat"});
  else
    headline.push_back({"face warms by", fmt::format("{:.0f} K", number(run, "face_rise")), "at most"});
  return headline;
}

std::vector<std::string> abrasion_story(const Run &run)
{
  const auto              &rig = rig_of(run);
  std::vector<std::string> story;
  story.push_back(fmt::format("The abrasive runs over the piece at {:.2g} m/s and puts in {:.2g} W.{}",
                              number(run, "rubbing_speed"), number(run, "rubbing_power"),
                              warning_on(run, "ground_depth")));
  if (is_drum(run))
    story.emplace_back(
      "The face stays flat and meets fresh cloth all the way: depth grows evenly with the way.");
  else
    story.push_back(
      fmt::format("Its groove has the roundness of the sleeve and gets {} wide, so each further tenth of a "
                  "millimetre takes longer.{}",
                  length(number(run, "groove_width")), warning_on(run, "face_rise")));
  story.push_back(fmt::format("This abrasive is said to take {:.2g} mm³ a newton and metre from {}, in a "
                              "band from {:.2g} to {:.2g}; so the depth "
                              "may be {}. What it takes from another rubber follows from stiffness.",
                              1e9 * rig.coefficient, rig.reference, 1e9 * rig.lowest, 1e9 * rig.highest,
                              length_band(run)));
  if (const auto found = value_of(run, "found_over_expected"))
    story.push_back(
      fmt::format("The bench found {:.2g} mm³ a newton and metre, {:.2g} times what was expected: take it as "
                  "the coefficient to rank other rubbers on this abrasive.{}",
                  1e9 * number(run, "found_loss"), *found, warning_on(run, "found_loss")));
  story.emplace_back(
    "An abrasive takes hundreds of times what a court does: this ranks materials, and tells no life on a "
    "court.");
  return story;
}

std::string abrasion_moment(const Run &run)
{
  return fmt::format("At the end {} are ground away.", length(number(run, "ground_depth")));
}
} // namespace solemech::tools::report
