// SPDX-License-Identifier: Apache-2.0
// Curves of a run while they grow, one value an accepted step.
#pragma once

#include "solver/results/result.h"

#include <string>
#include <vector>

namespace solemech::solver
{
class Curves
{
public:
  /// A value that belongs to the state: between two steps it lies between theirs.
  void push(const std::string &name, const std::string &unit, const std::string &meaning, double value)
  {
    grow(name, unit, meaning, value, false);
  }

  /// One that a contact feels: it stays that of the step when the state is taken back to an earlier time.
  void push_felt(const std::string &name, const std::string &unit, const std::string &meaning, double value)
  {
    grow(name, unit, meaning, value, true);
  }

  /// Takes the last state back to this share of the last step.
  void take_back(double share);

  /// Throws std::logic_error when there is none of that name.
  const std::vector<double> &operator[](const std::string &name) const;

  std::vector<Curve> moved() { return std::move(curves_); }

private:
  std::vector<Curve> curves_;
  std::vector<bool>  is_felt_; ///< of each

  void grow(const std::string &name, const std::string &unit, const std::string &meaning, double value,
            bool is_felt);
};

/// Moves the last of two or more values back to a share of the step before it.
void take_back(std::vector<double> &values, double share);
} // namespace solemech::solver
