// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/drop.h"

#include "solver/bottoming.h"
#include "solver/free_faces.h"
#include "solver/metrics.h"
#include "solver/recorder.h"
#include "solver/step_control.h"
#include "solver/validity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::solver
{
namespace
{
constexpr double spectral_radius = 0.5;  // waves of the mesh die within a few steps, the blow does not notice
// Iterations start with half the motion of the last step: with all of it the contact chatters, with none they take longer.
constexpr double extrapolated_share = 0.5;
constexpr double smoothing_share = 0.15; // half window of the smoothed peak over the contact time
constexpr double step_numerical_share = 5e-5; // energy that a step may lose to the scheme, over the drop energy
constexpr double n_pictures = 70; // of a blow; no more than it takes steps
constexpr double careful_force = 0.08;   // below this share of the peak force steps are short, to find the loss
constexpr double careful_share = 1.0 / 270;

/// State of the weight when the force has come down to zero, interpolated.
struct ContactLoss
{
  double time = 0, speed = 0, height = 0; ///< [s], upwards [m/s], over the touch level [m]
};

/// One blow: from first touch to contact loss.
class Blow
{
public:
  Blow(const StackModel &model, const DropRig &rig, TimeIntegrator &integrator, Recorder &recorder,
       const Resolution &resolution, const RunOptions &options)
    : model_(model), rig_(rig), integrator_(integrator), recorder_(recorder), resolution_(resolution),
      options_(options), free_faces_(*model.mesh, *model.tup_contact)
  {}

  /// From the drop weight at `touch_level` [m, fresh stack: 0] falling at `touch_speed` [m/s].
  void run(double touch_level, double touch_speed, double share_before, double share_of_run);

  ContactLoss         loss;
  double              raw_peak = 0, greatest_way = 0, time_of_peak = 0, start_time = 0;
  std::vector<double> axis_thickness_at_peak;

private:
  const StackModel &model_;
  const DropRig    &rig_;
  TimeIntegrator   &integrator_;
  Recorder         &recorder_;
  const Resolution &resolution_;
  const RunOptions &options_;
  const FreeFaces   free_faces_;

  [[noreturn]] void fail(const std::string &reason, double t,
                         const std::string &cure = "Try less drop energy, a thicker or firmer stack, or accuracy = \"2 %\"");
};

void Blow::fail(const std::string &reason, double t, const std::string &cure)
{
  auto partial = recorder_.finish();
  partial.complete = false;
  partial.stop_reason =
    fmt::format("stopped {:.2f} ms after first touch at {:.2f} mm of compression: {}. What was computed up to there "
                "is kept. {}",
                1e3 * t, -1e3 * integrator_.x[model_.tup_unknown()], reason, cure);
  const std::string message = partial.stop_reason;
  throw RunFailed(message, std::move(partial));
}

void Blow::run(double touch_level, double touch_speed, double share_before, double share_of_run)
{
  const int    tup = model_.tup_unknown();
  const double weight = rig_.mass * model_.input.gravity;
  const double drop_energy = weight * rig_.height, numerical_share = step_numerical_share * resolution_.step_tolerance;
  start_time = integrator_.time;
  integrator_.v.setZero(), integrator_.a.setZero();
  integrator_.x[tup] = touch_level;
  integrator_.v[tup] = -touch_speed;
  integrator_.a[tup] = -model_.input.gravity;
  integrator_.quasi_static = false;
  integrator_.extrapolate = extrapolated_share;
  integrator_.prescribed[0].reset();
  integrator_.start();
  recorder_.record(0, true);

  double      contact_time = 0.3 * model_.height * std::numbers::pi / touch_speed;
  const double expected_force = rig_.mass * touch_speed * std::numbers::pi / contact_time;
  StepControl control(resolution_.step_tolerance, contact_time, touch_speed);
  double      force = 0, last_force = 0, last_time = 0;
  bool        touched = false;
  std::string first_failure;
  for (;;)
  {
    integrator_.force_scale = std::max(force, 0.02 * expected_force);
    const double before = integrator_.time, speed_before = integrator_.v[tup], way_before = integrator_.x[tup];
    const double numerical_before = integrator_.numerical_energy();
    const auto   outcome = integrator_.step(control.step());
    if (!outcome.advanced)
    {
      // The first failure tells why; what ever smaller steps die of is another matter.
      if (first_failure.empty())
        first_failure = outcome.reason;
      if (!control.cut())
        fail(first_failure, before - start_time);
      continue;
    }
    first_failure.clear();
    const double t = integrator_.time - start_time, dt = integrator_.time - before;
    const double way = -integrator_.x[tup], new_force = model_.tup_contact->state(integrator_.x).force;
    if (const auto met = free_faces_.meeting(integrator_.x))
      fail(met->where, t, cure_of_meeting_faces);
    touched = touched || new_force > 0;
    if (touched && new_force <= 0 && integrator_.v[tup] > 0)
    {
      // Force zero by extrapolation of the last two points of contact, within the step that lost it.
      const double slope = (last_force - force) / std::max(before - start_time - last_time, 1e-30);
      const double wait = slope > 0 ? std::min(force / slope, dt) : 0.0;
      loss.time = before - start_time + wait;
      loss.speed = speed_before + (0.5 * force / rig_.mass - model_.input.gravity) * wait;
      loss.height = way_before + 0.5 * (speed_before + loss.speed) * wait;
      recorder_.record(t, true);
      return;
    }
    if (way > greatest_way)
    {
      greatest_way = way, time_of_peak = t;
      axis_thickness_at_peak = model_.axis_thickness(integrator_.x);
    }
    raw_peak = std::max(raw_peak, new_force);
    recorder_.record(t);
    last_force = force, last_time = before - start_time, force = new_force;

    if (force > 0.02 * raw_peak && way > 0.02 * model_.height && integrator_.v[tup] < 0)
    {
      contact_time = std::numbers::pi * std::sqrt(rig_.mass * way / std::max(force - weight, 0.1 * force));
      recorder_.space_pictures(contact_time / n_pictures);
    }
    control.advanced(dt, integrator_.a[tup], contact_time);
    // Loose films between two gas cushions flutter; the tup does not notice, but the energy account does.
    const double lost = std::abs(integrator_.numerical_energy() - numerical_before) / drop_energy;
    if (lost > numerical_share)
      control.limit(dt * std::max(0.3, std::sqrt(numerical_share / lost)));
    if (integrator_.v[tup] > 0 && force < careful_force * raw_peak)
      control.limit(resolution_.step_tolerance * careful_share * t);
    if (t > 60 * contact_time + 1)
      fail("the drop weight does not leave the stack", t);
    if (options_.progress)
    {
      const double done = integrator_.v[tup] < 0 ? 0.5 * (1 + integrator_.v[tup] / touch_speed)
                                                 : 0.5 + 0.5 * (1 - std::min(1.0, force / raw_peak));
      if (!options_.progress(share_before + share_of_run * done, "the blow"))
        throw RunStopped();
    }
  }
}

/// Level of the drop weight when it first touches the stack as it lies, over that of the fresh stack: less the set
/// that earlier blows have left [m].
double touch_level(const StackModel &model, Vector x)
{
  const auto touches = [&](double level) {
    x[model.tup_unknown()] = level;
    return model.tup_contact->state(x).deepest > 0;
  };
  double above = 0, below = -0.5 * model.height;
  if (touches(above))
    return above;
  constexpr int n_halvings = 40;
  for (int i = 0; i < n_halvings; ++i)
  {
    const double middle = 0.5 * (above + below);
    (touches(middle) ? below : above) = middle;
  }
  return above;
}

/// The stack alone for `duration` [s] between blows: no inertia, steps that grow with the time scales left.
/// @return why it failed; empty when it did not
std::string rest(const StackModel &model, TimeIntegrator &integrator, double duration)
{
  const int tup = model.tup_unknown();
  integrator.quasi_static = true;
  integrator.extrapolate = 0;
  integrator.v.setZero(), integrator.a.setZero();
  integrator.prescribed[0] = 2 * model.height;
  integrator.x[tup] = 2 * model.height;
  integrator.start();
  double left = duration, dt = std::min(1e-4, duration);
  while (left > 0)
  {
    const auto outcome = integrator.step(std::min(dt, left));
    if (!outcome.advanced)
    {
      dt *= 0.3;
      if (dt < 1e-9)
        return outcome.reason;
      continue;
    }
    left -= std::min(dt, left);
    dt *= 1.25;
  }
  integrator.prescribed[0].reset();
  return {};
}
} // namespace

Result run_drop(const Case &input, const DropRig &rig, const Resolution &resolution, const RunOptions &options)
{
  StackModel     model(input, rig.tup, rig.mass, resolution);
  if (rig.base_mass > 0)
    model.stand_on_support(rig.base_mass, rig.base_stiffness, rig.base_damping);
  TimeIntegrator integrator(model.equation, spectral_radius);
  const double   fall_speed = std::sqrt(2 * input.gravity * rig.height * (1 - rig.guide_loss));
  const double   guess = 0.3 * model.height * std::numbers::pi / fall_speed;
  const double   interval = options.pictures ? guess / n_pictures : 0.0;
  const double   weight = rig.mass * input.gravity;

  struct Hit
  {
    double rise, rebound, by_speed, by_loop, peak, raw, way, contact, peak_time, touch_speed, speed, pressure;
  };
  std::vector<Hit>          recorded;
  Result                    result;
  std::vector<double>       thickness;
  constexpr int             most_hits = 40;
  const int n_planned = rig.conditioned ? most_hits : rig.hits + rig.discarded;
  int       n_done = 0;
  double    given = 0;
  for (; n_done < n_planned; ++n_done)
  {
    Recorder recorder(model, integrator, interval);
    // Every fall starts from the same height over the fresh stack and is longer by the set.
    const double level = n_done > 0 ? touch_level(model, integrator.x) : 0.0;
    const double touch_speed = std::sqrt(fall_speed * fall_speed - 2 * input.gravity * level);
    given = weight * (rig.height - level);
    integrator.x[model.tup_unknown()] = level;
    integrator.start();
    recorder.open_ledger(given);
    Blow blow(model, rig, integrator, recorder, resolution, options);
    blow.run(level, touch_speed, static_cast<double>(n_done) / n_planned, 1.0 / n_planned);

    const double returned = 0.5 * rig.mass * blow.loss.speed * blow.loss.speed;
    const double guide_up = rig.guide_loss * returned, guide_down = rig.guide_loss * weight * rig.height;
    const double rise = (returned - guide_up) / weight + blow.loss.height - level;
    const auto  &t = recorder.time();
    const auto  &force = recorder.curve("force");
    const auto   loop = loop_areas(recorder.curve("tup_displacement"), force);
    recorded.push_back({rise, rise / (rig.height - level),
                        returned / (0.5 * rig.mass * touch_speed * touch_speed), loop.returned(),
                        smoothed_peak(t, force, smoothing_share * blow.loss.time), blow.raw_peak, blow.greatest_way,
                        blow.loss.time, blow.time_of_peak, touch_speed, blow.loss.speed,
                        *std::max_element(recorder.curve("peak_pressure").begin(),
                                          recorder.curve("peak_pressure").end())});
    thickness = blow.axis_thickness_at_peak;
    recorder.set("guide", "friction, down", EnergyKind::dissipated, guide_down);
    result = recorder.finish();
    result.time_of_peak = blow.time_of_peak;
    result.time_of_loss = blow.loss.time;

    const auto n = recorded.size();
    if (rig.conditioned && n >= 2 && std::abs(recorded[n - 1].rebound - recorded[n - 2].rebound) < 0.002)
    {
      ++n_done;
      break;
    }
    if (n_done + 1 < n_planned)
      if (const auto reason = rest(model, integrator, rig.rest); !reason.empty())
      {
        result.complete = false;
        result.stop_reason = fmt::format("the stack does not come to rest after blow {}: {}. The last blow is kept. Try "
                                         "a single blow or accuracy = \"2 %\"",
                                         n_done + 1, reason);
        const std::string message = result.stop_reason;
        throw RunFailed(message, std::move(result));
      }
  }

  const auto n_counted = rig.conditioned ? 1 : rig.hits;
  const auto mean = [&](double Hit::*member) {
    double sum = 0;
    for (auto hit = recorded.end() - n_counted; hit != recorded.end(); ++hit)
      sum += (*hit).*member;
    return sum / n_counted;
  };
  const auto add = [&](const char *name, double value, const char *unit, const char *meaning) {
    result.readings.push_back({name, value, unit, meaning, -1});
  };
  const double rebound = mean(&Hit::rebound), peak = mean(&Hit::peak), way = mean(&Hit::way);
  add("rebound_by_height", rebound, "1", "rise above the level of first touch over the drop height to it");
  add("rebound_height", mean(&Hit::rise), "m", "rise above the level of first touch");
  add("return_by_speed", mean(&Hit::by_speed), "1", "squared speed at contact loss over squared speed at touch");
  add("return_by_loop", mean(&Hit::by_loop), "1", "unloading over loading area of force against way");
  add("peak_force", peak, "N", "greatest force, smoothed over 15 % of the contact time each way");
  add("peak_force_raw", mean(&Hit::raw), "N", "greatest force, stress waves included");
  add("peak_deceleration", peak / weight - 1, "1", "greatest upward acceleration of the drop weight over g: F/(m g) - 1");
  add("peak_force_over_weight", peak / weight, "1", "F/(m g), what a sensor zeroed in free fall reads");
  add("greatest_compression", way, "m", "greatest way of the drop weight below first touch of the fresh stack");
  add("compression_share", way / model.height, "1", "greatest compression over the height of the stack");
  add("contact_time", mean(&Hit::contact), "s", "first touch to contact loss");
  add("time_of_peak", mean(&Hit::peak_time), "s", "first touch to greatest compression");
  add("peak_pressure", mean(&Hit::pressure), "Pa", "greatest mean contact pressure over a ring 5 mm wide (an eighth of a small striker)");
  add("impact_speed", mean(&Hit::touch_speed), "m/s", "speed at first touch");
  add("rebound_speed", mean(&Hit::speed), "m/s", "speed at contact loss");
  if (recorded.size() > 1)
    for (std::size_t i = 0; i < recorded.size(); ++i)
      result.readings.push_back({fmt::format("rebound_by_height.hit_{}", i + 1), recorded[i].rebound, "1",
                                 "rebound of this hit over its own level of first touch", -1});

  double left = 0;
  for (const auto &row : result.ledger)
    if ((row.type == EnergyKind::stored) || (row.type == EnergyKind::kinetic && row.part == "stack"))
      left += row.values.back();
  const double last_speed = recorded.back().speed;
  add("guide_loss_up", rig.guide_loss * 0.5 * rig.mass * last_speed * last_speed, "J",
      "taken by the guide on the way up, after contact loss (last hit)");
  add("left_in_stack", left, "J", "stored and moving in the stack at contact loss");
  add_bottoming(model, thickness, result);
  add_validity(model, rig, result);

  set_ledger_facts(result, given);
  return result;
}
} // namespace solemech::solver
