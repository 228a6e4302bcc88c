// SPDX-License-Identifier: Apache-2.0
// The grip of a whole sole in plain words and charts: at headings all round, against turning, under a tilted
// foot.
#include "solver/results/catalogue.h"
#include "tools/rigs/court_bar.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/kind.h"
#include "tools/rigs/numbers.h"

#include <fmt/format.h>

#include <cmath>
#include <numbers>

namespace solemech::tools::rigs
{
namespace
{
using solver::SlideRig;

constexpr double degrees = 180 / std::numbers::pi;
constexpr double alike_grip = 0.03; ///< of the grip: less is no difference beside the doubt of friction

const solver::Tread &tread_of(const Run &run)
{
  return *numbers_of<SlideRig>(run.setup).tread;
}

std::string heading_words(double heading)
{
  const char *words[] = {"straight ahead", "ahead and outwards", "outwards", "back and outwards",
                         "straight back",  "back and inwards",   "inwards",  "ahead and inwards"};
  return words[static_cast<int>(std::lround(heading / (std::numbers::pi / 4))) % 8];
}

const std::vector<double> &curve(const Run &run, const std::string &name)
{
  static const std::vector<double> nothing;
  const auto                      *values = any_curve(run, name);
  return values ? *values : nothing;
}

std::string pivot_words(const Run &run)
{
  return warning_on(run, solver::catalogue.pivot_moment);
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

std::string zone_count(const solver::Tread &tread)
{
  return tread.zones.size() == 1 ? "1 zone" : fmt::format("{} zones", tread.zones.size());
}

class WholeTread final : public CourtBar
{
public:
  solver::RigKind id() const override { return solver::RigKind::tread; }
  bool            tells(const Run &run) const override
  {
    return run.result.complete && value_of(run, solver::catalogue.pivot_moment);
  }

  std::string text(const solver::Case &setup, Lengths lengths) const override
  {
    const auto &rig = numbers_of<SlideRig>(setup);
    return fmt::format(
      "sole of {} on {} {}, friction {:.2g} ({:.2g} to {:.2g}), {:.0f} N, {:.2g} m/s, {} directions; bars {} "
      "wide, {} high, {} apart",
      zone_count(*rig.tread), rig.court_state, rig.court, rig.friction.mu_ref * rig.friction.state,
      rig.friction_lowest, rig.friction_highest, rig.tread->force, rig.speed, rig.tread->n_headings,
      length_text(rig.lug.width, lengths), length_text(rig.lug.height, lengths),
      length_text(rig.lug.spacing, lengths));
  }

  std::vector<std::string> cautions(const solver::Case &setup) const override
  {
    auto texts = CourtBar::cautions(setup);
    texts.emplace_back("A foot that is held hard against turning twists knee and ankle; one that is not held "
                       "slips. No moment is known to be safe. Use it to compare soles. People with pain or "
                       "old injuries should ask a licensed professional.");
    return texts;
  }

  std::string sentence(const Run &run) const override
  {
    const double low = number(run, solver::catalogue.lowest_grip),
                 high = number(run, solver::catalogue.highest_grip);
    const auto &rig = numbers_of<SlideRig>(run.setup);
    std::string text = fmt::format("On {} {} ", rig.court_state, rig.court);
    text +=
      high - low < alike_grip * high
        ? fmt::format("the sole grips equally in all directions, with {:.2f} of the force on it",
                      number(run, solver::catalogue.effective_grip))
        : fmt::format("the sole grips least {}, with {:.2f} of the force on it; the highest grip is {:.2f}",
                      heading_words(number(run, solver::catalogue.lowest_grip_heading)), low, high);
    return text + fmt::format(". A moment of {:.1f} N·m resists turning on the ball.{}",
                              number(run, solver::catalogue.pivot_moment), pivot_words(run));
  }

  std::vector<Headline> headline(const Run &run) const override
  {
    return {{"grip in a side cut", fmt::format("{:.2f}", number(run, solver::catalogue.grip_side_cut)),
             "friction divided by force, outwards"},
            {"grip in a push-off", fmt::format("{:.2f}", number(run, solver::catalogue.grip_push_off)),
             fmt::format("braking {:.2f}", number(run, solver::catalogue.grip_braking))},
            {"pivot", fmt::format("{:.1f} N·m", number(run, solver::catalogue.pivot_moment)),
             fmt::format("on the ball, under {:.0f} N", tread_of(run).force)}};
  }

  std::vector<std::string> story(const Run &run) const override
  {
    const auto              &tread = tread_of(run);
    const auto              &rig = numbers_of<SlideRig>(run.setup);
    std::vector<std::string> story;
    std::string              text = fmt::format(
                   "The sole of {} is pressed on the floor with {:.0f} N and slid in {} directions. Each zone grips as "
                                "its bars do at their angle; the sole grips as its zones do, weighted by their loads.",
                   zone_count(tread), tread.force, tread.n_headings);
    if (rig.friction_highest > rig.friction_lowest)
      text += fmt::format(" The friction of this floor is known only to lie between {:.2g} and {:.2g}; every "
                          "grip and the moment vary with it.",
                          rig.friction_lowest, rig.friction_highest);
    story.push_back(text);
    story.push_back(
      fmt::format("Loaded as in each movement, it grips with {:.2f} in a push-off, {:.2f} in braking and "
                  "{:.2f} in a side cut. The bars of the most loaded zone carry {:.0f} kPa.",
                  number(run, solver::catalogue.grip_push_off), number(run, solver::catalogue.grip_braking),
                  number(run, solver::catalogue.grip_side_cut),
                  1e-3 * number(run, solver::catalogue.highest_zone_pressure)));
    story.push_back(
      fmt::format("A moment of {:.1f} N·m resists turning on the ball.{} A caution is shown below {:.3g} N·m "
                  "and above {:.3g} N·m. These limits are user data: no source gives a safe moment.",
                  number(run, solver::catalogue.pivot_moment), pivot_words(run), tread.lowest_moment,
                  tread.highest_moment));
    story.push_back(fmt::format("Rolled 15° outward, the foot keeps {:.0f} % of its tread area in contact, "
                                "calculated as a stiff plate on a sole that gives {}.",
                                100 * number(run, solver::catalogue.rolled_contact_share),
                                length(tread.give)));
    return story;
  }

  std::vector<LineBlock> blocks(const std::vector<const Run *> &all) const override
  {
    std::vector<const Run *> runs;
    for (const Run *run : all)
      if (tells(*run) && runs.size() < most_lines)
        runs.push_back(run);
    if (runs.empty())
      return {};
    const auto labels = short_labels(runs);
    LineBlock  grip{
      "Grip all round", "", {{"grip of the sole", "inwards - outwards", "back - ahead", {}, true}}};
    LineBlock tilt{
      "Contact under a tilted foot",
      "A tilted foot stands on an edge of its sole: the remaining contact carries the whole load.",
      {{"rolled onto the outer side", "angle of the foot, degrees", "area in contact, %", {}},
       {"pitched onto the toe", "angle of the foot, degrees", "area in contact, %", {}}}};
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
    grip.sentence = sentence(*runs[0]);
    return {grip, tilt};
  }

protected:
  std::string moment(const Run &run) const override { return sentence(run); }
};
} // namespace

const Kind &tread()
{
  static const WholeTread kind;
  return kind;
}
} // namespace solemech::tools::rigs
