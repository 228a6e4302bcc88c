// SPDX-License-Identifier: Apache-2.0
// Length of the next time step of an impact, from the acceleration of the drop weight alone (foam
// accelerations would cut the step tenfold without making the readings better): the local error of its speed
// is dt^3 a''/12, and a step stays within a share of the contact time that the secant stiffness foretells.
#pragma once

namespace solemech::solver
{
class StepControl
{
public:
  /// @param tolerance     1: default; the step scales with it
  /// @param contact_time  first guess [s]
  /// @param speed         at touch [m/s]
  StepControl(double tolerance, double contact_time, double speed);

  double step() const { return step_; }

  /// The step was taken; `contact_time` as known now.
  void advanced(double dt, double acceleration, double contact_time);

  /// The step failed. @return false when it cannot be cut further
  bool cut();

  /// No longer than this in the next step [s].
  void limit(double longest);

private:
  double tolerance_, contact_time_, speed_, step_;
  double last_slope_ = 0, last_dt_ = 0, last_acceleration_ = 0;
  int    n_known_ = 0;
};
} // namespace solemech::solver
