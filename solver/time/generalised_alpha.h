// SPDX-License-Identifier: Apache-2.0
// Implicit time integration, second order: generalised-alpha (step_equation.h). Forces are mixed, not states,
// so that every law is evaluated at the end of the step.
#pragma once

#include "solver/linear/linear_solver.h"
#include "solver/time/account.h"
#include "solver/time/descent.h"
#include "solver/time/step_equation.h"

namespace solemech::solver
{
struct StepOutcome
{
  bool        advanced = false;
  std::string reason; ///< when the step is to be repeated smaller
};

class TimeIntegrator
{
public:
  TimeIntegrator(EquationOfMotion &equation, double spectral_radius);

  Vector x, v, a;  ///< accepted state; bodies at the end [m, m/s, m/s2]
  double time = 0; ///< [s]

  /// Books from the next start on what each part leaves open of the account; nullptr: does not.
  void book_parts(OpenParts *open) { open_parts_ = open; }

  /// Evaluates forces and energies at the present x: call once after setting it.
  void start();

  /// Tries a step; on failure the state is as before.
  StepOutcome step(double dt, const StepSettings &settings);

  double kinetic_energy() const;                         ///< of everything [J]
  double body_kinetic_energy(std::size_t body) const;    ///< of one rigid body [J]
  double numerical_energy() const { return numerical_; } ///< lost to the scheme so far [J]
  double residual_energy() const { return residual_; }   ///< lost to unfinished iterations so far [J]
  /// Set free where the stack fell into another state, so far [J].
  double fallen_energy() const { return fallen_; }
  double driven_work() const { return driven_work_; } ///< done by what is led, so far [J]
  const std::vector<EnergyEntry> &energies() const { return energies_; }

  std::size_t n_steps = 0, n_repeated = 0, n_iterations = 0;
  unsigned n_failures = 0; ///< tries since the last step taken; after two of them the potential is descended
  std::size_t n_descents = 0; ///< steps that Newton's method did not find and a descent of the potential did

private:
  EquationOfMotion             &equation_;
  AlphaCoefficients             coefficients_;
  std::unique_ptr<LinearSolver> solver_;
  Vector                        force_;   ///< at the accepted state [N]
  Vector                        last_dx_; ///< of the last step [m]
  double                        last_dt_ = 0;
  std::vector<LedUnknown>       was_led_; ///< by the last step
  std::vector<EnergyEntry>      energies_;
  PartAccounts                  part_accounts_;
  OpenParts                    *open_parts_ = nullptr;
  double                        energy_sum_ = 0, numerical_ = 0, residual_ = 0, fallen_ = 0, driven_work_ = 0;

  Vector first_guess(double dt, const StepSettings &settings, const std::vector<LedUnknown> &led) const;
  /// At the end of a quasi-static step, x itself where the tangent is of no use.
  Vector linear_guess(const std::vector<LedUnknown> &led) const;
  /// Finds the balance and settles it. @return why there is none; empty: x_new is it
  std::string find_balance(StepEquation &balance, const StepSettings &settings, bool descends, Vector &x_new);
  /// The longest way of a rigid body from here to there, turns left out [m].
  double longest_way_to(const Vector &x_new) const;
  void   take(const StepEquation &balance, const Vector &x_new, double dt, bool fell);
};
} // namespace solemech::solver
