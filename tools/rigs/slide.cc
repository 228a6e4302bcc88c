// SPDX-License-Identifier: Apache-2.0
// A slide of a tread bar in plain words: one sentence, three numbers, what the bar did; charts of what
// presses on it.
#include "solver/results/catalogue.h"
#include "tools/rigs/court_bar.h"
#include "tools/rigs/face_charts.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

#include <numbers>

namespace solemech::tools::rigs
{
namespace
{
using solver::SlideRig;

std::string pressure(double pascal)
{
  return fmt::format("{:.0f} kPa", 1e-3 * pascal);
}

/// Load and floor.
std::string pressed_words(const SlideRig &rig)
{
  std::string text =
    fmt::format("The bar is pressed on the floor with {} and slid at {:.2g} m/s, at {:.0f}° from across it.",
                pressure(rig.pressure), rig.speed, rig.heading * 180 / std::numbers::pi);
  if (rig.friction_highest > rig.friction_lowest)
    text += fmt::format(
      " The friction of this floor is known only to lie between {:.2g} and {:.2g}; the grip varies with it.",
      rig.friction_lowest, rig.friction_highest);
  if (rig.pad_length > 0)
    text += " Pads are calculated as a long bar of softer rubber, because their ends are free to bulge.";
  return text;
}

/// What the bar did.
std::string bent_words(const Run &run)
{
  std::string text = fmt::format("The floor drags its face along by {:.2f} mm before it slides.",
                                 1e3 * number(run, solver::catalogue.deflection));
  if (const auto *bend = run.result.find(solver::catalogue.bending_stiffness),
      *shear = run.result.find(solver::catalogue.shearing_stiffness);
      bend && shear)
    text += fmt::format(
      " About {:.0f} % of that is bending, the rest is shear. Bending grows with the cube of the height.",
      100 / bend->value / (1 / bend->value + 1 / shear->value));
  const double trail = number(run, solver::catalogue.trailing_lift),
               lead = number(run, solver::catalogue.leading_lift);
  if (trail > 0.005)
    text += fmt::format(
      " Friction tips it onto its leading edge: {:.0f} % of the face lifts off at the trailing end.",
      100 * trail);
  if (lead > 0.005)
    text += fmt::format(" At the leading end, {:.0f} % of the face is off the floor.", 100 * lead);
  if (trail <= 0.005 && lead <= 0.005)
    text += " The flat part of its face stays down.";
  return text + warning_on(run, solver::catalogue.effective_grip); // why it did not become steady
}

/// The bar in its cell, skin included.
ChartLine outline(const std::string &name, const Run &run)
{
  constexpr int n = 240;
  auto          lug = numbers_of<SlideRig>(run.setup).lug;
  lug.skin = run.setup.layers.at(0).thickness, lug.height = run.setup.layers.at(1).thickness;
  ChartLine line{name, {}, {}};
  for (int i = 0; i <= n; ++i)
  {
    line.x.push_back(1e3 * lug.spacing * (static_cast<double>(i) / n - 0.5));
    line.y.push_back(1e3 * geometry::surface_height_at(lug, 1e-3 * line.x.back()));
  }
  return line;
}

class Slide final : public CourtBar
{
public:
  solver::RigKind id() const override { return solver::RigKind::slide; }
  bool            tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, solver::catalogue.effective_grip);
  }

  std::string sentence(const Run &run) const override
  {
    const auto &rig = numbers_of<SlideRig>(run.setup);
    return fmt::format("Sliding over {} {}, the bar grips with {:.2f} of the force on it. {:.0f} % of its "
                       "face is in contact, and the pressure at its edge is {}.",
                       rig.court_state, rig.court, number(run, solver::catalogue.effective_grip),
                       100 * number(run, solver::catalogue.contact_share),
                       pressure(number(run, solver::catalogue.edge_pressure))) +
           warning_on(run, solver::catalogue.effective_grip);
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    return {
      {"grip", fmt::format("{:.2f}", number(run, solver::catalogue.effective_grip)),
       "friction divided by force, along the slide"},
      {"contact", fmt::format("{:.0f} %", 100 * number(run, solver::catalogue.contact_share)), "of the face"},
      {"pressure at the edge", pressure(number(run, solver::catalogue.edge_pressure)),
       fmt::format("over 0.25 mm; {} over the face", pressure(numbers_of<SlideRig>(run.setup).pressure))}};
  }

  std::vector<std::string> story(const Run &run) const override
  {
    const auto              &rig = numbers_of<SlideRig>(run.setup);
    std::vector<std::string> story{pressed_words(rig), bent_words(run)};
    if (const auto work = value_of(run, solver::catalogue.friction_work))
      story.push_back(fmt::format("Each metre of slide turns {:.0f} kJ into heat per square metre of face "
                                  "and floor. After {:.0f} mm the face would be about {:.0f} K warmer.",
                                  1e-3 * *work, 1e3 * rig.distance,
                                  number(run, solver::catalogue.temperature_rise)));
    return story;
  }

  /// One line a run.
  std::vector<LineBlock> blocks(const std::vector<const Run *> &all) const override
  {
    const auto runs = with_faces(all);
    if (runs.empty())
      return {};
    LineBlock block{
      "The lug, and what presses on it",
      "The leading edge carries most and the trailing edge lifts first, because friction tips the lug.",
      {pressure_chart(), {"outline of the lug on its skin", "across the bar, mm", "height, mm", {}}}};
    const auto labels = short_labels(runs);
    for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
    {
      add_pressure(block.charts[0], labels[i], runs[i]->result.faces.front());
      block.charts[1].lines.push_back(outline(labels[i], *runs[i]));
    }
    return {block};
  }

protected:
  std::string moment(const Run &run) const override
  {
    return fmt::format(
      "At the end of the slide the face is dragged by {:.2f} mm; {:.0f} % of it is in contact.",
      1e3 * number(run, solver::catalogue.deflection), 100 * number(run, solver::catalogue.contact_share));
  }
};
} // namespace

const Kind &slide()
{
  static const Slide kind;
  return kind;
}
} // namespace solemech::tools::rigs
