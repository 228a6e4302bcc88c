// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/trial_rows.h"

#include "solver/results/catalogue.h"
#include "solver/results/uncertainty.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using Outcome = LimitSearch::Outcome;

constexpr double real_points = 0.02, real_share = 0.03; // readme, "What to trust, and what not"
/// Greatest drop energy of the prepared cases that are held against expected ranges [J], and body mass of the
/// pulse of Hoogkamer et al. 2018, Sports Med 48:1009 [kg].
constexpr double checked_energy = 7, checked_mass = 80;

const ReadingRow *shown_as(const std::string &reading)
{
  for (const auto &row : reading_rows())
    if (!row.readings.empty() && row.readings.front() == reading)
      return &row;
  return nullptr;
}

std::string amount(double difference, bool in_points)
{
  return fmt::format("{:+.{}f} {}", 100 * difference, std::abs(difference) < 0.0995 ? 1 : 0,
                     in_points ? "points" : "%");
}

/// Both errors at their worst, and what the doubts about a settled stack do to the difference; < 0: not
/// estimated.
double error_of_difference(const solver::Reading &now, const solver::Reading &then)
{
  return now.error < 0 || then.error < 0 ? -1 : solver::uncertainty_of_difference(now, then);
}

std::string warning_on(const solver::Result &result, const std::string &reading)
{
  for (const auto &warning : result.warnings)
    if (warning.reading == reading)
      return warning.text;
  return "";
}

/// What the greatest pressure is that of, when it is not the foam's.
std::string pressure_place(const Run &now, const Run &then)
{
  const auto on_sheet = [](const Run &run) {
    return !run.setup.layers.empty() && is_stiff_sheet(run.setup.layers.front());
  };
  return on_sheet(now) || on_sheet(then)
           ? "this is the edge of the striker on a stiff sheet, not pressure in the foam"
           : "";
}

TrialRow reading_row(const solver::ReadingKind &kind, const Run &now, const Run &then,
                     const SummaryOptions &options)
{
  const auto &form = kind.tried;
  const auto *before = now.result.find(kind), *after = then.result.find(kind);
  const auto *row = shown_as(kind);
  TrialRow    result{kind, std::string(form.name), "-", "-", "", Trend::unknown, form.wish, {}, {}, ""};
  if (row && before)
    result.now = row->cell(now, options), result.now_value = before->value;
  if (row && after)
    result.then = row->cell(then, options), result.then_value = after->value;
  if (!before || !after)
  {
    result.note = "cannot tell: one of the two does not have this reading";
    return result;
  }
  const auto judged =
    judge(before->value, after->value, form.in_points, error_of_difference(*before, *after));
  result.trend = judged.trend;
  result.note = judged.text;
  if (judged.trend == Trend::higher || judged.trend == Trend::lower)
  {
    const bool up = judged.trend == Trend::higher;
    const auto place =
      result.reading == solver::catalogue.peak_pressure ? pressure_place(now, then) : std::string();
    if (!place.empty())
      result.wish = Wish::neither;
    result.note += fmt::format(", {}", !place.empty() ? place : std::string(up ? form.higher : form.lower));
    if (const std::string item(up ? form.more : form.less); !item.empty())
      result.plain = fmt::format(fmt::runtime(item), judged.text);
  }
  if (const auto warning = warning_on(then.result, kind); !warning.empty())
    result.note += "; " + warning;
  return result;
}

std::string limit_text(const LimitSearch::Answer &answer, const char *unit)
{
  const auto load = fmt::format("{:.{}f} {}", answer.load, answer.load < 9.95 ? 1 : 0, unit);
  switch (answer.outcome)
  {
  case Outcome::found:
    return "about " + load;
  case Outcome::above:
    return "not up to " + load;
  case Outcome::below:
    return "below " + load;
  case Outcome::stopped:
    return answer.load > 0 ? "not up to " + load : "no answer";
  }
  return "";
}

Judgement judge_limits(const LimitSearch::Answer &now, const LimitSearch::Answer &then)
{
  if (now.outcome == Outcome::found && then.outcome == Outcome::found)
    return judge(now.load, then.load, false, 2 * reserve_tolerance * 0.5 * std::max(now.load, then.load));
  if (now.outcome == Outcome::stopped || then.outcome == Outcome::stopped)
    return {Trend::unknown, 0, "cannot tell: a run stopped before it bottomed"};
  if (now.outcome == then.outcome)
    return {Trend::same, 0, now.outcome == Outcome::above ? "neither bottoms" : "both bottom at once"};
  const bool up = then.outcome == Outcome::above || now.outcome == Outcome::below;
  return {up ? Trend::higher : Trend::lower, 0, up ? "more in reserve" : "less in reserve"};
}

TrialRow limit_row(const std::string &reading, const std::string &name, const char *unit,
                   const std::optional<LimitSearch::Answer> &now,
                   const std::optional<LimitSearch::Answer> &then)
{
  TrialRow row{reading, name, "-", "-", "", Trend::unknown, Wish::more, {}, {}, ""};
  if (now)
    row.now = limit_text(*now, unit), row.now_value = now->load;
  if (then)
    row.then = limit_text(*then, unit), row.then_value = then->load;
  if (!now || !then)
    row.note = "none of its layers can bottom out";
  else
  {
    const auto judged = judge_limits(*now, *then);
    row.trend = judged.trend;
    row.note = judged.text;
    if (judged.trend == Trend::higher || judged.trend == Trend::lower)
    {
      const char *what = judged.trend == Trend::higher ? "later" : "earlier";
      if (judged.difference != 0)
        row.note += fmt::format(", bottoms {}", what);
      row.plain =
        fmt::format("bottoms {}{}", what, judged.difference != 0 ? " (" + judged.text + " load)" : "");
    }
  }
  return row;
}

std::string travel_text(const TravelLeft &left)
{
  return left.share <= 0 ? fmt::format("{} bottoms", left.layer)
                         : fmt::format("{:.0f} % of travel left", 100 * left.share);
}

TrialRow player_row(double mass, const Reserve &now, const Reserve &then)
{
  TrialRow row{"travel_left_under_player",
               fmt::format("a step at {:.4g} kg", mass),
               "-",
               "-",
               "",
               Trend::unknown,
               Wish::more,
               {},
               {},
               ""};
  if (now.under_player)
    row.now = travel_text(*now.under_player), row.now_value = now.under_player->share;
  if (then.under_player)
    row.then = travel_text(*then.under_player), row.then_value = then.under_player->share;
  if (!now.under_player || !then.under_player)
  {
    row.note =
      "cannot tell: no layer can bottom out, the plug is narrower than the 60 mm head, or a run stopped";
    return row;
  }
  const auto judged = judge(now.under_player->share, then.under_player->share, true, -1);
  row.trend = judged.trend;
  const bool bottoms = then.under_player->share <= 0;
  row.note =
    bottoms ? fmt::format("bottoms: {} comes to its end", then.under_player->layer) : "does not bottom";
  row.note += "; " + judged.text;
  if (now.under_player->share > 0 && bottoms)
    row.plain = fmt::format("bottoms under a player of {:.4g} kg", mass);
  return row;
}
} // namespace

bool is_stiff_sheet(const solver::Layer &layer)
{
  return layer.material.family == "plate" ||
         (layer.material.family == "insert" &&
          std::holds_alternative<materials::PlateData>(layer.material.data));
}

bool TrialRow::improves() const
{
  return (wish == Wish::more && trend == Trend::higher) || (wish == Wish::less && trend == Trend::lower);
}

bool TrialRow::gets_worse() const
{
  return (wish == Wish::more && trend == Trend::lower) || (wish == Wish::less && trend == Trend::higher);
}

Judgement judge(double now, double then, bool in_points, double error)
{
  if (!std::isfinite(now) || !std::isfinite(then) || (!in_points && now == 0))
    return {Trend::unknown, 0, "cannot tell: nothing to compare with"};
  const double scale = in_points ? 1 : std::abs(now);
  const double difference = (then - now) / scale, real = in_points ? real_points : real_share;
  const auto   text = amount(difference, in_points);
  if (std::abs(difference) < real && error / scale <= real)
    return {Trend::same, difference, fmt::format("no real change ({})", text)};
  if (std::abs(difference) <= error / scale)
    return {Trend::unknown, difference,
            fmt::format("cannot tell: {} is within the numerical error, ±{:.1f}", text, 100 * error / scale)};
  if (std::abs(difference) < real)
    return {Trend::same, difference, fmt::format("no real change ({})", text)};
  return {difference > 0 ? Trend::higher : Trend::lower, difference, text};
}

std::vector<TrialRow> trial_rows(const TrialInput &trial, const TrialResult &result,
                                 const SummaryOptions &options)
{
  const Run now{before_change, trial.now, result.now.result},
    then{after_change, trial.changed, result.changed.result};
  std::vector<TrialRow> rows;
  for (const auto *kind : solver::in_order([](const solver::ReadingKind &each) { return each.tried.place; }))
    if (now.result.find(*kind) || then.result.find(*kind))
      rows.push_back(reading_row(*kind, now, then, options));
  const auto &before = result.now.reserve, &after = result.changed.reserve;
  if (before.energy || after.energy)
    rows.push_back(limit_row("bottoming_energy", "bottoms at a drop", "J", before.energy, after.energy));
  if (before.body_mass || after.body_mass)
    rows.push_back(limit_row("bottoming_mass", "bottoms at a step", "kg", before.body_mass, after.body_mass));
  if (trial.player_mass)
    rows.push_back(player_row(*trial.player_mass, before, after));
  if (trial.swaps.empty()) // only a range was asked for: there is nothing to compare with
    for (auto &row : rows)
      row.then.clear(), row.note.clear(), row.plain.clear(), row.trend = Trend::same;
  return rows;
}

std::string reserve_note(const TrialResult &result)
{
  double energy = 0, mass = 0;
  for (const auto *side : {&result.now.reserve, &result.changed.reserve})
  {
    if (side->energy)
      energy = std::max(energy, side->energy->load);
    if (side->body_mass)
      mass = std::max(mass, side->body_mass->load);
  }
  std::string text;
  if (energy > 0)
    text =
      fmt::format("Drop: the same rig from a greater height. The prepared cases are checked against outside "
                  "numbers up to {:.0f} J{}. ",
                  checked_energy,
                  energy > checked_energy ? fmt::format("; {:.0f} J is {:.1f} times that, an extrapolation",
                                                        energy, energy / checked_energy)
                                          : "");
  if (mass > 0)
    text += fmt::format(
      "Step: 2.55 body weights in 185 ms on a 60 mm head, searched from {:.0f} to {:.0f} kg; {:.0f} kg is "
      "the pulse of Hoogkamer et al. 2018 (from memory).",
      lightest_step, heaviest_step, checked_mass);
  return text;
}
} // namespace solemech::tools
