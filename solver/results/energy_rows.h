// SPDX-License-Identifier: Apache-2.0
// The energy account of a run while it grows: one row a part and kind of energy, one value an accepted step.
#pragma once

#include "solver/results/result.h"
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
  const char *part = "drive", *kind = "work";
};

class EnergyRows
{
public:
  /// @param bodies  parts that the rigid bodies belong to, in their order; empty: nothing moves
  explicit EnergyRows(std::vector<std::string> bodies, DriveRow drive = {})
    : bodies_(std::move(bodies)), drive_(drive)
  {
  }

  /// Energies count from the present ones.
  /// @param held_counts  what is stored counts from nothing, since a leak can spend it too
  void open(const TimeIntegrator &state, bool held_counts);

  /// Adds the energies of an accepted step.
  void record(const TimeIntegrator &state);

  /// Takes the last state back to this share of the last step.
  void take_back(double share);

  /// Adds a row of its own: a value for each step so far.
  void add(const std::string &part, const std::string &kind, EnergyKind type, std::vector<double> values)
  {
    rows_.push_back({part, kind, type, std::move(values)});
  }

  std::size_t n_steps() const { return n_steps_; }

  /// Rows of equal length; a fall that sets free too little to be read counts with the errors of the scheme.
  std::vector<LedgerRow> moved();

private:
  using Key = std::pair<std::string, std::string>;

  std::vector<std::string>   bodies_;
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
} // namespace solemech::solver
