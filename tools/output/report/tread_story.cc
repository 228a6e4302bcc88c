// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/tread_story.h"

#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace solemech::tools::report
{
namespace
{
constexpr double      degrees = 180 / std::numbers::pi;
constexpr double      alike_grip = 0.03; ///< of the grip: less is no difference beside the doubt of friction
constexpr std::size_t most_lines = 6;

double number(const Run &run, const char *name)
{
  return value_of(run, name).value_or(0);
}

const solver::Tread &tread_of(const Run &run)
{
  return *std::get<solver::SlideRig>(run.setup.rig).tread;
}

std::string heading_words(double heading)
{
  const char *words[] = {"straight ahead", "ahead and outwards", "outwards",  "back and outwards",
                         "straight back",  "back and inwards",   "inwards",   "ahead and inwards"};
  return words[static_cast<int>(std::lround(heading / (std::numbers::pi / 4))) % 8];
}

const std::vector<double> &curve(const Run &run, const std::string &name)
{
  static const std::vector<double> nothing;
  for (const auto &each : run.result.curves)
    if (each.name == name)
      return each.values;
  return nothing;
}

std::string pivot_words(const Run &run)
{
  for (const auto &warning : run.result.warnings)
    if (warning.reading == "pivot_moment")
      return " " + capital(warning.text) + ".";
  return "";
}

/// Round and closed: ahead is up, outwards to the right.
ChartLine round_line(const std::string &name, const Run &run, const std::string &values)
{
  ChartLine   line{name, {}, {}};
  const auto &heading = curve(run, "heading"), &grip = curve(run, values);
  for (std::size_t i = 0; i <= grip.size() && !grip.empty(); ++i)
  {
    line.x.push_back(grip[i % grip.size()] * std::sin(heading[i % grip.size()]));
    line.y.push_back(grip[i % grip.size()] * std::cos(heading[i % grip.size()]));
  }
  return line;
}

ChartLine tilt_line(const std::string &name, const Run &run, const char *values)
{
  ChartLine line{name, curve(run, "tilt"), curve(run, values)};
  for (double &x : line.x)
    x *= degrees;
  for (double &y : line.y)
    y *= 100;
  return line;
}
} // namespace

bool has_tread_map(const Run &run)
{
  const auto *rig = std::get_if<solver::SlideRig>(&run.setup.rig);
  return run.result.complete && rig && rig->tread && value_of(run, "pivot_moment");
}

std::string tread_sentence(const Run &run)
{
  const double low = number(run, "lowest_grip"), high = number(run, "highest_grip");
  const auto  &rig = std::get<solver::SlideRig>(run.setup.rig);
  std::string  text = fmt::format("On {} {} ", rig.court_state, rig.court);
  text += high - low < alike_grip * high
            ? fmt::format("the sole grips alike all round, with {:.2f} of the force on it", number(run, "effective_grip"))
            : fmt::format("the sole grips least {}, with {:.2f} of the force on it, and {:.2f} at most",
                          heading_words(number(run, "lowest_grip_heading")), low, high);
  return text + fmt::format("; {:.1f} N·m hold it against turning on the ball.{}", number(run, "pivot_moment"), pivot_words(run));
}

std::vector<Headline> tread_headline(const Run &run)
{
  return {{"grip in a side cut", fmt::format("{:.2f}", number(run, "grip_side_cut")), "friction over force, outwards"},
          {"grip in a push-off", fmt::format("{:.2f}", number(run, "grip_push_off")),
           fmt::format("braking {:.2f}", number(run, "grip_braking"))},
          {"pivot", fmt::format("{:.1f} N·m", number(run, "pivot_moment")),
           fmt::format("on the ball, under {:.0f} N", tread_of(run).force)}};
}

std::vector<std::string> tread_story(const Run &run)
{
  const auto &tread = tread_of(run);
  const auto &rig = std::get<solver::SlideRig>(run.setup.rig);
  std::vector<std::string> story;
  std::string text = fmt::format("The sole of {} is pressed on the floor with {:.0f} N and slid at {} headings; each zone grips "
                                 "as its bars do at their angle, and the sole as its zones, by the load on each.",
                                 tread.zones.size() == 1 ? "1 zone" : fmt::format("{} zones", tread.zones.size()), tread.force, tread.n_headings);
  if (rig.friction_highest > rig.friction_lowest)
    text += fmt::format(" The friction of this floor is known to a band from {:.2g} to {:.2g} only; every grip and the moment move with it.",
                        rig.friction_lowest, rig.friction_highest);
  story.push_back(text);
  story.push_back(fmt::format("Loaded as in each movement it grips with {:.2f} in a push-off, {:.2f} in braking and {:.2f} in a side "
                              "cut; the bars of the most loaded zone bear {:.0f} kPa.",
                              number(run, "grip_push_off"), number(run, "grip_braking"), number(run, "grip_side_cut"),
                              1e-3 * number(run, "highest_zone_pressure")));
  story.push_back(fmt::format("Turning on the ball, the foot is held by {:.1f} N·m.{} A caution is due below {:.3g} and above {:.3g} N·m: "
                              "user data, for no source gives a moment that is safe.",
                              number(run, "pivot_moment"), pivot_words(run), tread.lowest_moment, tread.highest_moment));
  story.push_back(fmt::format("Rolled outwards by 15°, the foot keeps {:.0f} % of its zones down, as a stiff plate on a sole that gives {}.",
                              100 * number(run, "rolled_contact_share"), length(tread.give)));
  return story;
}

std::vector<LineBlock> tread_blocks(const std::vector<const Run *> &all)
{
  std::vector<const Run *> runs;
  for (const Run *run : all)
    if (has_tread_map(*run) && runs.size() < most_lines)
      runs.push_back(run);
  if (runs.empty())
    return {};
  const auto labels = short_labels(runs);
  LineBlock  grip{"Grip all round", "", {{"grip of the sole", "inwards - outwards", "back - ahead", {}, true}}};
  LineBlock  tilt{"What touches under a tilted foot",
                 "A tilted foot stands on an edge of its sole: what is left of contact carries the whole load.",
                 {{"rolled onto the outer side", "angle of the foot, degrees", "zones that touch, %", {}},
                   {"pitched onto the toe", "angle of the foot, degrees", "zones that touch, %", {}}}};
  for (std::size_t i = 0; i < runs.size(); ++i)
  {
    grip.charts[0].lines.push_back(round_line(labels[i], *runs[i], "grip"));
    tilt.charts[0].lines.push_back(tilt_line(labels[i], *runs[i], "rolled_share"));
    tilt.charts[1].lines.push_back(tilt_line(labels[i], *runs[i], "pitched_share"));
  }
  if (runs.size() == 1)
  {
    LineChart zones{"grip of each zone", "inwards - outwards", "back - ahead", {}, true};
    for (const auto &zone : tread_of(*runs[0]).zones)
      if (zones.lines.size() < most_lines)
        zones.lines.push_back(round_line(zone.name, *runs[0], "grip_of_" + zone.name));
    grip.charts.push_back(std::move(zones));
  }
  grip.sentence = tread_sentence(*runs[0]);
  return {grip, tilt};
}
} // namespace solemech::tools::report
