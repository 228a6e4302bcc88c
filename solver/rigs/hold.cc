// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/hold.h"

#include "materials/temperature.h"
#include "solver/contributions/applied_force.h"
#include "solver/fold_watch.h"
#include "solver/layer_parts.h"
#include "solver/results/catalogue.h"
#include "solver/results/metrics.h"
#include "solver/results/stack_recorder.h"
#include "solver/rigs/seating.h"
#include "solver/run.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <limits>

namespace solemech::solver
{
namespace
{
constexpr double ramp_steps = 60; // at step tolerance 1
constexpr double growth = 0.15;   // of a step, over the time since the load last changed, at step tolerance 1
constexpr double lift = 0.02;     // of the height, that the face is off the stack while this rests
constexpr int    steps_per_picture = 6;
constexpr double told_times = 10; // relaxation times after which a branch has no more to tell: exp(-10)

/// Slowest time within which a material gives way or comes back [s]; 0: it does neither.
double slowest_time(const materials::Material &material, double temperature)
{
  const double shift = materials::time_shift(material.thermal, temperature);
  return std::visit(
    [&](const auto &data) {
      double slowest = 0;
      for (const auto &branch : data.relaxing)
        slowest = std::max(slowest, shift * branch.relaxation_time);
      if constexpr (requires { data.slipping; })
        if (!data.slipping.empty())
          slowest = std::max(slowest, data.recovery_time);
      return slowest;
    },
    material.data);
}

/// What a material has no branch for cannot show: says so, layer by layer.
void warn_of_missing_branches(const Case &input, const HoldRig &rig, Result &result)
{
  std::vector<std::string> quick;
  const auto               look = [&](const std::string &part, const materials::Material &material) {
    const double slowest = slowest_time(material, input.temperature);
    if (!std::holds_alternative<materials::PlateData>(material.data) && told_times * slowest < rig.duration)
      quick.push_back(slowest > 0 ? fmt::format("{} (slowest branch {:.3g} s)", part, slowest)
                                                : fmt::format("{} (no branch at all)", part));
  };
  for (const auto &layer : input.layers)
  {
    look(layer.name, layer.material);
    if (layer.ring)
      look(ring_part(layer.name), *layer.ring);
  }
  if (quick.empty())
    return;
  const auto text = fmt::format("outside the range of the material data: the hold is longer than the slowest "
                                "branch of {}. There the model neither creeps on nor keeps a set, but a real "
                                "material does both. Give it slower branches from a long test",
                                fmt::join(quick, ", "));
  for (const ReadingKind *kind : {&catalogue.compression_set, &catalogue.force_left, &catalogue.creep})
    if (result.find(*kind))
      result.warnings.push_back({*kind, text});
}

/// Sets the load at the end of a step, for the share of the phase that is over by then.
using Lead = std::function<void(double share)>;

/// The stack under the face, phase by phase.
class LongHold
{
public:
  LongHold(const Case &input, const HoldRig &rig, const Resolution &resolution, const RunOptions &options)
    : rig_(rig), options_(options), tolerance_(resolution.step_tolerance),
      expected_(rig.is_under_load()
                  ? rig.load
                  : column_stiffness(input, rig.tup) * rig.squeeze * stack_height(input.layers)),
      model_(input, rig.tup, 0.0, resolution, expected_), integrator_(prepared()),
      recorder_(
        stack_recorder(model_, integrator_, options.pictures ? std::numeric_limits<double>::max() : 0.0)),
      folds_(*model_.folds)
  {
    integrator_.book_parts(resolution.open_parts);
    settings_.newton.tolerance *= resolution.newton_tolerance;
    settings_.quasi_static = true;
    settings_.force_scale = least_scale();
    integrator_.x = model_.at_rest();
    integrator_.start();
    model_.observers = {&folds_, &recorder_};
  }

  Result run()
  {
    const double squeezed = rig_.squeeze * model_.height;
    if (rig_.is_under_load())
      seat(model_, integrator_, settings_, *load_, rig_.load, 1e-3 * rig_.ramp / ramp_steps);
    settings_.extrapolate = 1;
    recorder_.open_ledger(0);
    show(true);
    const double seated = load_->force;
    if (!rig_.is_under_load())
      lead_to(-squeezed);
    pass(rig_.ramp, 0, [&](double share) {
      if (rig_.is_under_load())
        load_->force = seated + share * (rig_.load - seated);
    });
    const double first_force = force(), first_way = way();
    pass(rig_.duration, growth, [](double) {});
    const double last_force = force(), last_way = way();
    load_->force = 0;
    lead_to(lift * model_.height);
    pass(rig_.ramp, 0, [](double) {});
    pass(rig_.rest, growth, [](double) {});
    return finished(first_force, first_way, last_force, last_way);
  }

private:
  const HoldRig    &rig_;
  const RunOptions &options_;
  double            tolerance_, expected_;
  StackModel        model_;
  AppliedForce     *load_ = nullptr;
  TimeIntegrator    integrator_;
  StepSettings      settings_;
  Recorder          recorder_;
  FoldWatch         folds_;
  double            time_ = 0; // since first touch [s]
  int               n_phases_ = 0, n_steps_ = 0;

  double force() const { return model_.tup_contact->state(integrator_.x).force; }
  double way() const { return -integrator_.x[model_.tup_unknown()]; }
  double least_scale() const { return std::max(0.01 * expected_, 1e-3); }

  TimeIntegrator prepared()
  {
    load_ = &model_.equation.contribute<AppliedForce>(model_.tup_unknown());
    return TimeIntegrator(model_.equation, 1.0);
  }

  /// The step that was accepted last.
  void show(bool is_mark)
  {
    if (const auto objection = model_.show({integrator_, time_, is_mark}))
      fail(objection->reason, objection->cure);
  }

  [[noreturn]] void fail(const std::string &reason, const std::string &cure)
  {
    auto partial = recorder_.finish();
    partial.complete = false;
    partial.stop_reason = fmt::format("the hold stopped after {:.3g} s: {}. {}", time_, reason, cure);
    const std::string message = partial.stop_reason;
    throw RunFailed(message, std::move(partial));
  }

  /// Leads the face from where it is to a level [m] while the load changes, and holds it there.
  void lead_to(double level)
  {
    model_.equation.boundary.lead(
      model_.tup_unknown(), [level, from = -way(), begin = integrator_.time, ramp = rig_.ramp](double time) {
        return from + std::min(1.0, (time - begin) / ramp) * (level - from);
      });
  }

  /// One phase. Its steps are a part of the ramp, and where the load stands they grow.
  /// @param grows  step over the time since the phase began, at step tolerance 1; 0: steps stay as they are
  void pass(double length, double grows, const Lead &lead)
  {
    constexpr int    n_phases = 4;
    constexpr double shortest = 1e-6; // of the regular step
    const double     regular = rig_.ramp / ramp_steps * tolerance_;
    const double     begin = time_;
    // A leak empties a unit within milliseconds of the start.
    double dt = (leaks(model_.chambers) ? 1e-3 : 0.25) * regular;
    for (double t = 0; t < length * (1 - 1e-12);)
    {
      dt = std::min(dt, length - t);
      lead((t + dt) / length);
      const auto outcome = integrator_.step(dt, settings_);
      if (!outcome.advanced)
      {
        dt *= 0.35;
        if (dt < shortest * regular)
          fail(outcome.reason, "Try a smaller squeeze or load, or a thicker or firmer stack");
        continue;
      }
      t += dt;
      time_ = begin + t;
      show(++n_steps_ % steps_per_picture == 0);
      settings_.force_scale = std::max(force(), least_scale());
      dt = std::min(1.5 * dt, std::max(regular, grows * tolerance_ * t));
      const double share = std::log1p(t / regular) / std::log1p(length / regular);
      if (options_.progress && !options_.progress((n_phases_ + share) / n_phases, "the hold"))
        throw RunStopped();
    }
    ++n_phases_;
  }

  Result finished(double first_force, double first_way, double last_force, double last_way)
  {
    const double height = model_.height, set = -model_.first_touch(integrator_.x);
    const double peak = rig_.is_under_load() ? rig_.load : first_force;
    const double squeezed = rig_.is_under_load() ? last_way : rig_.squeeze * height;
    const auto   areas = loop_areas(recorder_.curve("tup_displacement"), recorder_.curve("force"));
    Result       result = recorder_.finish();
    result.input_energy = areas.loading;
    result.time_of_peak = rig_.is_under_load() ? rig_.ramp + rig_.duration : rig_.ramp;
    result.time_of_loss = result.time.back();
    add_reading(result, catalogue.compression_set, set / squeezed,
                "height lost after the rest divided by the greatest squeeze of the hold");
    add_reading(result, catalogue.height_set, set / height,
                "height lost after the rest divided by the height before");
    add_reading(result, catalogue.set_left, set,
                "height lost after the rest, found by the face that held it");
    if (rig_.is_under_load())
    {
      add_reading(result, catalogue.creep, last_way - first_way, "compression gained during the hold");
      add_reading(result, catalogue.creep_share, (last_way - first_way) / height,
                  "compression gained during the hold divided by the height of the stack");
    }
    else
    {
      add_reading(result, catalogue.force_left, last_force / first_force,
                  "force at the end of the hold divided by that at its beginning");
      add_reading(result, catalogue.force_at_end, last_force, "force at the end of the hold");
    }
    add_reading(result, catalogue.loop_return, areas.returned(),
                "energy that the face gets back while it lifts off, divided by the energy it put in");
    add_reading(result, catalogue.peak_force, peak, "greatest force");
    add_reading(result, catalogue.greatest_compression, squeezed,
                "greatest travel of the face below first touch");
    add_reading(result, catalogue.compression_share, squeezed / height,
                "greatest compression divided by the height of the stack");
    add_losses(result);
    warn_of_missing_branches(model_.input, rig_, result);
    set_ledger_facts(result, std::max(areas.loading, 1e-12));
    return result;
  }
};
} // namespace

Result run_rig(const Case &input, const HoldRig &rig, const Resolution &resolution, const RunOptions &options)
{
  return LongHold(input, rig, resolution, options).run();
}
} // namespace solemech::solver
