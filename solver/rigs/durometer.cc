// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/durometer.h"

#include "materials/hardness.h"
#include "solver/contributions/gauge_spring.h"
#include "solver/mesh/tip_mesh.h"
#include "solver/part_law.h"
#include "solver/results/catalogue.h"
#include "solver/results/stack_recorder.h"
#include "solver/run.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace solemech::solver
{
namespace
{
using materials::HardnessScale;

constexpr double cells_of_tip = 3;        // from the axis to the corner of the tip, at mesh level 1
constexpr int    steps_of_travel = 120;   // at step tolerance 1: the account closes by them
constexpr double penetration_length = 4;  // over the travel: the tip sinks some micrometres into the surface
constexpr double newton_tolerance = 3e-5; // of the force on the tip
constexpr int    n_iterations = 8;        // a step that needs more is repeated smaller
constexpr int    pictures_of_travel = 60;
constexpr double thick_enough = 6e-3; // of a specimen, as ISO 48-4 asks [m]
constexpr std::size_t most_repeats =
  100;                          // of steps; a tip that creeps on by ever smaller ones does not get there
constexpr int other_meshes = 2; // tried when a run fails

bool relaxes(const materials::Material &material)
{
  if (const auto *foam = std::get_if<materials::FoamData>(&material.data); foam && !foam->slipping.empty())
    return true; // they recover
  return std::visit([](const auto &data) { return !data.relaxing.empty(); }, material.data);
}

/// What the reading is made of, when one rubber is all there is: its modulus, what the gauge reads on an
/// endless block at small strain, and what a person would take from the reading.
void add_relations(const Case &input, const DurometerRig &rig, double reading, Result &result)
{
  const auto &layer = input.layers.front();
  if (input.layers.size() > 1 || layer.area_share < 1 || layer.ring || layer.unit ||
      !std::holds_alternative<materials::RubberData>(layer.material.data))
    return;
  const double modulus = equilibrium_modulus(layer.material, input);
  add_reading(result, catalogue.youngs_modulus, modulus, "Young's modulus of the rubber at rest");
  add_reading(result, catalogue.half_space_hardness, materials::half_space_reading(rig.gauge, modulus, 0.5),
              "reading of the same tip without friction on a very thick block at small strain (Sneddon)");
  if (rig.gauge.scale == HardnessScale::shore_a && reading >= 20 && reading <= 80)
    add_reading(result, catalogue.modulus_gent, materials::modulus_gent(reading),
                "modulus from the hardness reading (Gent 1958)");
}

/// Scale to go to when a material is too soft or too hard for this one.
const char *softer_scale(HardnessScale scale)
{
  switch (scale)
  {
  case HardnessScale::shore_d:
    return "Shore A";
  case HardnessScale::shore_a:
    return "Asker C or Shore OO";
  case HardnessScale::asker_c:
    return "Shore OO";
  case HardnessScale::shore_oo:
    break;
  }
  return nullptr;
}
const char *harder_scale(HardnessScale scale)
{
  return scale == HardnessScale::shore_d ? nullptr : scale == HardnessScale::shore_a ? "Shore D" : "Shore A";
}
} // namespace

std::string unreliable_reading(HardnessScale scale, double reading)
{
  const auto range = materials::reliable_readings(scale);
  const auto advice = [](const char *other) {
    return other ? fmt::format("use {}", other) : std::string("take a modulus from a press instead");
  };
  if (reading < range.lowest)
    return fmt::format("below {:.0f} this scale is not reliable: {}", range.lowest,
                       advice(softer_scale(scale)));
  if (reading > range.highest)
    return fmt::format("above {:.0f} this scale is not reliable: {}", range.highest,
                       advice(harder_scale(scale)));
  return "";
}

namespace
{
/// Dry rubber on polished steel has a friction of about 1 (common practice, no source): it sticks.
/// @return none: what the tip has touched does not slide
std::optional<double> friction_of(const Tup &tip)
{
  constexpr double sticking_friction = 0.8;
  const bool       is_given = tip.friction > 0;
  return is_given && tip.friction < sticking_friction ? std::optional(tip.friction) : std::nullopt;
}

/// @param friction  of the tip; none: it sticks
Result set_on(const Case &input, const DurometerRig &rig, std::optional<double> friction,
              const Resolution &resolution, int n_cells, const RunOptions &options)
{
  const auto &gauge = rig.gauge;
  Tup         tip = rig.tup;
  tip.friction = friction.value_or(0.0);
  StackModel model(
    input, tip, 0.0, resolution, 0.0,
    {.lines =
       [&](const geometry::PlugOutline &outline) { return lines_for_tip(outline, gauge.tip, n_cells); },
     .contact_length = penetration_length * gauge.travel,
     .sticks = !friction});
  const int tup = model.tup_unknown();
  model.equation.contribute<GaugeSpring>(gauge, tup);
  TimeIntegrator integrator(model.equation, 1.0);
  integrator.book_parts(resolution.open_parts);
  integrator.x = model.at_rest();
  StepSettings settings{.force_scale = 0.05 * gauge.force(100), .quasi_static = true, .along_tangent = true};
  settings.newton.tolerance = newton_tolerance * resolution.newton_tolerance;
  settings.newton.n_iterations = n_iterations;
  auto recorder =
    stack_recorder(model, integrator, options.pictures ? rig.set_on_time / pictures_of_travel : 0.0);
  integrator.start();
  recorder.open_ledger(0);

  const auto depth = [&] { return -integrator.x[tup]; };
  const auto reaction = [&] { return model.tup_contact->state(integrator.x).force; };
  const auto stop_early = [&](const std::string &reason) {
    auto partial = recorder.finish();
    partial.complete = false;
    const char *softer = softer_scale(gauge.scale);
    partial.stop_reason = fmt::format(
      "the gauge stopped at {:.2f} mm of its {:.2f} mm: {}. The stack is too soft for this tip{}",
      1e3 * depth(), 1e3 * gauge.travel, reason, softer ? fmt::format("; use {}", softer) : std::string());
    if (friction)
      partial.stop_reason += ", or let the tip stick with tip_friction = \"1\"";
    const std::string message = partial.stop_reason;
    throw RunFailed(message, std::move(partial));
  };

  const auto record = [&](bool is_mark) { recorder.look({integrator, integrator.time, is_mark}); };
  record(true);

  // The tip is let in step by step until the next step would make the stack push harder than the spring, or
  // the travel is used up. Stopped short of balance, the surface is still being loaded when the spring takes
  // over.
  const double regular = gauge.travel / steps_of_travel * resolution.step_tolerance;
  double       way = regular, least = 1e-4 * regular, last_depth = 0, last_force = 0;
  bool         held = false;
  const double speed = gauge.travel / rig.set_on_time;
  model.equation.boundary.lead(tup, [speed](double time) { return -speed * time; });
  while (!held && depth() < gauge.travel * (1 - 1e-9))
  {
    way = std::min(way, gauge.travel - depth());
    if (const auto outcome = integrator.step(way / speed, settings); !outcome.advanced)
    {
      way *= 0.4;
      if (way < least || integrator.n_repeated > most_repeats)
        stop_early(outcome.reason);
      continue;
    }
    record(false);
    const double force = reaction(), spring = gauge.force(gauge.reading_at(depth()));
    settings.force_scale = std::max(settings.force_scale, force);
    const double slope = (force - last_force) / (depth() - last_depth);
    way = std::min(1.5 * way, regular);
    held = force + slope * way >= spring - gauge.force_slope * 100 * way / gauge.travel;
    last_depth = depth(), last_force = force;
    if (options.progress && !options.progress(0.9 * depth() / gauge.travel, "the gauge"))
      throw RunStopped();
  }

  // Then the spring holds it: one step to balance, more while the stack relaxes.
  if (held)
  {
    model.equation.boundary.release(tup);
    const bool   slow = std::any_of(model.parts.begin(), model.parts.end(),
                                    [](const Part &part) { return relaxes(part.material); });
    const double end = integrator.time + std::max(rig.read_after, 1e-3);
    const double share = std::min(1.0, resolution.step_tolerance); // shorter, so that the account can close
    double       dt = (slow ? 0.02 * share : 1.0) * (end - integrator.time);
    const double shortest = 1e-6 * dt;
    // An emptying unit may give way until the tip is out of its foot as far as it goes.
    while (integrator.time < end * (1 - 1e-12) && depth() < gauge.travel)
    {
      dt = std::min(dt, end - integrator.time);
      if (const auto outcome = integrator.step(dt, settings); !outcome.advanced)
      {
        dt *= 0.4;
        if (dt < shortest)
          stop_early(outcome.reason);
        continue;
      }
      record(integrator.time >= end * (1 - 1e-12));
      dt *= 1 + share;
    }
    held = depth() < gauge.travel;
  }

  const double at = std::min(depth(), gauge.travel), reading = std::max(0.0, gauge.reading_at(at));
  const auto   state = model.tup_contact->state(integrator.x);
  const auto   way_in = recorder.curve("tup_displacement"), forces = recorder.curve("force");
  Result       result = recorder.finish();
  result.time_of_peak = result.time.back();
  result.input_energy = 0;
  for (std::size_t i = 1; i < way_in.size(); ++i)
    result.input_energy += 0.5 * (forces[i] + forces[i - 1]) * (way_in[i] - way_in[i - 1]);
  add_reading(result, catalogue.hardness, reading, "reading of the gauge at the reading time");
  add_reading(result, catalogue.tip_depth, at, "depth of the tip at the reading");
  add_reading(result, catalogue.tip_force, gauge.force(reading), "force of the spring at the reading");
  add_reading(result, catalogue.tip_contact_radius, state.radius,
              "outermost radius in contact with the tip at the reading");
  add_relations(input, rig, reading, result);
  if (!held)
    result.warnings.push_back({catalogue.hardness, "the tip went in fully"});
  if (const auto text = unreliable_reading(gauge.scale, reading); !text.empty())
    result.warnings.push_back({catalogue.hardness, text});
  if (gauge.scale == HardnessScale::shore_d)
    result.warnings.push_back(
      {catalogue.hardness, "under a needle the strain is never small: this reads some points above the "
                           "relation of Shore D and modulus by Qi, Joyce & Boyce 2003, and was checked at "
                           "small strain only. Compare readings, do not convert them"});
  set_ledger_facts(result, std::max(result.input_energy, 1e-12));
  return result;
}

/// The case with the stiffness of its outermost rubber changed, its law keeping its shape.
Case with_rubber(Case input, double factor)
{
  auto &data = std::get<materials::RubberData>(input.layers.front().material.data);
  data.c10 *= factor, data.c20 *= factor, data.c30 *= factor, data.c01 *= factor;
  return input;
}

/// Finds the modulus of the outermost rubber at which the stack reads what is wanted, by secants on its
/// logarithm, and what the gauge would read on a thick sheet of it.
void add_wanted(const Case &input, const DurometerRig &rig, const Resolution &resolution, int n_cells,
                Result &result)
{
  constexpr double points_per_e_fold = 25, near_enough = 0.05, widest = 1.2; // [points], [points], [ln]
  constexpr int    n_trials = 8;
  const auto      &outermost = input.layers.front();
  if (!std::holds_alternative<materials::RubberData>(outermost.material.data) || outermost.area_share < 1 ||
      outermost.ring || outermost.unit)
  {
    result.warnings.push_back(
      {catalogue.hardness,
       "a modulus for a target reading can only be found for an outermost layer of rubber"});
    return;
  }
  RunOptions quiet;
  quiet.pictures = false;
  const auto reading_of = [&](const Case &other) {
    return set_on(other, rig, friction_of(rig.tup), resolution, n_cells, quiet)
      .find(catalogue.hardness)
      ->value;
  };
  double before = 0, x = 0, wrong_before = 0, wrong = result.find(catalogue.hardness)->value - rig.wanted;
  for (int trial = 0; trial < n_trials && std::abs(wrong) > near_enough; ++trial)
  {
    const double slope =
      trial > 0 && std::abs(x - before) > 1e-9 ? (wrong - wrong_before) / (x - before) : points_per_e_fold;
    before = x, wrong_before = wrong;
    x -= std::clamp(wrong / (slope > 1 ? slope : points_per_e_fold), -widest, widest);
    wrong = reading_of(with_rubber(input, std::exp(x))) - rig.wanted;
  }
  if (std::abs(wrong) > near_enough)
  {
    result.warnings.push_back(
      {catalogue.hardness,
       fmt::format("no modulus of this rubber was found at which the gauge reads {:.1f}", rig.wanted)});
    return;
  }
  Case thick = with_rubber(input, std::exp(x));
  thick.layers.resize(1);
  thick.layers[0].thickness = 2 * thick_enough;
  thick.plug.side = Side::free;
  add_reading(result, catalogue.modulus_for_wanted, equilibrium_modulus(thick.layers[0].material, thick),
              "Young's modulus at rest at which the outermost rubber gives the target reading");
  add_reading(result, catalogue.thick_for_wanted, reading_of(thick),
              "reading on a thick sheet of that rubber, twice the thickness that the standard asks for");
}

Result read_out(const Case &input, const DurometerRig &rig, const Resolution &resolution, int n_cells,
                const RunOptions &options)
{
  Result result = set_on(input, rig, friction_of(rig.tup), resolution, n_cells, options);
  if (rig.wanted > 0)
    add_wanted(input, rig, resolution, n_cells, result);
  return result;
}
} // namespace

Result run_rig(const Case &input, const DurometerRig &rig, const Resolution &resolution,
               const RunOptions &options)
{
  const int n_cells = std::ceil(cells_of_tip * resolution.mesh_level);
  // Now and then a point of the surface just beside the tip's edge cannot make up its mind; other meshes have
  // it elsewhere.
  for (int more = 0;; ++more)
    try
    {
      Result result = read_out(input, rig, resolution, n_cells + more, options);
      result.facts.given_up = static_cast<std::size_t>(more);
      return result;
    }
    catch (const RunFailed &)
    {
      if (more == other_meshes)
        throw;
    }
}
} // namespace solemech::solver
