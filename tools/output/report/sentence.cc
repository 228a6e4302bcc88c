// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/story.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

namespace solemech::tools::report
{
std::string stopped_early(const Run &run)
{
  return "The run stopped early" + (run.result.stop_reason.empty() ? "" : ": " + run.result.stop_reason) +
         ".";
}

/// What the curves hold when no reading could be made.
std::string so_far(const Run &run)
{
  return run.result.time.empty()
           ? "Nothing was recorded."
           : fmt::format(
               "Until then, {} after first touch, the peak force was {} and the stack had given {}.",
               time_text(run.result.time.back()), force_text(rigs::greatest_in(rigs::curve_of(run, "force"))),
               rigs::of_stack(run, rigs::greatest_in(rigs::compression_curve(run))));
}

std::string sentence_of(const Run &run)
{
  const auto &kind = rigs::kind_of(run.setup);
  if (auto text = kind.tells(run) ? kind.sentence(run) : std::string(); !text.empty())
    return text;
  const std::string striker = kind.striker(run.setup);
  const auto        rebound = rigs::value_of(run, solver::catalogue.rebound_by_height),
             rise = rigs::value_of(run, solver::catalogue.rebound_height);
  const auto back = rigs::value_of(run, solver::catalogue.loop_return),
             force = rigs::value_of(run, solver::catalogue.peak_force);
  const auto   margin = rigs::value_of(run, solver::catalogue.bottoming_margin);
  const double way = rigs::greatest_compression(run);
  if (!run.result.complete || !force)
    return (run.result.complete ? "The run gave no readings." : stopped_early(run)) + " " + so_far(run);
  std::string text;
  if (rebound && rise)
    text = *rise > 0
             ? fmt::format("The {} rebounds {}, {} of the drop height. The peak force is {}", striker,
                           rigs::length(*rise), share_words(*rebound), force_text(*force))
             : fmt::format("The {} does not rebound. The peak force is {}", striker, force_text(*force));
  else if (back)
    return fmt::format(
      "The stack gives back {} of the work put in. The peak force is {}, and the stack is squeezed by {}{}.",
      share_words(*back), force_text(*force), rigs::of_stack(run, way),
      margin && *margin <= 0 ? "; it bottoms out" : "");
  else
    text = fmt::format("The peak force is {}", force_text(*force));
  text += fmt::format(", and the stack gives {}", rigs::of_stack(run, way));
  if (margin && *margin <= 0)
    text += "; it bottoms out";
  return text + ".";
}

std::vector<rigs::Headline> headline_of(const Run &run)
{
  const auto                 &kind = rigs::kind_of(run.setup);
  std::vector<rigs::Headline> headline = kind.tells(run) ? kind.headline(run) : std::vector<rigs::Headline>();
  if (!headline.empty())
    return headline;
  const auto   force = rigs::value_of(run, solver::catalogue.peak_force);
  const double way = rigs::greatest_compression(run);
  if (!force)
  {
    if (run.result.time.empty())
      return headline;
    return {
      {"time covered", time_text(run.result.time.back()), "the run stopped early"},
      {"force so far", force_text(rigs::greatest_in(rigs::curve_of(run, "force"))), "highest until then"},
      {"compression so far", rigs::length(rigs::greatest_in(rigs::compression_curve(run))),
       "highest until then"}};
  }
  if (const auto rise = rigs::value_of(run, solver::catalogue.rebound_height),
      share = rigs::value_of(run, solver::catalogue.rebound_by_height);
      rise && share)
    headline.push_back({"rebound", rigs::length(*rise), share_words(*share) + " of the drop height"});
  else if (const auto back = rigs::value_of(run, solver::catalogue.loop_return))
    headline.push_back({"energy return", share_words(*back),
                        run.result.input_energy > 0
                          ? "of the " + energy_text(run.result.input_energy) + " put in"
                          : "of the work put in"});
  std::string note;
  if (const auto deceleration = rigs::value_of(run, solver::catalogue.peak_deceleration))
    note = fmt::format("slows the {} by {:.0f} g", kind.striker(run.setup), *deceleration);
  else if (const auto stiffness = rigs::value_of(run, solver::catalogue.secant_stiffness))
    note = fmt::format("{:.0f} N/mm from zero to peak", 1e-3 * *stiffness);
  headline.push_back({"peak force", force_text(*force), note});
  const auto share = rigs::value_of(run, solver::catalogue.compression_share);
  headline.push_back(
    {"compression", rigs::length(way),
     share ? fmt::format("{:.0f} % of {}", 100 * *share, rigs::length(stack_height(run.setup.layers))) : ""});
  return headline;
}

} // namespace solemech::tools::report
