// SPDX-License-Identifier: Apache-2.0
// The equations of the reference column: state, stress with all branches, lateral balance, rates for the
// motion-driven Runge-Kutta steps, and implicit steps under a given force.
#pragma once

#include "tests/support/column_reference.h"

#include <functional>
#include <vector>

namespace solemech::tests
{
/// Everything with memory: motion of the plate, viscous strain per branch, dissipated energies.
struct ColumnState
{
  double              compression = 0, speed = 0;              ///< [m], [m/s] downwards
  std::vector<Strain> viscous;                                 ///< per branch, relaxing ones first [-]
  double              relaxed = 0, slipped = 0, recovered = 0; ///< dissipated per volume [J/m3]
};

/// Time derivative of a state, and the slip rate of each branch flagged as slipping [1/s].
struct ColumnRates
{
  ColumnState         change;
  std::vector<double> slip;
};

class ColumnEquations
{
public:
  /// Downward acceleration of the plate [m/s2] from time [s], compression [m] and force [N].
  using Acceleration = std::function<double(double time, double compression, double force)>;

  ColumnEquations(const ColumnFoam &foam, const Column &column);

  ColumnState rest() const;
  double      force(const ColumnState &state) const;  ///< compressive [N]
  double      stored(const ColumnState &state) const; ///< in network, gas, densification and branches [J]
  double      norm(const ColumnState &state, std::size_t branch) const; ///< r of a branch [-]
  double      volume() const { return column_.area * column_.height; }  ///< at rest [m3]
  const ColumnFoam &foam() const { return foam_; }

  ColumnRates rates(double time, const ColumnState &state, const std::vector<bool> &slipping,
                    const Acceleration &acceleration) const;

  /// One fourth-order step; slipping branches end exactly on their caps.
  ColumnState runge_kutta(double time, double dt, const ColumnState &state, const std::vector<bool> &slipping,
                          const Acceleration &acceleration) const;

  /// One implicit step under a force [N] at its end: strains ramp linearly, branches decay exactly on the
  /// ramp, then return to their caps. Throws std::runtime_error when it does not settle.
  void force_step(double dt, double force_at_end, ColumnState &state) const;

  /// Rest without load for a duration [s].
  void recover_freely(double duration, ColumnState &state) const;

private:
  Strain    total_strain(const ColumnState &state) const; ///< with the lateral stress brought to zero
  FoamPoint total(const Strain &strain, const std::vector<Strain> &viscous) const; ///< with all branches

  ColumnFoam                           foam_;
  Column                               column_;
  std::array<std::array<double, 3>, 3> metric_;
  double                               mu_;
  Strain                               spread_;      ///< direction of the free lateral strain
  mutable double                       lateral_ = 0; ///< last lateral strain, a first guess only
};
} // namespace solemech::tests
