// SPDX-License-Identifier: Apache-2.0
#include "solver/results/stack_recorder.h"

#include "solver/rig_parts.h"

namespace solemech::solver
{
namespace
{
/// What a striker does and feels.
class StrikerProbe : public Probe
{
public:
  StrikerProbe(const Contact &contact, int height, double weight)
    : contact_(contact), height_(height), weight_(weight)
  {
  }

  void read(const TimeIntegrator &now, Curves &curves) const override
  {
    const auto felt = contact_.state(now.x);
    curves.push_felt("force", "N", "force of the stack on the striker, upwards", felt.force);
    curves.push("tup_displacement", "m", "travel of the striker below its level at first touch",
                -now.x[height_]);
    curves.push("tup_velocity", "m/s", "speed of the striker, upwards positive", now.v[height_]);
    if (weight_ > 0)
      curves.push_felt("deceleration", "1", "upward acceleration of the drop weight over g: F/(m g) - 1",
                       felt.force / weight_ - 1);
    curves.push_felt("contact_radius", "m", "outermost radius in contact with the striker", felt.radius);
    curves.push_felt("peak_pressure", "Pa",
                     "highest mean contact pressure over a ring 5 mm wide (an eighth of a small striker)",
                     felt.peak_pressure);
    curves.push_felt("penetration", "m", "greatest penetration of the striker into the surface (numerical)",
                     felt.deepest);
  }

private:
  const Contact &contact_;
  int            height_;
  double         weight_; ///< [N]; 0: led, not dropped
};

/// Gas and fibres of an air unit.
class ChamberProbe : public Probe
{
public:
  explicit ChamberProbe(const Chamber &chamber) : chamber_(chamber) {}

  void read(const TimeIntegrator &now, Curves &curves) const override
  {
    const auto &layer = chamber_.layer;
    if (const auto *gas = chamber_.gas)
    {
      curves.push(layer + ".gauge_pressure", "Pa", "gas pressure above the atmosphere",
                  gas->state().pressure() - gas->gas().atmospheric_pressure);
      curves.push(layer + ".gas_temperature", "K", "mean temperature of the gas", gas->state().temperature);
      curves.push(layer + ".volume", "m3", "volume of the chamber in the plug", gas->volume(now.x));
    }
    curves.push(layer + ".height", "m", "smallest height between the films",
                chamber_.fibres->smallest_height(now.x));
  }

private:
  const Chamber &chamber_;
};

Probes probes_of(const StackModel &model)
{
  Probes       probes;
  const double weight = model.equation.bodies[0].inertia[0] * model.input.gravity;
  probes.push_back(std::make_unique<StrikerProbe>(*model.tup_contact, model.tup_unknown(), weight));
  for (const auto &chamber : model.chambers)
    probes.push_back(std::make_unique<ChamberProbe>(chamber));
  return probes;
}

Snapshots snapshots_of(const StackModel &model, double interval)
{
  ShownStriker striker{{}, model.tup_unknown(), model.touch_height};
  for (const auto &point : geometry::outline(model.tup_surface, 24, 1.5 * model.height))
    striker.outline.push_back(point);
  return {*model.mesh, model.bodies, std::move(striker), interval};
}

/// What is known of a stack before the run.
Result known_of(const StackModel &model)
{
  Result result;
  result.chambers = model.chamber_facts;
  result.facts.unknowns = static_cast<std::size_t>(model.equation.size());
  result.facts.cells = model.mesh->cells().size();
  result.facts.steps = model.inflating.steps;
  result.facts.repeated_steps = model.inflating.repeated;
  result.facts.iterations = model.inflating.iterations;
  result.facts.descents = model.inflating.descents;
  return result;
}
} // namespace

Recorder stack_recorder(const StackModel &model, const TimeIntegrator &state, double picture_interval)
{
  std::vector<std::string> bodies{rig_part::striker, rig_part::support};
  bodies.resize(model.equation.bodies.size());
  return {state, probes_of(model), EnergyRows(std::move(bodies), leaks(model.chambers)),
          snapshots_of(model, picture_interval), known_of(model)};
}
} // namespace solemech::solver
