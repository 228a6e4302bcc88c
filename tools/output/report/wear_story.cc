// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/wear_story.h"

#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

namespace solemech::tools::report
{
namespace
{
constexpr double edge_share = 0.2; ///< of the face that counts as its end
constexpr double same_grip =
  0.03; ///< of the grip, below which it has not changed: the width of friction's own doubt is far more

double number(const Run &run, const char *name)
{
  return value_of(run, name).value_or(0);
}

const solver::SlideRig &rig_of(const Run &run)
{
  return std::get<solver::SlideRig>(run.setup.rig);
}

std::string first_place(const Run &run)
{
  const double place = number(run, "first_wear_place");
  const bool   end = place < edge_share || place > 1 - edge_share;
  if (end && rig_of(run).wear->to_and_fro)
    return "its two edges";
  return place < edge_share       ? "its leading edge"
         : place > 1 - edge_share ? "its trailing edge"
                                  : "the middle of its face";
}

std::string grip_words(const Run &run)
{
  const double fresh = number(run, "effective_grip"), worn = number(run, "worn_grip");
  if (std::abs(worn - fresh) < same_grip * fresh)
    return fmt::format("grips as before ({:.2f})", worn);
  return fmt::format("grips {}: {:.2f} instead of {:.2f}", worn > fresh ? "more" : "less", worn, fresh);
}

/// Why the wear ended early, or "".
std::string ended_early(const Run &run)
{
  for (const auto &warning : run.result.warnings)
    if (warning.reading == "worn_depth")
      return " " + capital(warning.text) + ".";
  return "";
}
} // namespace

bool has_worn(const Run &run)
{
  const auto *rig = std::get_if<solver::SlideRig>(&run.setup.rig);
  return run.result.complete && rig && rig->wear && value_of(run, "life_steps");
}

std::string wear_sentence(const Run &run)
{
  return fmt::format("The bar loses {} in about {} steps on {} {}, first at {}; worn, it {}.{}",
                     length(rig_of(run).wear->depth), rounded_count(number(run, "life_steps")),
                     rig_of(run).court_state, rig_of(run).court, first_place(run), grip_words(run),
                     ended_early(run));
}

std::vector<Headline> wear_headline(const Run &run)
{
  std::vector<Headline> headline{
    {"steps", rounded_count(number(run, "life_steps")),
     fmt::format("until {} are gone; {} to {}", length(rig_of(run).wear->depth),
                 rounded_count(number(run, "life_steps_lowest")),
                 rounded_count(number(run, "life_steps_highest")))},
    {"life", fmt::format("{:.2f} ×", number(run, "relative_life")), "that of " + rig_of(run).wear->reference},
    {"grip, worn", fmt::format("{:.2f}", number(run, "worn_grip")),
     fmt::format("fresh {:.2f}", number(run, "effective_grip"))}};
  if (const auto hours = value_of(run, "life_hours"))
    headline[1] = {"life", fmt::format("{:.0f} h", *hours / 3600), "from the worn pair that is known"};
  return headline;
}

std::vector<std::string> wear_story(const Run &run)
{
  const auto              &rig = rig_of(run);
  const auto              &wear = *rig.wear;
  std::vector<std::string> story;
  story.push_back(fmt::format(
    "Every step slides the bar by {} under {:.0f} kPa{}. Wear follows pressure times slip, so the fresh lug "
    "begins to go at {}, where the pressure is {:.0f} kPa over a quarter of a millimetre.",
    length(wear.slip), 1e-3 * rig.pressure, wear.to_and_fro ? ", as often one way as the other" : "",
    first_place(run), 1e-3 * number(run, "edge_pressure")));
  story.push_back(fmt::format(
    "When {} are gone on the mean and {} where most is gone, the pressure at the edge is {:.0f} kPa, and the "
    "lower lug {}.{}",
    length(number(run, "worn_depth")), length(number(run, "greatest_worn_depth")),
    1e-3 * number(run, "worn_edge_pressure"), grip_words(run), ended_early(run)));
  story.push_back(fmt::format(
    "How fast {} wears on this court is {}: {:.2g} mm³ a newton and metre, known to a band from {:.2g} to "
    "{:.2g}. So {} steps may as well be {} or {}.",
    wear.reference, "user data, with no source", 1e9 * wear.coefficient, 1e9 * wear.lowest,
    1e9 * wear.highest, rounded_count(number(run, "life_steps")),
    rounded_count(number(run, "life_steps_lowest")), rounded_count(number(run, "life_steps_highest"))));
  if (const auto pair = value_of(run, "pair_coefficient"))
  {
    const bool within = *pair >= wear.lowest && *pair <= wear.highest;
    story.push_back(
      fmt::format("With {:.0f} sliding steps in a minute of play your worn pair says {:.2g} mm³ a newton and "
                  "metre for {} on this court, {}. "
                  "Put it in as coefficient, and other rubbers and lugs are told by it.",
                  60 * wear.steps_per_second, 1e9 * *pair, wear.reference,
                  within ? "inside the band that was taken"
                         : "outside the band that was taken: look at steps, slip and pressure again"));
  }
  story.push_back(
    value_of(run, "life_hours")
      ? fmt::format("Hours come from your worn pair alone: {:.0f} h took {}, so {} take {:.0f} h.",
                    wear.known_hours / 3600, length(wear.known_depth), length(wear.depth),
                    number(run, "life_hours") / 3600)
      : std::string(
          "Hours are told only from a worn pair after known hours (known_hours, known_depth); without one "
          "only the comparison with another rubber or lug counts."));
  return story;
}

std::string wear_moment(const Run &run)
{
  return fmt::format("At the end {} are gone on the mean.", length(number(run, "worn_depth")));
}
} // namespace solemech::tools::report
