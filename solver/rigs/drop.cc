// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/drop.h"

#include "solver/results/catalogue.h"
#include "solver/results/metrics.h"
#include "solver/rig_parts.h"
#include "solver/rigs/blow.h"
#include "solver/run.h"
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
constexpr double smoothing_share = 0.15; // half window of the smoothed peak over the contact time

/// The stack alone for `duration` [s] between blows: no inertia, steps that grow with the time scales left.
/// @param settings  of the blow before
/// @return why it failed; empty when it did not
std::string rest(StackModel &model, TimeIntegrator &integrator, StepSettings settings, double duration)
{
  settings.quasi_static = true;
  settings.extrapolate = 0;
  const int tup = model.tup_unknown();
  integrator.v.setZero(), integrator.a.setZero();
  model.equation.boundary.hold(tup, 2 * model.height);
  integrator.x[tup] = 2 * model.height;
  integrator.start();
  double left = duration, dt = std::min(1e-4, duration);
  while (left > 0)
  {
    const auto outcome = integrator.step(std::min(dt, left), settings);
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
  model.equation.boundary.release(tup);
  return {};
}
} // namespace

Result run_rig(const Case &input, const DropRig &rig, const Resolution &resolution, const RunOptions &options)
{
  const double weight = rig.mass * input.gravity;
  // Of a spring as stiff as the stack's column at rest, loaded by the whole drop energy.
  const double expected_force =
    weight + std::sqrt(2 * weight * rig.height * column_stiffness(input, rig.tup));
  StackModel model(input, rig.tup, rig.mass, resolution, expected_force);
  if (rig.base_mass > 0)
    model.stand_on_support(rig.base_mass, rig.base_stiffness, rig.base_damping);
  TimeIntegrator integrator(model.equation, spectral_radius);
  integrator.book_parts(resolution.open_parts);
  integrator.x = model.at_rest();
  const double fall_speed = std::sqrt(2 * input.gravity * rig.height * (1 - rig.guide_loss));
  const double guess = 0.3 * model.height * std::numbers::pi / fall_speed;
  const double interval = options.pictures ? guess / pictures_a_blow : 0.0;

  struct Hit
  {
    double rise, rebound, by_speed, by_loop, peak, raw, way, contact, peak_time, touch_speed, speed, pressure;
    std::vector<double> thickness; ///< of the layers at the peak [m]
  };
  std::vector<Hit> recorded;
  Result           result;
  constexpr int    most_hits = 40;
  const int        n_planned = rig.conditioned ? most_hits : rig.hits + rig.discarded;
  int              n_done = 0;
  double           given = 0;
  for (; n_done < n_planned; ++n_done)
  {
    auto recorder = stack_recorder(model, integrator, interval);
    // Every fall starts from the same height over the fresh stack and is longer by the set.
    const double level = n_done > 0 ? std::min(0.0, model.first_touch(integrator.x)) : 0.0;
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
    // Areas under force against way: what the force has done to the weight, by its energy at touch, crest and
    // loss.
    const double touched = 0.5 * rig.mass * touch_speed * touch_speed;
    const double loading = touched + weight * (blow.crest.way() + level);
    const double unloading = returned + weight * (blow.crest.way() + blow.loss.height);
    recorded.push_back({rise, rise / (rig.height - level), returned / touched, unloading / loading,
                        smoothed_peak(t, force, smoothing_share * blow.loss.time), peak_of(t, force).value,
                        blow.crest.way(), blow.loss.time, blow.crest.time(), touch_speed, blow.loss.speed,
                        peak_of(t, recorder.curve("peak_pressure")).value, blow.crest.thickness()});
    recorder.set(rig_part::guide, "friction, down", EnergyKind::dissipated, guide_down);
    result = recorder.finish();
    result.time_of_peak = blow.crest.time();
    result.time_of_loss = blow.loss.time;

    const auto n = recorded.size();
    if (rig.conditioned && n >= 2 && std::abs(recorded[n - 1].rebound - recorded[n - 2].rebound) < 0.002)
    {
      ++n_done;
      break;
    }
    if (n_done + 1 < n_planned)
      if (const auto reason = rest(model, integrator, blow.settings, rig.rest); !reason.empty())
      {
        result.complete = false;
        result.stop_reason = fmt::format(
          "the stack does not come to rest after hit {}: {}. The last hit is kept. Try a single hit",
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
  const double rebound = mean(&Hit::rebound), peak = mean(&Hit::peak), way = mean(&Hit::way);
  add_reading(result, catalogue.rebound_by_height, rebound,
              "rise above the level of first touch divided by the drop height to it");
  add_reading(result, catalogue.rebound_height, mean(&Hit::rise), "rise above the level of first touch");
  add_reading(result, catalogue.return_by_speed, mean(&Hit::by_speed),
              "speed at contact loss squared divided by speed at first touch squared");
  add_reading(result, catalogue.return_by_loop, mean(&Hit::by_loop),
              "unloading area divided by loading area of force against travel");
  add_reading(result, catalogue.peak_force, peak,
              "peak force, smoothed over 15 % of the contact time on both sides");
  add_reading(result, catalogue.peak_force_raw, mean(&Hit::raw), "peak force, stress waves included");
  add_reading(result, catalogue.peak_deceleration, peak / weight - 1,
              "peak upward acceleration of the drop weight in g: F/(m g) - 1");
  add_reading(result, catalogue.peak_force_over_weight, peak / weight,
              "F/(m g), what a sensor zeroed in free fall reads");
  add_reading(result, catalogue.greatest_compression, way,
              "greatest travel of the drop weight below first touch of the fresh stack");
  add_reading(result, catalogue.compression_share, way / model.height,
              "greatest compression divided by the height of the stack");
  add_reading(result, catalogue.contact_time, mean(&Hit::contact), "first touch to contact loss");
  add_reading(result, catalogue.time_of_peak, mean(&Hit::peak_time), "first touch to greatest compression");
  add_reading(result, catalogue.peak_pressure, mean(&Hit::pressure),
              "highest mean contact pressure over a ring 5 mm wide (an eighth of a small striker)");
  add_reading(result, catalogue.impact_speed, mean(&Hit::touch_speed), "speed at first touch");
  add_reading(result, catalogue.rebound_speed, mean(&Hit::speed), "speed at contact loss");
  if (recorded.size() > 1)
    for (std::size_t i = 0; i < recorded.size(); ++i)
      add_reading(result, catalogue.rebound_of_hit, std::to_string(i + 1), recorded[i].rebound,
                  "rebound of this hit above its own level of first touch");

  double left = 0;
  for (const auto &row : result.ledger)
    if (row.part != rig_part::support &&
        (row.type == EnergyKind::stored || (row.type == EnergyKind::kinetic && row.part == rig_part::stack)))
      left += row.values.back();
  const double last_speed = recorded.back().speed;
  add_reading(result, catalogue.guide_loss_up, rig.guide_loss * 0.5 * rig.mass * last_speed * last_speed,
              "taken by the guide on the way up, after contact loss (last hit)");
  add_reading(result, catalogue.left_in_stack, left, "stored and moving in the stack at contact loss");
  add_losses(result);
  std::vector<double> thickness(model.input.layers.size(), 0.0);
  for (auto hit = recorded.end() - n_counted; hit != recorded.end(); ++hit)
    for (std::size_t i = 0; i < thickness.size(); ++i)
      thickness[i] += hit->thickness[i] / n_counted;
  add_bottoming(input.layers, model.rest_thickness, thickness, result);
  add_validity(model, rig, result);

  set_ledger_facts(result, given);
  return result;
}
} // namespace solemech::solver
