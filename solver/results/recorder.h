// SPDX-License-Identifier: Apache-2.0
// Collects curves, the energy account and pictures of a run: an observer that asks its probes what the things
// they belong to show.
#pragma once

#include "solver/model.h"
#include "solver/results/curves.h"
#include "solver/results/energy_rows.h"
#include "solver/results/snapshots.h"

namespace solemech::solver
{
/// Adds a reading for what each part has turned into heat by the last recorded time, as the ledger says.
void add_losses(Result &result);

/// Reads curves off one thing of a model: a striker, an air unit.
class Probe
{
public:
  virtual ~Probe() = default;
  virtual void read(const TimeIntegrator &state, Curves &curves) const = 0;
};

using Probes = std::vector<std::unique_ptr<Probe>>;

class Recorder : public Observer
{
public:
  /// @param state  the one of every step that it will look at
  /// @param known  what the result holds beforehand; steps and iterations count on from there
  Recorder(const TimeIntegrator &state, Probes probes, EnergyRows energies, Snapshots pictures, Result known)
    : state_(state), probes_(std::move(probes)), energies_(std::move(energies)),
      pictures_(std::move(pictures)), result_(std::move(known))
  {
  }

  /// Energies from here on are counted from the present ones; `given` is the energy the run starts with [J].
  void open_ledger(double given)
  {
    result_.input_energy = given;
    energies_.open(state_);
  }

  std::optional<Objection> look(const AcceptedStep &step) override;

  /// Moves the last record back to `time` [s], between the last two: state and energies are those on the line
  /// between them, what the striker feels stays that of the last one.
  void end_at(double time);

  /// Pictures from here on at least `interval` [s] apart; without effect when none are wanted.
  void space_pictures(double interval) { pictures_.space(interval); }

  /// Adds an energy row with one value for all times.
  void set(const std::string &part, const std::string &kind, EnergyKind type, double value)
  {
    energies_.add(part, kind, type, std::vector<double>(result_.time.size(), value));
  }

  const std::vector<double> &curve(const std::string &name) const { return curves_[name]; }
  const std::vector<double> &time() const { return result_.time; }

  /// Moves what was recorded into a result.
  Result finish();

private:
  const TimeIntegrator &state_;
  Probes                probes_;
  Curves                curves_;
  EnergyRows            energies_;
  Snapshots             pictures_;
  Result                result_;
};
} // namespace solemech::solver
