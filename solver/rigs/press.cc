// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/press.h"

#include "solver/bottoming.h"
#include "solver/contributions/applied_force.h"
#include "solver/fold_watch.h"
#include "solver/results/catalogue.h"
#include "solver/results/metrics.h"
#include "solver/results/stack_recorder.h"
#include "solver/rigs/seating.h"
#include "solver/run.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::solver
{
namespace
{
constexpr int    steps_per_cycle = 120; // at step tolerance 1
constexpr double n_pictures = 40;       // of the last cycle

/// Displacement [m] or force [N] wanted at `t` [s].
double wanted(const PressRig &rig, double t)
{
  if (rig.wave == PressWave::table)
  {
    const auto after = std::upper_bound(rig.table.begin(), rig.table.end(), t,
                                        [](double time, const auto &row) { return time < row.first; });
    if (after == rig.table.begin())
      return rig.table.front().second;
    if (after == rig.table.end())
      return rig.table.back().second;
    const auto &[t1, y1] = *after;
    const auto &[t0, y0] = *(after - 1);
    return y0 + (y1 - y0) * (t - t0) / (t1 - t0);
  }
  const double period = rig.duration + rig.rest;
  const double phase = std::fmod(t, period) / rig.duration;
  if (phase >= 1)
    return 0;
  return rig.peak * (rig.wave == PressWave::half_sine ? std::sin(std::numbers::pi * phase)
                                                      : 1 - std::abs(2 * phase - 1));
}

double run_time(const PressRig &rig)
{
  return rig.wave == PressWave::table ? rig.table.back().first
                                      : rig.cycles * rig.duration + (rig.cycles - 1) * rig.rest;
}
} // namespace

Result run_rig(const Case &input, const PressRig &rig, const Resolution &resolution,
               const RunOptions &options)
{
  const bool by_force = rig.control == PressControl::force;
  double     most = rig.peak;
  for (const auto &row : rig.table)
    most = std::max(most, row.second);
  // Without a force to go by: what a column of the stack under the head would answer.
  const double expected = by_force ? most : column_stiffness(input, rig.tup) * most;
  StackModel   model(input, rig.tup, 0.0, resolution, expected);
  const int    tup = model.tup_unknown();
  auto        &head = model.equation.contribute<AppliedForce>(tup);

  TimeIntegrator integrator(model.equation, 1.0);
  integrator.book_parts(resolution.open_parts);
  integrator.x = model.at_rest();
  const double whole = run_time(rig);
  const double last_start = rig.wave == PressWave::table ? 0.0 : (rig.cycles - 1) * (rig.duration + rig.rest);
  const double least_scale = std::max(0.01 * expected, 1e-3);
  StepSettings settings{.force_scale = least_scale, .quasi_static = true};
  settings.newton.tolerance *= resolution.newton_tolerance;
  // Only the last cycle is recorded: the ones before condition the stack.
  auto recorder =
    stack_recorder(model, integrator, options.pictures ? (whole - last_start) / n_pictures : 0.0);
  FoldWatch  folds(*model.folds);
  CrestWatch crest_of_way(model.layer_thickness, tup);
  model.observers = {&folds};

  integrator.start();
  double dt_regular = std::min(rig.duration, whole) / steps_per_cycle * resolution.step_tolerance;
  if (by_force)
    seat(model, integrator, settings, head, most, dt_regular * 1e-3);
  const double seated = head.force;
  settings.extrapolate = 1;
  const double clock = integrator.time;
  if (!by_force)
    model.equation.boundary.lead(tup, [&](double time) { return -wanted(rig, time - clock); });

  const auto   highest = std::max_element(rig.table.begin(), rig.table.end(),
                                          [](const auto &a, const auto &b) { return a.second < b.second; });
  const double table_crest = highest == rig.table.end() ? 0.0 : highest->first;
  // A leak empties a unit within milliseconds of the start.
  double     dt = dt_regular * (leaks(model.chambers) ? 1e-3 : 0.25), t = 0;
  const auto fail = [&](const std::string &reason, const std::string &cure) {
    auto partial = recorder.finish();
    partial.complete = false;
    partial.stop_reason = fmt::format("the press stopped after {:.1f} ms: {}. {}", 1e3 * t, reason, cure);
    const std::string message = partial.stop_reason;
    throw RunFailed(message, std::move(partial));
  };
  const auto show = [&](double time, bool is_mark) {
    if (const auto objection = model.show({integrator, time, is_mark}))
      fail(objection->reason, objection->cure);
  };
  bool       recording = false;
  const auto begin_record = [&] {
    recording = true;
    recorder.open_ledger(0);
    model.observers = {&folds, &recorder, &crest_of_way};
    show(0, true);
  };
  if (last_start == 0)
    begin_record();
  while (t < whole * (1 - 1e-12))
  {
    if (t < last_start && t + dt > last_start)
      dt = last_start - t;
    // Steps meet the crest of each cycle.
    const double period = rig.duration + rig.rest;
    const double crest =
      rig.wave == PressWave::table ? table_crest : std::floor(t / period) * period + 0.5 * rig.duration;
    if (t < crest - 1e-12 * whole && t + dt > crest)
      dt = crest - t;
    dt = std::min(dt, whole - t);
    if (by_force)
      head.force = std::max(wanted(rig, t + dt), seated);
    const auto outcome = integrator.step(dt, settings);
    if (!outcome.advanced)
    {
      dt *= 0.35;
      if (dt < 1e-6 * dt_regular)
        fail(outcome.reason, "Try a lower peak, or a thicker or firmer stack");
      continue;
    }
    t = integrator.time - clock;
    show(t - last_start, false);
    if (!recording && t >= last_start * (1 - 1e-12))
      begin_record();
    const double force = model.tup_contact->state(integrator.x).force;
    settings.force_scale = std::max(force, least_scale);
    const bool resting = rig.wave != PressWave::table && std::fmod(t, period) >= rig.duration * (1 - 1e-9);
    dt = std::min(dt * 1.5, resting ? std::max(dt_regular, 0.1 * rig.rest) : dt_regular);
    if (options.progress && !options.progress(t / whole, "the press"))
      throw RunStopped();
  }

  const auto way = recorder.curve("tup_displacement"), force = recorder.curve("force");
  const auto areas = loop_areas(way, force);
  // A wave with a kink at its crest has its greatest value there, a smooth one between two steps.
  const double kink = rig.wave == PressWave::table ? table_crest : 0.5 * rig.duration;
  const auto   peak_in = [&](const std::vector<double> &values, bool given) -> Peak {
    const auto   top = std::max_element(values.begin(), values.end()) - values.begin();
    const double at = recorder.time()[top];
    const bool   at_kink = rig.wave != PressWave::half_sine && std::abs(at - kink) < 1e-9 * whole;
    return given || at_kink ? Peak{at, values[top]} : peak_of(recorder.time(), values);
  };
  const Peak crest = peak_in(way, !by_force);
  // What is given is known better than the balance that meets it within its tolerance.
  const double peak = by_force ? rig.peak : peak_in(force, false).value, travel = crest.value - way.front();
  const double pressure = peak_in(recorder.curve("peak_pressure"), false).value;

  Result result = recorder.finish();
  result.input_energy = areas.loading;
  result.time_of_peak = crest.at;
  result.time_of_loss = result.time.back();
  add_reading(result, catalogue.loop_return, areas.returned(),
              "unloading area divided by loading area of force against travel, last cycle");
  add_reading(result, catalogue.loop_energy_in, areas.loading, "work of loading, last cycle");
  add_reading(result, catalogue.loop_energy_lost, areas.loading - areas.unloading,
              "area of the loop, last cycle");
  add_reading(result, catalogue.peak_force, peak, "peak force of the last cycle");
  add_reading(result, catalogue.greatest_compression, crest.value,
              "greatest travel of the head below first touch");
  add_reading(result, catalogue.peak_displacement, crest.value,
              "greatest travel of the head below first touch");
  add_reading(result, catalogue.compression_share, crest.value / model.height,
              "greatest compression divided by the height of the stack");
  add_reading(result, catalogue.secant_stiffness, travel > 0 ? peak / travel : 0.0,
              "peak force divided by the travel of the last cycle");
  add_reading(result, catalogue.peak_pressure, pressure,
              "highest mean contact pressure over a ring 5 mm wide (an eighth of a small striker)");
  add_losses(result);
  add_bottoming(input.layers, model.rest_thickness, crest_of_way.thickness(), result);
  set_ledger_facts(result, std::max(areas.loading, 1e-12));
  return result;
}
} // namespace solemech::solver
