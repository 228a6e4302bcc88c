// SPDX-License-Identifier: Apache-2.0
// The energy account of a run while it grows: one row a part and kind of energy, one value an accepted step.
#pragma once

#include "solver/results/result.h"
#include "solver/rig_parts.h"
#include "solver/time/generalised_alpha.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace solemech::solver
{
/// Which row of the account what is led stands in.
struct DriveRow
{
  const char *part = rig_part::drive, *kind = "work";
};

class EnergyRows
{
public:
  /// @param bodies       parts that the rigid bodies belong to, in their order; empty: nothing moves
  /// @param held_counts  what is stored at the opening counts from nothing, since a leak can spend it too
  explicit EnergyRows(std::vector<std::string> bodies, bool held_counts = false, DriveRow drive = {})
    : bodies_(std::move(bodies)), held_counts_(held_counts), drive_(drive)
  {
  }

  /// Energies count from the present ones.
  void open(const TimeIntegrator &state);

  /// Adds the energies of an accepted step; one that is not there is zero.
  void record(const TimeIntegrator &state);

  /// Takes the last state back to this share of the last step.
  void take_back(double share);

  /// Adds a row of its own: a value for each step so far.
  void add(const std::string &part, const std::string &kind, EnergyKind type, std::vector<double> values)
  {
    rows_.push_back({part, kind, type, std::move(values)});
  }

  /// Rows of equal length; a fall that sets free too little to be read counts with the errors of the scheme.
  std::vector<LedgerRow> moved();

private:
  using Key = std::pair<std::string, std::string>;

  std::vector<std::string>   bodies_;
  bool                       held_counts_;
  DriveRow                   drive_;
  std::vector<LedgerRow>     rows_;
  std::map<Key, std::size_t> number_;
  std::size_t                n_steps_ = 0;

  std::map<Key, double> opening_;
  double numerical_at_opening_ = 0, residual_at_opening_ = 0, fallen_at_opening_ = 0, work_at_opening_ = 0;
  std::optional<double> held_before_; ///< stored at the opening, when something can spend it [J]

  void push(const std::string &part, const std::string &kind, EnergyKind type, double value);
  /// From the step on in which it is not zero.
  void push_once_there(const std::string &part, const std::string &kind, EnergyKind type, double value);
  void push_motion(const TimeIntegrator &state);
  void drop_small_falls();
};

/// Adds what a drive gives and friction turns into heat at once: two rows that cancel.
/// @param lost, given  their kinds
/// @param heat         so far, a value for each recorded time [J]
void add_rubbed(std::vector<LedgerRow> &ledger, const std::string &part, const std::string &lost,
                const std::string &given, const std::vector<double> &heat);
} // namespace solemech::solver
