// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/blow.h"

#include "solver/time/step_control.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::solver
{
namespace
{
// Iterations start with half the motion of the last step: with all of it the contact chatters, with none they
// take longer.
constexpr double extrapolated_share = 0.5;
constexpr double step_numerical_share =
  5e-5;                                // energy that a step may lose to the scheme, over the drop energy
constexpr double careful_force = 0.08; // below this share of the peak force steps are short, to find the loss
constexpr double careful_share = 1.0 / 270;
} // namespace

void Blow::fail(const std::string &reason, double t, const std::string &cure)
{
  auto partial = recorder_.finish();
  partial.complete = false;
  partial.stop_reason = fmt::format("stopped {:.2f} ms after first touch at {:.2f} mm of compression: {}. "
                                    "What was computed until then is kept. {}",
                                    1e3 * t, -1e3 * integrator_.x[model_.tup_unknown()], reason, cure);
  const std::string message = partial.stop_reason;
  throw RunFailed(message, std::move(partial));
}

void Blow::show(bool is_mark)
{
  const double t = integrator_.time - start_time_;
  if (const auto objection = model_.show({integrator_, t, is_mark}))
    fail(objection->reason, t, objection->cure);
}

void Blow::run(double touch_level, double touch_speed, double share_before, double share_of_run)
{
  const int    tup = model_.tup_unknown();
  const double weight = rig_.mass * model_.input.gravity;
  const double drop_energy = weight * rig_.height,
               numerical_share = step_numerical_share * resolution_.step_tolerance;
  start_time_ = integrator_.time;
  integrator_.v.setZero(), integrator_.a.setZero();
  integrator_.x[tup] = touch_level;
  integrator_.v[tup] = -touch_speed;
  integrator_.a[tup] = -model_.input.gravity;
  integrator_.start();
  show(true);

  double       contact_time = 0.3 * model_.height * std::numbers::pi / touch_speed;
  const double expected_force = rig_.mass * touch_speed * std::numbers::pi / contact_time;
  StepControl  control(resolution_.step_tolerance, contact_time, touch_speed);
  settings.extrapolate = extrapolated_share;
  double      force = 0, last_force = 0, last_time = 0, raw_peak = 0;
  bool        touched = false;
  std::string first_failure;
  for (;;)
  {
    settings.force_scale = std::max(force, 0.02 * expected_force);
    const double before = integrator_.time, speed_before = integrator_.v[tup],
                 way_before = integrator_.x[tup];
    const double numerical_before = integrator_.numerical_energy();
    const auto   outcome = integrator_.step(control.step(), settings);
    if (!outcome.advanced)
    {
      // The first failure tells why; what ever smaller steps die of is another matter.
      if (first_failure.empty())
        first_failure = outcome.reason;
      if (!control.cut())
        fail(first_failure, before - start_time_);
      continue;
    }
    first_failure.clear();
    const double t = integrator_.time - start_time_, dt = integrator_.time - before;
    const double way = -integrator_.x[tup], new_force = model_.tup_contact->state(integrator_.x).force;
    touched = touched || new_force > 0;
    const bool is_over = touched && new_force <= 0 && integrator_.v[tup] > 0;
    show(is_over);
    if (is_over)
    {
      // Force zero by extrapolation of the last two points of contact, within the step that lost it.
      const double slope = (last_force - force) / std::max(before - start_time_ - last_time, 1e-30);
      const double wait = slope > 0 ? std::min(force / slope, dt) : 0.0;
      loss.time = before - start_time_ + wait;
      loss.speed = speed_before + (0.5 * force / rig_.mass - model_.input.gravity) * wait;
      loss.height = way_before + 0.5 * (speed_before + loss.speed) * wait;
      recorder_.end_at(loss.time);
      return;
    }
    raw_peak = std::max(raw_peak, new_force);
    last_force = force, last_time = before - start_time_, force = new_force;

    if (force > 0.02 * raw_peak && way > 0.02 * model_.height && integrator_.v[tup] < 0)
    {
      contact_time = std::numbers::pi * std::sqrt(rig_.mass * way / std::max(force - weight, 0.1 * force));
      recorder_.space_pictures(contact_time / pictures_a_blow);
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
} // namespace solemech::solver
