// SPDX-License-Identifier: Apache-2.0
// Collects curves, ledger rows and pictures while a rig runs.
#pragma once

#include "solver/stack_model.h"
#include "solver/time/account.h"
#include "solver/time/generalised_alpha.h"

#include <map>

namespace solemech::solver
{
/// Adds a reading for what each part has turned into heat by the last recorded time, as the ledger says.
void add_losses(Result &result);

class Recorder
{
public:
  /// @param picture_interval  at least this long between pictures [s]; <= 0: none
  Recorder(const StackModel &model, const TimeIntegrator &integrator, double picture_interval);

  /// Energies from here on are counted from the present ones; `given` is the energy the run starts with [J].
  void open_ledger(double given);

  /// Records the accepted state at `time` [s].
  void record(double time, bool picture_now = false);

  /// Moves the last record back to `time` [s], between the last two: state and energies are those on the line
  /// between them, what the striker feels stays that of the last one.
  void end_at(double time);

  /// Pictures from here on at least `interval` [s] apart; without effect when none are wanted.
  void space_pictures(double interval);

  /// Adds an energy row with one value for all times from the first (guide) or a value now.
  void set(const std::string &part, const std::string &kind, EnergyKind type, double value);

  const std::vector<double> &curve(const std::string &name) const;
  const std::vector<double> &time() const { return result_.time; }

  /// Moves what was recorded into a result.
  Result finish();

private:
  const StackModel                                     &model_;
  const TimeIntegrator                                 &integrator_;
  double                                                picture_interval_, last_picture_ = -1e9, given_ = 0;
  Result                                                result_;
  std::map<std::pair<std::string, std::string>, double> opening_;
  std::map<std::pair<std::string, std::string>, std::size_t> rows_;
  double numerical_at_opening_ = 0, residual_at_opening_ = 0, fallen_at_opening_ = 0, work_at_opening_ = 0;
  std::optional<double> held_before_; ///< stored at the opening, when something can spend it [J]

  void push(const std::string &name, const std::string &unit, const std::string &meaning, double value);
  void push_row(const std::string &part, const std::string &kind, EnergyKind type, double value);
  void take_picture(double time);
  void drop_small_falls();
};
} // namespace solemech::solver
