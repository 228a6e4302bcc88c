// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/reading_plan.h"

#include "materials/pad_hardness.h"
#include "solver/results/catalogue.h"
#include "tools/answers/sheet/doubted.h"
#include "tools/answers/sheet/instruments.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace solemech::tools
{
namespace
{
using D = materials::Dimension;
using solver::catalogue;

constexpr double derivative_step = 0.03; ///< of ln(unknown), as in settle::Wish
constexpr double least_worth = 0.95;     ///< share of the band left up to which a reading is worth its work

/// A reading that could be taken, before its gradient is known.
struct Idea
{
  Probe       probe;
  double      half_band = 0;
  bool        relative = false; ///< half_band is a share of the value
  std::string instrument, needs, note;
};

const char *const nothing_cut = "no further cut";
const char *const layers_parted = "layers separated";

/// Whether the person has what it takes. Without a word about tools everything is taken to be there.
bool has_tool_for(const Sheet &sheet, const Idea &idea)
{
  struct Word
  {
    const char *part, *tool;
  };
  constexpr Word words[] = {{"rule", "rule"},      {"callipers", "callipers"}, {"scales", "scales"},
                            {"weighed", "scales"}, {"by hand", "gauge"},       {"sensor", "sensor"},
                            {"camera", "camera"},  {"press", "press"}};
  bool           needs_one = false;
  for (const auto &[part, tool] : words)
    if (idea.instrument.find(part) != std::string::npos)
    {
      needs_one = true;
      if (std::find(sheet.tools.begin(), sheet.tools.end(), tool) != sheet.tools.end())
        return true;
    }
  return sheet.tools.empty() || !needs_one;
}

/// Leaves out what the person has no tool for, and says so.
void keep_readable(const Sheet &sheet, std::vector<Idea> &ideas, ReadingPlan &plan)
{
  std::erase_if(ideas, [&](const Idea &idea) {
    const bool readable = has_tool_for(sheet, idea);
    if (!readable)
      plan.left_out.push_back(
        fmt::format("{}: needs {}, which is not among your tools.", idea.probe.name, idea.instrument));
    return !readable;
  });
}

/// The reading of the sheet that says the same as a probe on its own rig.
const SheetReading *on_sheet(const Sheet &sheet, const std::string &reading, const std::string &as_well = {})
{
  for (const auto &one : sheet.readings)
    if (!one.probe.direct && one.probe.bench == 0 &&
        (one.probe.reading == reading || one.probe.reading == as_well))
      return &one;
  return nullptr;
}

bool has_note(const Sheet &sheet, const std::string &layer, const std::string &kind)
{
  return std::any_of(sheet.readings.begin(), sheet.readings.end(), [&](const SheetReading &one) {
    return one.layer == layer && one.probe.name.starts_with(kind) && !one.observation.held_out;
  });
}

/// Readings of the sheet's own drop that a sensor or a camera adds.
std::vector<Idea> own_drop_ideas(const Sheet &sheet, ReadingPlan &plan)
{
  const Idea ideas[] = {
    {probe_of(catalogue.rebound_height), instruments::height_by_eye, false, "by eye on a rule", nothing_cut,
     ""},
    {probe_of(catalogue.peak_force), instruments::force_sensor, true, "force sensor", nothing_cut, ""},
    {probe_of(catalogue.greatest_compression), instruments::compression_by_camera, false, "camera",
     nothing_cut, ""},
    {probe_of(catalogue.contact_time), instruments::contact_time, false, "sensor or fast camera", nothing_cut,
     ""},
  };
  std::vector<Idea> out;
  for (auto idea : ideas)
  {
    const bool  is_rebound = idea.probe.reading == catalogue.rebound_height;
    const auto *there =
      on_sheet(sheet, idea.probe.reading, is_rebound ? std::string(catalogue.rebound_by_height) : "");
    if (there && !there->observation.held_out)
    {
      plan.left_out.push_back(fmt::format(
        "{} of this rig: already on the sheet. More hits narrow only their own scatter, not the ± of the {}.",
        idea.probe.name, is_rebound ? "rule" : "instrument"));
      continue;
    }
    if (there)
    {
      idea.half_band = there->observation.doubt * doubts_in_half_band;
      idea.relative = false;
      idea.note = "on the sheet, held out: this is what it would add if it were used";
    }
    out.push_back(std::move(idea));
  }
  return out;
}

/// Drops from lower down; heights that the sheet has already are left out.
void add_lower_drops(Sheet &sheet, std::vector<Idea> &ideas)
{
  const double height = rigs::fall_of(sheet.setup)->height;
  for (const double share : {0.5, 0.25})
  {
    const double lower = std::round(200 * share * height) / 200; // to 5 mm
    const bool   there =
      std::any_of(sheet.readings.begin(), sheet.readings.end(), [&](const SheetReading &one) {
        auto setup = sheet.setup;
        sheet.benches[one.probe.bench](setup);
        const auto *drop = rigs::fall_of(setup);
        return !one.observation.held_out && one.probe.reading.starts_with("rebound") && drop &&
               std::abs(drop->height / lower - 1) < 0.1;
      });
    if (there || !(lower > 0.05)) // below that the eye's doubt is most of the reading
      continue;
    sheet.benches.push_back([lower](solver::Case &setup) { rigs::fall_of(setup)->height = lower; });
    ideas.push_back({probe_of(catalogue.rebound_height, sheet.benches.size() - 1,
                              fmt::format("rebound from {:.0f} mm", 1e3 * lower)),
                     instruments::height_by_eye, false, "by eye on a rule", nothing_cut, ""});
  }
}

/// One slow cycle to the compression that the drop reaches.
void add_press(Sheet &sheet, double compression, std::vector<Idea> &ideas)
{
  const bool   there = std::any_of(sheet.readings.begin(), sheet.readings.end(), [](const SheetReading &one) {
    return one.probe.name.starts_with("press loop");
  });
  const double peak = std::round(2000 * compression) / 2000; // to 0.5 mm
  if (there || !(peak > 0))
    return;
  const double diameter = tup_of(sheet.setup.rig).diameter;
  sheet.benches.push_back([peak, diameter](solver::Case &setup) {
    solver::PressRig press;
    press.tup.diameter = diameter > 0 ? diameter : 0.04;
    press.tup.edge_radius = 1e-3;
    press.peak = peak;
    setup.rig = press;
  });
  ideas.push_back({probe_of(catalogue.loop_return, sheet.benches.size() - 1,
                            fmt::format("press loop to {:.1f} mm in 1 s, energy return", 1e3 * peak)),
                   instruments::press_loop_return, false, "force and travel of a press", nothing_cut, ""});
  ideas.push_back({probe_of(catalogue.peak_force, sheet.benches.size() - 1,
                            fmt::format("press loop to {:.1f} mm in 1 s, peak force", 1e3 * peak)),
                   instruments::force_sensor, true, "force of a press", nothing_cut, ""});
}

/// Hardness on a pad of each unknown material whose gauge can read it.
void add_hardness(const Sheet &sheet, const solver::Case &settled, std::vector<Idea> &ideas,
                  ReadingPlan &plan)
{
  for (const auto &unknown : sheet.materials)
    for (const auto &layer : settled.layers)
    {
      if (layer.material.name != unknown.name || layer.name != unknown.layer)
        continue;
      if (has_note(sheet, layer.name, "hardness"))
      {
        plan.left_out.push_back(fmt::format("hardness of {}: already on the sheet. Repeating it does not "
                                            "help: how stiff a foam with that hardness is stays uncertain.",
                                            layer.name));
        continue;
      }
      const auto scale =
        unknown.family == "rubber" ? materials::HardnessScale::shore_a : materials::HardnessScale::asker_c;
      const auto  &gauge = *std::find_if(materials::gauges.begin(), materials::gauges.end(),
                                         [&](const auto &one) { return one.scale == scale; });
      const auto   range = materials::reliable_readings(scale);
      const double value = materials::pad_reading(gauge, layer.material);
      if (value < range.lowest || value > range.highest)
        continue;
      Probe        probe{fmt::format("hardness of {}", layer.name),
                  D::number,
                  std::string(gauge.name),
                  0,
                  "",
                  "",
                  pad_hardness(gauge, layer.name)};
      const double poisson = materials::slow_stiffness(layer.material).poisson_ratio;
      const double half = instruments::hardness_on_pad(
        instruments::gauge_by_hand, gauge, materials::modulus_from_reading(gauge, value, poisson), poisson);
      ideas.push_back({std::move(probe), half, false, fmt::format("{} by hand", gauge.name),
                       "a pad of at least 6 mm",
                       "its ± includes how loosely hardness and stiffness are related"});
    }
}

/// Readings of an unknown number itself: its gradient is the number.
struct Directly
{
  double      half_band = 0;
  bool        relative = false;
  const char *name, *instrument, *needs;
};

std::optional<Directly> read_directly(DoubtedNumber kind)
{
  switch (kind)
  {
  case DoubtedNumber::density:
    return Directly{instruments::weighed_cube, true, "", "cut cube, weighed", layers_parted};
  case DoubtedNumber::thickness:
    return Directly{instruments::callipers_on_foam, false, "", "callipers on the cut face", layers_parted};
  case DoubtedNumber::mass:
    return Directly{instruments::drop_mass, false, "", "scales", nothing_cut};
  case DoubtedNumber::height:
    return Directly{instruments::drop_height, false, "", "rule and stop", nothing_cut};
  case DoubtedNumber::guide_loss:
    return Directly{instruments::guide_loss, false, "", "drops on a reference block", nothing_cut};
  case DoubtedNumber::modulus:
  case DoubtedNumber::loss:
  case DoubtedNumber::gauge_pressure: // to read it means to pierce the unit
    break;
  }
  return std::nullopt;
}

/// d prediction / d ln(unknown) of all probes by central differences; a row is empty when a run of it failed.
std::vector<std::vector<double>> gradients(const Sheet &sheet, const std::vector<Probe> &probes,
                                           const std::vector<double> &values, Job &job,
                                           std::vector<double> &at_values)
{
  std::vector<std::vector<double>> sets{values};
  for (std::size_t k = 0; k < values.size(); ++k)
    for (const double direction : {1.0, -1.0})
    {
      const auto &limits = sheet.unknowns[k].parameter;
      auto        set = values;
      set[k] = std::clamp(set[k] * std::exp(direction * derivative_step), limits.lowest, limits.highest);
      sets.push_back(std::move(set));
    }
  const auto rows = predict_probes(sheet, probes, sets, job);
  at_values = rows.front();
  std::vector<std::vector<double>> out(probes.size());
  if (std::any_of(rows.begin(), rows.end(), [](const auto &row) { return row.empty(); }))
    return out;
  for (std::size_t p = 0; p < probes.size(); ++p)
    for (std::size_t k = 0; k < values.size(); ++k)
      out[p].push_back((rows[2 * k + 1][p] - rows[2 * k + 2][p]) /
                       std::log(sets[2 * k + 1][k] / sets[2 * k + 2][k]));
  return out;
}

/// Candidates with what people are told about them.
struct Candidates
{
  std::vector<settle::Candidate> list;
  std::vector<PlannedReading>    words;

  void add(const Idea &idea, double value, std::vector<double> gradient)
  {
    const double half = idea.relative ? idea.half_band * std::abs(value) : idea.half_band;
    list.push_back({idea.probe.name, std::move(gradient), half / doubts_in_half_band});
    words.push_back({idea.probe.name, idea.instrument, idea.needs, idea.note, 0, true});
  }
};

bool has_unit(const Sheet &sheet, const std::string &layer)
{
  return std::any_of(sheet.setup.layers.begin(), sheet.setup.layers.end(),
                     [&](const solver::Layer &one) { return one.name == layer && one.unit; });
}

void add_direct(const Sheet &sheet, const SettledSheet &answer, Candidates &candidates, ReadingPlan &plan)
{
  for (std::size_t k = 0; k < sheet.unknowns.size(); ++k)
  {
    const auto &unknown = sheet.unknowns[k];
    const auto  how = read_directly(unknown.kind);
    if (!how || unknown.parameter.minor)
      continue;
    const auto &name = unknown.parameter.name;
    const bool  weighed =
      unknown.kind == DoubtedNumber::density &&
      std::any_of(sheet.readings.begin(), sheet.readings.end(), [&](const SheetReading &one) {
        return !one.observation.held_out && name == one.layer + " density" &&
               one.probe.name.starts_with("density");
      });
    if (weighed)
    {
      plan.left_out.push_back(fmt::format("{}: already on the sheet.", name));
      continue;
    }
    Idea idea;
    idea.probe.name = name;
    idea.half_band = how->half_band;
    idea.relative = how->relative;
    idea.instrument = how->instrument;
    idea.needs = how->needs;
    if (unknown.kind == DoubtedNumber::thickness && has_unit(sheet, unknown.target))
    {
      idea.instrument = "rule on the side wall, or the whole height minus the other layers";
      idea.needs = nothing_cut;
      idea.half_band = instruments::beside_a_unit;
      idea.note = "never cut into the unit to measure it";
    }
    if (!has_tool_for(sheet, idea))
    {
      plan.left_out.push_back(
        fmt::format("{}: needs {}, which is not among your tools.", name, idea.instrument));
      continue;
    }
    std::vector<double> gradient(sheet.unknowns.size(), 0.0);
    gradient[k] = answer.settled.values[k];
    candidates.add(idea, answer.settled.values[k], std::move(gradient));
  }
}

void tell_doubts(const SettledSheet &answer, ReadingPlan &plan)
{
  for (std::size_t i = 0; i < answer.n_readings; ++i)
    if (answer.settled.observations[i].verdict == settle::Verdict::disagree)
      plan.doubts.push_back(
        fmt::format("{} disagrees with the model. Find out why before you trust this order.",
                    answer.settled.observations[i].name));
  if (!answer.settled.converged)
    plan.doubts.push_back("The fit to the readings did not finish: " + answer.settled.why_not);
}
/// What is asked of a sheet before it is settled.
struct Asked
{
  ReadingPlan        plan;
  std::vector<Idea>  own_drop;
  std::vector<Probe> probes;
};

Asked asked_of(const Sheet &sheet, const PlanQuestion &question)
{
  Asked asked{{question, {}, {}, {}, {}}, {}, {}};
  asked.own_drop = own_drop_ideas(sheet, asked.plan);
  keep_readable(sheet, asked.own_drop, asked.plan);
  asked.probes = {probe_of(*question.reading, 0, question.title), probe_of(catalogue.greatest_compression)};
  for (const auto &idea : asked.own_drop)
    asked.probes.push_back(idea.probe);
  return asked;
}

/// Readings on other benches, round the settled values.
void add_further(const Sheet &sheet, const SettledSheet &answer, double compression, Job &job,
                 Candidates &candidates, ReadingPlan &plan)
{
  Sheet             wider = sheet;
  std::vector<Idea> further;
  add_lower_drops(wider, further);
  add_press(wider, compression, further);
  add_hardness(sheet, answer.setup, further, plan);
  keep_readable(sheet, further, plan);
  // One batch a bench: a bench that cannot be run takes no other with it.
  for (std::size_t begin = 0; begin < further.size();)
  {
    std::size_t        end = begin;
    std::vector<Probe> probes;
    while (end < further.size() && further[end].probe.bench == further[begin].probe.bench)
      probes.push_back(further[end++].probe);
    std::vector<double> at_values;
    const auto          rows = gradients(wider, probes, answer.settled.values, job, at_values);
    for (std::size_t p = 0; p < probes.size(); ++p)
      if (rows[p].empty())
        plan.left_out.push_back(fmt::format("{}: could not be computed.", probes[p].name));
      else
        candidates.add(further[begin + p], at_values[p], rows[p]);
    begin = end;
  }
}

ReadingPlan ranked(const Sheet &sheet, Asked asked, const SettledSheet &answer, Job &job)
{
  auto      &plan = asked.plan;
  const auto first = answer.n_readings;
  plan.now = answer.settled.observations[first].predicted;

  Candidates candidates;
  for (std::size_t i = 0; i < asked.own_drop.size(); ++i)
    candidates.add(asked.own_drop[i], answer.settled.predictions[first + 2 + i],
                   answer.settled.jacobian[first + 2 + i]);
  add_direct(sheet, answer, candidates, plan);
  add_further(sheet, answer, answer.settled.predictions[first + 1], job, candidates, plan);

  const double half = 0.5 * (plan.now.high - plan.now.low);
  for (const auto &next :
       settle::rank_readings(answer.settled, candidates.list, answer.settled.jacobian[first]))
  {
    auto planned = candidates.words[next.candidate];
    planned.half_band = next.doubt_left * half;
    planned.worth = next.doubt_left <= least_worth;
    plan.ranked.push_back(std::move(planned));
  }
  tell_doubts(answer, plan);
  return plan;
}
} // namespace

std::vector<ReadingPlan> plan_readings(const std::vector<Sheet> &sheets, const PlanQuestion &question,
                                       Job &job)
{
  std::vector<Asked>         asked;
  std::vector<SheetToSettle> to_settle;
  for (const auto &sheet : sheets)
  {
    asked.push_back(asked_of(sheet, question));
    to_settle.push_back({sheet, asked.back().probes, sheets.size() > 1 ? sheet.part : ""});
  }
  const auto               settled = settle_together(to_settle, job, {});
  std::vector<ReadingPlan> plans;
  for (std::size_t i = 0; i < sheets.size(); ++i)
    plans.push_back(ranked(sheets[i], std::move(asked[i]), settled.sheets[i], job));
  return plans;
}
} // namespace solemech::tools
