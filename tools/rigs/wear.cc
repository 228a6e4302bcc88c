// SPDX-License-Identifier: Apache-2.0
// The life of a lug in plain words: how many steps, where it goes first, what grip is left; charts of its
// face on the way, of depth over steps with the band that the wear of the court is known to, and of grip as
// it goes.
#include "solver/results/catalogue.h"
#include "tools/rigs/court_bar.h"
#include "tools/rigs/face_charts.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools::rigs
{
namespace
{
using solver::SlideRig;

constexpr double really_less = 0.03; ///< share of a pressure below which it has not changed
constexpr double edge_share = 0.2;   ///< of the face that counts as its end
constexpr double same_grip =
  0.03; ///< of the grip, below which it has not changed: the width of friction's own doubt is far more

const SlideRig &rig_of(const Run &run)
{
  return numbers_of<SlideRig>(run.setup);
}

std::string first_place(const Run &run)
{
  const double place = number(run, solver::catalogue.first_wear_place);
  const bool   end = place < edge_share || place > 1 - edge_share;
  if (end && rig_of(run).wear->to_and_fro)
    return "its two edges";
  return place < edge_share       ? "its leading edge"
         : place > 1 - edge_share ? "its trailing edge"
                                  : "the middle of its face";
}

std::string grip_words(const Run &run)
{
  const double fresh = number(run, solver::catalogue.effective_grip),
               worn = number(run, solver::catalogue.worn_grip);
  if (std::abs(worn - fresh) < same_grip * fresh)
    return fmt::format("grips as before ({:.2f})", worn);
  return fmt::format("grips {}: {:.2f} instead of {:.2f}", worn > fresh ? "more" : "less", worn, fresh);
}

/// Why the wear ended early, or "".
std::string ended_early(const Run &run)
{
  return warning_on(run, solver::catalogue.worn_depth);
}

LineBlock worn_faces(const Run &run)
{
  const auto &wear = *rig_of(run).wear;
  LineBlock   block{
    "The face as it wears down",
    "",
    {{"shape of the face", "from leading to trailing end, mm", "height, mm", {}}, pressure_chart()}};
  for (const auto &face : run.result.faces)
  {
    const std::string name =
      face.way > 0 ? fmt::format("after {} steps", rounded_count(face.way / wear.slip)) : "fresh";
    block.charts[0].lines.push_back({name, scaled(face.place, 1e3), scaled(face.height, 1e3)});
    add_pressure(block.charts[1], name, face);
  }
  const double fresh = value_of(run, solver::catalogue.edge_pressure).value_or(0),
               worn = value_of(run, solver::catalogue.worn_edge_pressure).value_or(0);
  block.sentence =
    fmt::format("The face wears first where pressure is highest{}. The highest pressure over a quarter of a "
                "millimetre is {:.0f} kPa on the fresh face and {:.0f} kPa on the last one.",
                worn < (1 - really_less) * fresh   ? ", and so the pressure evens out"
                : worn > (1 + really_less) * fresh ? ", and its new edge takes more pressure"
                                                   : "; the greatest pressure stays",
                1e-3 * fresh, 1e-3 * worn);
  return block;
}

LineBlock life(const Run &run)
{
  const auto &wear = *rig_of(run).wear;
  const auto  depth = scaled(*any_curve(run, "depth"), 1e3), steps = scaled(*any_curve(run, "steps"), 1e-3);
  LineBlock   block{"How it lasts",
                  "",
                  {{"depth lost over steps", "thousand steps", "depth, mm", {}},
                     {"grip as it wears", "depth, mm", "grip", {}}}};
  block.charts[0].lines = {
    {"as given", steps, depth},
    {"upper bound of the wear", scaled(steps, wear.coefficient / wear.highest), depth}};
  // The least wear would push the others into a corner: it is told in words.
  block.charts[1].lines = {{"as given", depth, *any_curve(run, "grip")}};
  block.sentence =
    fmt::format("{} steps as given; {} at the upper bound of the wear, {} at the lower bound.",
                rounded_count(value_of(run, solver::catalogue.life_steps).value_or(0)),
                rounded_count(value_of(run, solver::catalogue.life_steps_lowest).value_or(0)),
                rounded_count(value_of(run, solver::catalogue.life_steps_highest).value_or(0)));
  return block;
}

/// One line a run.
LineBlock lives(const std::vector<const Run *> &runs)
{
  LineBlock  block{"How they last",
                  "The face of each when it is worn, and the depth lost until then.",
                  {{"depth lost over steps", "thousand steps", "depth, mm", {}},
                    {"face at the end", "from leading to trailing end, mm", "height, mm", {}}}};
  const auto labels = short_labels(runs);
  for (std::size_t i = 0; i < runs.size() && i < most_lines; ++i)
  {
    const auto &last = runs[i]->result.faces.back();
    block.charts[0].lines.push_back(
      {labels[i], scaled(*any_curve(*runs[i], "steps"), 1e-3), scaled(*any_curve(*runs[i], "depth"), 1e3)});
    block.charts[1].lines.push_back({labels[i], scaled(last.place, 1e3), scaled(last.height, 1e3)});
  }
  return block;
}

class Wear final : public CourtBar
{
public:
  solver::RigKind id() const override { return solver::RigKind::wear; }
  bool            tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, solver::catalogue.life_steps);
  }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto &wear = *numbers_of<SlideRig>(setup).wear;
    return CourtBar::text(setup, lengths) +
           fmt::format(
             "; worn down by {}, {} of slip per step{}, {} loses {:.2g} mm3/(N m) ({:.2g} to {:.2g})",
             length_text(wear.depth, lengths), length_text(wear.slip, lengths),
             wear.to_and_fro ? " both ways" : "", wear.reference, 1e9 * wear.coefficient, 1e9 * wear.lowest,
             1e9 * wear.highest);
  }

  std::vector<std::string> cautions(const solver::Case &setup) const override
  {
    auto texts = CourtBar::cautions(setup);
    texts.emplace_back("Wear on a court is user data here. Use it to compare rubbers and lugs, not as a "
                       "promise of hours. Check the tread itself, and replace it when it is worn.");
    return texts;
  }

  std::optional<InputRange> input_range(const Run &run, const std::string &reading) const override
  {
    return reading == solver::catalogue.life_steps ? range_beside(run, reading, "the wear on this court")
                                                   : CourtBar::input_range(run, reading);
  }

  std::string sentence(const Run &run) const override
  {
    return fmt::format("The bar loses {} in about {} steps on {} {}, first at {}. When worn, it {}.{}",
                       length(rig_of(run).wear->depth),
                       rounded_count(number(run, solver::catalogue.life_steps)), rig_of(run).court_state,
                       rig_of(run).court, first_place(run), grip_words(run), ended_early(run));
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    std::vector<Headline> headline{
      {"steps", rounded_count(number(run, solver::catalogue.life_steps)),
       fmt::format("until {} is gone; {} to {}", length(rig_of(run).wear->depth),
                   rounded_count(number(run, solver::catalogue.life_steps_lowest)),
                   rounded_count(number(run, solver::catalogue.life_steps_highest)))},
      {"life", fmt::format("{:.2f} ×", number(run, solver::catalogue.relative_life)),
       "that of " + rig_of(run).wear->reference},
      {"grip, worn", fmt::format("{:.2f}", number(run, solver::catalogue.worn_grip)),
       fmt::format("fresh {:.2f}", number(run, solver::catalogue.effective_grip))}};
    if (const auto hours = value_of(run, solver::catalogue.life_hours))
      headline[1] = {"life", fmt::format("{:.0f} h", *hours / 3600), "from the known worn pair"};
    return headline;
  }

  std::vector<std::string> story(const Run &run) const override
  {
    const auto              &rig = rig_of(run);
    const auto              &wear = *rig.wear;
    std::vector<std::string> story;
    story.push_back(fmt::format(
      "Every step slides the bar by {} under {:.0f} kPa{}. Wear follows pressure times slip, so the fresh "
      "lug wears first at {}, where the pressure is {:.0f} kPa over a quarter of a millimetre.",
      length(wear.slip), 1e-3 * rig.pressure, wear.to_and_fro ? ", as often one way as the other" : "",
      first_place(run), 1e-3 * number(run, solver::catalogue.edge_pressure)));
    story.push_back(fmt::format("When {} is gone on average and {} at the deepest place, the pressure at the "
                                "edge is {:.0f} kPa, and the lower lug {}.{}",
                                length(number(run, solver::catalogue.worn_depth)),
                                length(number(run, solver::catalogue.greatest_worn_depth)),
                                1e-3 * number(run, solver::catalogue.worn_edge_pressure), grip_words(run),
                                ended_early(run)));
    story.push_back(fmt::format("How fast {} wears on this court is {}: {:.2g} mm³ per newton and metre, in "
                                "a band from {:.2g} to {:.2g}. So {} steps could also be {} or {}.",
                                wear.reference, "user data, with no source", 1e9 * wear.coefficient,
                                1e9 * wear.lowest, 1e9 * wear.highest,
                                rounded_count(number(run, solver::catalogue.life_steps)),
                                rounded_count(number(run, solver::catalogue.life_steps_lowest)),
                                rounded_count(number(run, solver::catalogue.life_steps_highest))));
    if (const auto pair = value_of(run, solver::catalogue.pair_coefficient))
    {
      const bool within = *pair >= wear.lowest && *pair <= wear.highest;
      story.push_back(fmt::format(
        "With {:.0f} sliding steps per minute of play, your worn pair gives {:.2g} mm³ per newton and metre "
        "for {} on this court, {}. Enter it as the coefficient to predict other rubbers and lugs.",
        60 * wear.steps_per_second, 1e9 * *pair, wear.reference,
        within ? "inside the assumed band" : "outside the assumed band: check steps, slip and pressure"));
    }
    story.push_back(
      value_of(run, solver::catalogue.life_hours)
        ? fmt::format("Hours come only from your worn pair: {:.0f} h wore off {}, so {} will take {:.0f} h.",
                      wear.known_hours / 3600, length(wear.known_depth), length(wear.depth),
                      number(run, solver::catalogue.life_hours) / 3600)
        : std::string("Hours can only be predicted from a worn pair with known hours (known_hours, "
                      "known_depth). Without one, only compare rubbers or lugs."));
    return story;
  }

  std::vector<LineBlock> blocks(const std::vector<const Run *> &all) const override
  {
    const auto runs = with_faces(all);
    if (runs.empty())
      return {};
    return runs.size() == 1 ? std::vector{worn_faces(*runs[0]), life(*runs[0])} : std::vector{lives(runs)};
  }

protected:
  std::string moment(const Run &run) const override
  {
    return fmt::format("At the end, {} is gone on average.",
                       length(number(run, solver::catalogue.worn_depth)));
  }
};
} // namespace

const Kind &wear()
{
  static const Wear kind;
  return kind;
}
} // namespace solemech::tools::rigs
