// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/slide_story.h"

#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <numbers>

namespace solemech::tools::report
{
namespace
{
double number(const Run &run, const char *name)
{
  return value_of(run, name).value_or(0);
}

std::string pressure(double pascal)
{
  return fmt::format("{:.0f} kPa", 1e-3 * pascal);
}

const solver::SlideRig &rig_of(const Run &run)
{
  return std::get<solver::SlideRig>(run.setup.rig);
}

/// Why it did not become steady, or "".
std::string unsteady(const Run &run)
{
  for (const auto &warning : run.result.warnings)
    if (warning.reading == "effective_grip")
      return capital(warning.text) + ".";
  return "";
}
} // namespace

bool has_slid(const Run &run)
{
  return run.result.complete && std::holds_alternative<solver::SlideRig>(run.setup.rig) &&
         value_of(run, "effective_grip");
}

std::string slide_sentence(const Run &run)
{
  std::string text = fmt::format("Sliding over {} {} the bar grips with {:.2f} of the force on it; {:.0f} % "
                                 "of its face touch, and {} press at its "
                                 "edge.",
                                 rig_of(run).court_state, rig_of(run).court, number(run, "effective_grip"),
                                 100 * number(run, "contact_share"), pressure(number(run, "edge_pressure")));
  if (const auto why = unsteady(run); !why.empty())
    text += " " + why;
  return text;
}

std::vector<Headline> slide_headline(const Run &run)
{
  return {
    {"grip", fmt::format("{:.2f}", number(run, "effective_grip")), "friction over force, along the slide"},
    {"contact", fmt::format("{:.0f} %", 100 * number(run, "contact_share")), "of the face"},
    {"pressure at the edge", pressure(number(run, "edge_pressure")),
     fmt::format("over 0.25 mm; {} over the face", pressure(rig_of(run).pressure))}};
}

std::vector<std::string> slide_story(const Run &run)
{
  const auto              &rig = rig_of(run);
  std::vector<std::string> story;
  std::string              text =
    fmt::format("The bar is pressed on the floor with {} and slid at {:.2g} m/s, {:.0f}° from across it.",
                pressure(rig.pressure), rig.speed, rig.heading * 180 / std::numbers::pi);
  if (rig.friction_highest > rig.friction_lowest)
    text += fmt::format(
      " The friction of this floor is known to a band from {:.2g} to {:.2g} only; the grip moves with it.",
      rig.friction_lowest, rig.friction_highest);
  if (rig.pad_length > 0)
    text += " Pads are calculated as a long bar of softer rubber: their ends are free to bulge.";
  story.push_back(text);

  text = fmt::format("Its face goes along with the floor by {:.2f} mm before it slides.",
                     1e3 * number(run, "deflection"));
  if (const auto *bend = run.result.find("bending_stiffness"), *shear = run.result.find("shearing_stiffness");
      bend && shear)
    text += fmt::format(
      " About {:.0f} % of that is bending, the rest shear: bending goes with the cube of the height.",
      100 / bend->value / (1 / bend->value + 1 / shear->value));
  const double trail = number(run, "trailing_lift"), lead = number(run, "leading_lift");
  if (trail > 0.005)
    text += fmt::format(
      " Friction tips it onto its leading edge: {:.0f} % of the face come off at the trailing end.",
      100 * trail);
  if (lead > 0.005)
    text += fmt::format(" At the leading end {:.0f} % of the face are off the floor.", 100 * lead);
  if (trail <= 0.005 && lead <= 0.005)
    text += " The flat of its face stays down.";
  if (const auto why = unsteady(run); !why.empty())
    text += " " + why;
  story.push_back(text);
  if (const auto work = value_of(run, "friction_work"))
    story.push_back(fmt::format(
      "Each metre of slide rubs {:.0f} kJ into a square metre of face and floor; after {:.0f} mm the "
      "face would be about {:.0f} K warmer.",
      1e-3 * *work, 1e3 * rig.distance, number(run, "temperature_rise")));
  return story;
}

std::string slide_moment(const Run &run)
{
  return fmt::format("At the end of the slide the face has gone along by {:.2f} mm; {:.0f} % of it touch.",
                     1e3 * number(run, "deflection"), 100 * number(run, "contact_share"));
}
} // namespace solemech::tools::report
