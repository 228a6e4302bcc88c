// SPDX-License-Identifier: Apache-2.0
// Implicit time integration, second order: generalised-alpha with all coefficients from the spectral radius
// at infinite frequency (Chung & Hulbert, J. Appl. Mech. 60, 1993). Forces are mixed, not states, so that
// every law is evaluated at the end of the step. With `quasi_static` masses are left out and the force at the
// end counts.
#pragma once

#include "solver/linear/bordered_solver.h"
#include "solver/time/account.h"
#include "solver/time/descent.h"
#include "solver/time/newton.h"

#include <limits>
#include <optional>

namespace solemech::solver
{
/// Coefficients as values made from one number.
struct AlphaCoefficients
{
  double alpha_m, alpha_f, beta, gamma;
};

/// @param spectral_radius at infinite frequency, 0..1; throws std::invalid_argument outside
AlphaCoefficients alpha_coefficients(double spectral_radius);

struct StepOutcome
{
  bool        advanced = false;
  unsigned    n_iterations = 0;
  std::string reason; ///< when the step is to be repeated smaller
};

class TimeIntegrator
{
public:
  /// @param solver  of the tangents; none: the symmetric one
  TimeIntegrator(EquationOfMotion &equation, double spectral_radius,
                 std::unique_ptr<LinearSolver> solver = nullptr);

  Vector x, v, a;         ///< accepted state; bodies at the end [m, m/s, m/s2]
  double time = 0;        ///< [s]
  double force_scale = 1; ///< residuals count against it [N]
  bool   quasi_static = false;
  double extrapolate =
    0; ///< share of the last step's motion that iterations start with; 1 for smooth loads [-]
  bool along_tangent =
    false; ///< start from a linear step: what touches a prescribed body goes with it; quasi-static
  /// A body that a force drives goes no farther in a quasi-static step; what does so at every length of step
  /// falls [m].
  double longest_way = std::numeric_limits<double>::infinity();
  std::vector<std::optional<double>>
                 prescribed; ///< value of each freedom of rigid bodies at the end of the next step [m, rad]
  NewtonSettings newton_settings;
  OpenParts *open_parts = nullptr; ///< filled with what each part leaves open of the account, where wanted

  /// Tries a step; on failure the state is as before.
  StepOutcome step(double dt);

  /// Evaluates forces and energies at the present x: call once after setting it.
  void start();

  double kinetic_energy() const;                         ///< of everything [J]
  double body_kinetic_energy(std::size_t body) const;    ///< of one rigid body [J]
  double numerical_energy() const { return numerical_; } ///< lost to the scheme so far [J]
  double residual_energy() const { return residual_; }   ///< lost to unfinished iterations so far [J]
  double fallen_energy() const
  {
    return fallen_;
  } ///< set free where the stack fell into another state, so far [J]
  double prescribed_work() const { return prescribed_work_; } ///< done by prescribed bodies so far [J]
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
  std::vector<bool>             was_prescribed_; ///< each freedom of rigid bodies, in the last step
  std::vector<EnergyEntry>      energies_;
  PartAccounts                  part_accounts_;

  /// The longest way of a rigid body from here to there, turns left out [m].
  double longest_way_to(const Vector &x_new) const;

  StepOutcome failed_step(const std::string &reason, StepOutcome outcome);
  Vector linear_guess() const; ///< at the end of a quasi-static step, x itself where the tangent is of no use
  double energy_sum_ = 0, numerical_ = 0, residual_ = 0, fallen_ = 0, prescribed_work_ = 0;
};
} // namespace solemech::solver
