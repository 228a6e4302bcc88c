// SPDX-License-Identifier: Apache-2.0
// An abrasion bench in plain words: one sentence, three numbers, what the abrasive took, depth over time.
#include "solver/results/catalogue.h"
#include "tools/language/described_rigs.h"
#include "tools/language/member_differences.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

namespace solemech::tools::rigs
{
namespace
{
using solver::AbrasionRig;

const AbrasionRig &rig_of(const Run &run)
{
  return numbers_of<AbrasionRig>(run.setup);
}

bool is_drum(const Run &run)
{
  return rig_of(run).tool == solver::AbrasionTool::drum;
}

/// The layer in which the abrasive ends.
std::string last_layer(const Run &run)
{
  double bottom = 0;
  for (const auto &layer : run.setup.layers)
    if (bottom += layer.thickness; number(run, solver::catalogue.ground_depth) < bottom)
      return layer.name;
  return run.setup.layers.back().name;
}

std::string length_band(const Run &run)
{
  return fmt::format("{} to {}", length(number(run, solver::catalogue.ground_depth_lowest)),
                     length(number(run, solver::catalogue.ground_depth_highest)));
}

/// One line a run, and for a single run its band.
LineBlock ground(const std::vector<const Run *> &runs)
{
  LineBlock  block{"What the abrasive takes off",
                  "A sleeve sinks in more and more slowly because its groove gets wider. Where the line "
                   "bends, another layer begins.",
                  {{"depth over time", "s", "depth, mm", {}}}};
  const auto labels = short_labels(runs);
  const auto depth = [&](const Run &run, const char *name, const std::string &label) {
    if (const auto *values = any_curve(run, name))
      block.charts[0].lines.push_back({label, run.result.time, scaled(*values, 1e3)});
  };
  if (runs.size() == 1)
  {
    depth(*runs[0], "depth", "as given");
    depth(*runs[0], "depth_lowest", "lower bound of the loss");
    depth(*runs[0], "depth_highest", "upper bound of the loss");
  }
  else
    for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
      depth(*runs[i], "depth", labels[i]);
  return block;
}

class AbrasionBench final : public Kind
{
public:
  solver::RigKind id() const override { return solver::RigKind::abrasion; }
  const char     *family() const override { return "abrasion"; }
  std::string     striker(const solver::Case &) const override { return "abrasive"; }
  bool            presses_a_stack() const override { return false; }
  bool            tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, solver::catalogue.ground_depth);
  }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto &rig = numbers_of<AbrasionRig>(setup);
    std::string text =
      rig.tool == solver::AbrasionTool::drum
        ? fmt::format("abrasion drum after ISO 4649, {} piece, {:.3g} N, {:.3g} m of travel",
                      length_text(rig.drum.piece_diameter, lengths), rig.drum.load, rig.drum.way)
        : fmt::format("abrasive sleeve {} across, {} wide, at {:.0f} rpm, {:.3g} N, held for {:.3g} s",
                      length_text(rig.sleeve.sleeve_diameter, lengths),
                      length_text(rig.sleeve.sleeve_width, lengths), 60 * rig.sleeve.speed, rig.sleeve.force,
                      rig.seconds);
    return text + fmt::format("; it takes {:.2g} mm3/(N m) off {} ({:.2g} to {:.2g})", 1e9 * rig.coefficient,
                              rig.reference, 1e9 * rig.lowest, 1e9 * rig.highest);
  }

  std::vector<std::string> cautions(const solver::Case &setup) const override
  {
    std::vector<std::string> texts;
    if (numbers_of<AbrasionRig>(setup).tool == solver::AbrasionTool::sleeve)
      texts = {"Rotary tool: goggles, dust mask and extraction, the piece clamped, no loose sleeves or "
               "gloves that can be "
               "caught; the tool's instructions and local rules come first.",
               "Never grind on or near a unit under pressure: it bursts without warning. Hot rubber and "
               "synthetic leather "
               "give off fumes: stop when it smells or smokes."};
    texts.emplace_back(
      "The loss ranks materials on this abrasive only; it does not predict life on a court.");
    return texts;
  }

  std::optional<InputRange> input_range(const Run &run, const std::string &reading) const override
  {
    return reading == solver::catalogue.ground_depth ? range_beside(run, reading, "the loss on this abrasive")
                                                     : std::nullopt;
  }

  std::string sentence(const Run &run) const override
  {
    if (const auto through = value_of(run, solver::catalogue.through_time))
      return fmt::format("The abrasive wears through all {} after {:.1f} s: the depth is a lower bound.",
                         length(number(run, solver::catalogue.ground_depth)), *through);
    if (is_drum(run))
      return fmt::format("The drum takes {:.0f} mm³ off, which is {} of the {}.",
                         1e9 * number(run, solver::catalogue.ground_volume),
                         length(number(run, solver::catalogue.ground_depth)), run.setup.layers.front().name);
    return fmt::format("In {:.3g} s the sleeve grinds {} deep and ends in the {}.", rig_of(run).seconds,
                       length(number(run, solver::catalogue.ground_depth)), last_layer(run));
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    std::vector<Headline> headline{
      {"depth",
       (value_of(run, solver::catalogue.through_time) ? "≥ " : "") +
         length(number(run, solver::catalogue.ground_depth)),
       length_band(run)},
      {"taken", fmt::format("{:.0f} mm³", 1e9 * number(run, solver::catalogue.ground_volume)),
       fmt::format("{:.2f} × the loss of the reference rubber",
                   number(run, solver::catalogue.loss_over_reference))}};
    if (is_drum(run))
      headline.push_back(
        {"work of friction", energy_text(run.result.input_energy), "all of it turns into heat"});
    else
      headline.push_back(
        {"face warms by", fmt::format("{:.0f} K", number(run, solver::catalogue.face_rise)), "at most"});
    return headline;
  }

  std::vector<std::string> story(const Run &run) const override
  {
    const auto              &rig = rig_of(run);
    std::vector<std::string> story;
    story.push_back(fmt::format("The abrasive runs over the piece at {:.2g} m/s and puts in {:.2g} W.{}",
                                number(run, solver::catalogue.rubbing_speed),
                                number(run, solver::catalogue.rubbing_power),
                                warning_on(run, solver::catalogue.ground_depth)));
    if (is_drum(run))
      story.emplace_back(
        "The face stays flat and meets fresh cloth all the time: depth grows evenly with the distance.");
    else
      story.push_back(fmt::format("Its groove is as round as the sleeve and gets {} wide, so each further "
                                  "tenth of a millimetre takes longer.{}",
                                  length(number(run, solver::catalogue.groove_width)),
                                  warning_on(run, solver::catalogue.face_rise)));
    story.push_back(fmt::format(
      "The case says that this abrasive takes {:.2g} mm³ per newton and metre off {}, in a band from {:.2g} "
      "to {:.2g}, so the depth may be {}. What it takes off another rubber follows from stiffness.",
      1e9 * rig.coefficient, rig.reference, 1e9 * rig.lowest, 1e9 * rig.highest, length_band(run)));
    if (const auto found = value_of(run, solver::catalogue.found_over_expected))
      story.push_back(
        fmt::format("The bench found {:.2g} mm³ per newton and metre, {:.2g} times what was expected. Use it "
                    "as the coefficient to rank other rubbers on this abrasive.{}",
                    1e9 * number(run, solver::catalogue.found_loss), *found,
                    warning_on(run, solver::catalogue.found_loss)));
    story.emplace_back("An abrasive takes off hundreds of times what a court does. This ranks materials; it "
                       "does not predict life on a court.");
    return story;
  }

  Captions captions(const Run &run) const override
  {
    return {
      fmt::format("At the end, {} are ground away.", length(number(run, solver::catalogue.ground_depth))),
      "An abrasion bench gives no loop.", "No pictures are kept for an abrasion bench.",
      "All the energy put in turns into heat between abrasive and piece."};
  }

  std::vector<LineBlock> blocks(const std::vector<const Run *> &all) const override
  {
    std::vector<const Run *> runs;
    for (const auto *run : all)
      if (any_curve(*run, "depth"))
        runs.push_back(run);
    return runs.empty() ? std::vector<LineBlock>() : std::vector{ground(runs)};
  }

protected:
  Details detail_rows(const solver::Case &from, const solver::Case &to) const override
  {
    const auto &a = numbers_of<AbrasionRig>(from), &b = numbers_of<AbrasionRig>(to);
    Details     rows;
    const char *tools[] = {"sleeve", "drum"};
    add_row(rows, "tool", tools[static_cast<int>(a.tool)], tools[static_cast<int>(b.tool)]);
    if (a.tool == b.tool && a.tool == solver::AbrasionTool::sleeve)
      add_differences(rows, a.sleeve, b.sleeve);
    // Bounds that keep their ratio to the coefficient are no difference of their own.
    AbrasionRig bounded = b;
    const auto  keeps = [&](double AbrasionRig::*bound) {
      constexpr double rounding = 1e-9;
      return std::abs(a.*bound * b.coefficient - b.*bound * a.coefficient) <=
             rounding * a.*bound * b.coefficient;
    };
    for (double AbrasionRig::*bound : {&AbrasionRig::lowest, &AbrasionRig::highest})
      if (keeps(bound))
        bounded.*bound = a.*bound;
    add_differences(rows, a, bounded);
    return rows;
  }
};
} // namespace

const Kind &abrasion()
{
  static const AbrasionBench kind;
  return kind;
}
} // namespace solemech::tools::rigs
