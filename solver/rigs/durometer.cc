// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/durometer.h"

#include "materials/hardness.h"
#include "solver/contributions/gauge_spring.h"
#include "solver/part_law.h"
#include "solver/recorder.h"
#include "solver/tip_mesh.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
using materials::HardnessScale;

constexpr double cells_of_tip = 3;        // from the axis to the corner of the tip, at mesh level 1
constexpr int    steps_of_travel = 80;    // at step tolerance 1
constexpr double penetration_length = 4;  // over the travel: the tip sinks some micrometres into the surface
constexpr double newton_tolerance = 3e-5; // of the force on the tip
constexpr int    n_iterations = 8;        // a step that needs more is repeated smaller
constexpr int    pictures_of_travel = 60;
constexpr int    other_meshes = 2;        // tried when a run fails

bool relaxes(const materials::Material &material)
{
  return std::visit([](const auto &data) { return !data.relaxing.empty(); }, material.data);
}

/// Force [N] at a depth of the recorded way in; beyond it along the power of its last fifth.
double force_at(const std::vector<double> &way, const std::vector<double> &force, double depth)
{
  std::size_t last = 1;
  while (last + 1 < way.size() && way[last + 1] > way[last])
    ++last;
  for (std::size_t i = 1; i <= last; ++i)
    if (way[i] >= depth)
      return force[i - 1] + (force[i] - force[i - 1]) * (depth - way[i - 1]) / (way[i] - way[i - 1]);
  const std::size_t before = std::min(last - 1, 4 * last / 5);
  if (before == 0)
    return force[last] * depth / way[last];
  const double power = std::log(force[last] / force[before]) / std::log(way[last] / way[before]);
  return force[last] * std::pow(depth / way[last], power);
}

/// What the reading is made of, when one rubber is all there is: its modulus, what the gauge reads on an endless block
/// at small strain, and what a person would take from the reading.
void add_relations(const Case &input, const DurometerRig &rig, double reading, const std::vector<double> &way,
                   const std::vector<double> &force, Result &result)
{
  const auto &layer = input.layers.front();
  if (input.layers.size() > 1 || layer.area_share < 1 || layer.ring || layer.unit ||
      !std::holds_alternative<materials::RubberData>(layer.material.data))
    return;
  const auto add = [&](const char *name, double value, const char *unit, const char *meaning) {
    result.readings.push_back({name, value, unit, meaning, -1});
  };
  const double modulus = equilibrium_modulus(layer.material, input);
  add("youngs_modulus", modulus, "Pa", "Young's modulus of the rubber at rest");
  add("half_space_hardness", materials::half_space_reading(rig.gauge, modulus, 0.5), "points",
      "reading of the same tip on an endless block at small strain (Sneddon)");
  if (rig.gauge.scale == HardnessScale::shore_a && reading >= 20 && reading <= 80)
    add("modulus_gent", materials::modulus_gent(reading), "Pa", "modulus that Gent's relation takes from the reading");
  // Force goes with the modulus when the shape of the law stays.
  if (rig.wanted > 0)
    add("modulus_for_wanted", modulus * rig.gauge.force(rig.wanted) / force_at(way, force, rig.gauge.depth(rig.wanted)),
        "Pa", "Young's modulus at which this rubber would read the wanted hardness");
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
    return other ? fmt::format("read it on {}", other) : std::string("take a modulus from a press instead");
  };
  if (reading < range.lowest)
    return fmt::format("below {:.0f} this scale is not reliable: {}", range.lowest, advice(softer_scale(scale)));
  if (reading > range.highest)
    return fmt::format("above {:.0f} this scale is not reliable: {}", range.highest, advice(harder_scale(scale)));
  return "";
}

namespace
{
Result set_on(const Case &input, const DurometerRig &rig, const Resolution &resolution, int n_cells,
              const RunOptions &options)
{
  const auto  &gauge = rig.gauge;
  StackModel   model(input, rig.tup, 0.0, resolution,
                     {.lines =
                        [&](const geometry::PlugOutline &outline) {
                          return lines_for_tip(outline, gauge.tip, n_cells);
                        },
                      .contact_length = penetration_length * gauge.travel,
                      .sticks = true});
  const int    tup = model.tup_unknown();
  model.equation.contributions.push_back(std::make_unique<GaugeSpring>(gauge, tup));
  TimeIntegrator integrator(model.equation, 1.0);
  integrator.quasi_static = true;
  integrator.along_tangent = true;
  integrator.newton_settings.tolerance = newton_tolerance;
  integrator.newton_settings.n_iterations = n_iterations;
  integrator.force_scale = 0.05 * gauge.force(100);
  Recorder recorder(model, integrator, options.pictures ? rig.set_on_time / pictures_of_travel : 0.0);
  integrator.start();
  recorder.open_ledger(0);
  recorder.record(0, true);

  const auto depth = [&] { return -integrator.x[tup]; };
  const auto reaction = [&] { return model.tup_contact->state(integrator.x).force; };
  const auto stop_early = [&](const std::string &reason) {
    auto partial = recorder.finish();
    partial.complete = false;
    const char *softer = softer_scale(gauge.scale);
    partial.stop_reason = fmt::format("the gauge stopped at {:.2f} mm of its {:.2f} mm: {}. The stack is too soft for this tip{}",
                                      1e3 * depth(), 1e3 * gauge.travel, reason,
                                      softer ? fmt::format("; take {}", softer) : std::string());
    const std::string message = partial.stop_reason;
    throw RunFailed(message, std::move(partial));
  };

  // The tip is let in step by step until the next step would make the stack push harder than the spring, or the travel
  // is used up. Stopped short of balance, the surface is still being loaded when the spring takes over.
  const double regular = gauge.travel / steps_of_travel * resolution.step_tolerance;
  double       way = regular, least = 1e-4 * regular, last_depth = 0, last_force = 0;
  bool         held = false;
  const double speed = gauge.travel / rig.set_on_time;
  while (!held && depth() < gauge.travel * (1 - 1e-9))
  {
    way = std::min(way, gauge.travel - depth());
    integrator.prescribed[0] = -(depth() + way);
    if (const auto outcome = integrator.step(way / speed); !outcome.advanced)
    {
      way *= 0.4;
      if (way < least)
        stop_early(outcome.reason);
      continue;
    }
    recorder.record(integrator.time);
    const double force = reaction(), spring = gauge.force(gauge.reading_at(depth()));
    integrator.force_scale = std::max(integrator.force_scale, force);
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
    integrator.prescribed[0].reset();
    const bool   slow = std::any_of(model.parts.begin(), model.parts.end(),
                                    [](const Part &part) { return relaxes(part.material); });
    const double end = integrator.time + std::max(rig.read_after, 1e-3);
    double       dt = slow ? 0.02 * (end - integrator.time) : end - integrator.time;
    const double shortest = 1e-6 * dt;
    while (integrator.time < end * (1 - 1e-12))
    {
      dt = std::min(dt, end - integrator.time);
      if (const auto outcome = integrator.step(dt); !outcome.advanced)
      {
        dt *= 0.4;
        if (dt < shortest)
          stop_early(outcome.reason);
        continue;
      }
      recorder.record(integrator.time, integrator.time >= end * (1 - 1e-12));
      dt *= 2;
    }
  }

  const double at = std::min(depth(), gauge.travel), reading = std::max(0.0, gauge.reading_at(at));
  const auto   state = model.tup_contact->state(integrator.x);
  const auto   way_in = recorder.curve("tup_displacement"), forces = recorder.curve("force");
  Result       result = recorder.finish();
  result.time_of_peak = result.time.back();
  result.input_energy = 0;
  for (std::size_t i = 1; i < way_in.size(); ++i)
    result.input_energy += 0.5 * (forces[i] + forces[i - 1]) * (way_in[i] - way_in[i - 1]);
  const auto add = [&](const char *name, double value, const char *unit, const char *meaning) {
    result.readings.push_back({name, value, unit, meaning, -1});
  };
  add("hardness", reading, "points", "reading of the gauge at the read-out time");
  add("tip_depth", at, "m", "depth of the tip at the reading");
  add("tip_force", gauge.force(reading), "N", "force of the spring at the reading");
  add("tip_contact_radius", state.radius, "m", "outermost radius that touches the tip at the reading");
  add_relations(input, rig, reading, way_in, forces, result);
  if (!held)
    result.warnings.push_back({"hardness", "the tip went in all the way"});
  if (const auto text = unreliable_reading(gauge.scale, reading); !text.empty())
    result.warnings.push_back({"hardness", text});
  set_ledger_facts(result, std::max(result.input_energy, 1e-12));
  return result;
}
} // namespace

Result run_durometer(const Case &input, const DurometerRig &rig, const Resolution &resolution,
                     const RunOptions &options)
{
  const int n_cells = std::ceil(cells_of_tip * resolution.mesh_level);
  // Now and then a point of the surface just beside the tip's edge cannot make up its mind; other meshes have it
  // elsewhere.
  for (int more = 0; more < other_meshes; ++more)
    try
    {
      return set_on(input, rig, resolution, n_cells + more, options);
    }
    catch (const RunFailed &)
    {
    }
  return set_on(input, rig, resolution, n_cells + other_meshes, options);
}
} // namespace solemech::solver
