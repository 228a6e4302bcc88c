// SPDX-License-Identifier: Apache-2.0
// The balance that a step looks for, as a residual of the unknowns at its end: forces mixed of both ends,
// inertia with Newmark's accelerations, led unknowns in their places. Coefficients of generalised-alpha
// follow from the spectral radius at infinite frequency (Chung & Hulbert, J. Appl. Mech. 60, 1993).
#pragma once

#include "solver/time/equation_of_motion.h"

namespace solemech::solver
{
/// Coefficients as values made from one number.
struct AlphaCoefficients
{
  double alpha_m, alpha_f, beta, gamma;
};

/// @param spectral_radius at infinite frequency, 0..1; throws std::invalid_argument outside
AlphaCoefficients alpha_coefficients(double spectral_radius);

/// Where a step starts from; outlived by what it refers to.
struct StepStart
{
  const Vector &x, &v, &a; ///< [m, m/s, m/s2]
  const Vector &force;     ///< [N]
};

class StepEquation
{
public:
  /// @param led  unknowns that have their values at the end
  StepEquation(const EquationOfMotion &equation, const AlphaCoefficients &coefficients, bool quasi_static,
               double dt, const StepStart &start, std::vector<LedUnknown> led);

  /// @return false, and the culprit in `failed`, when the state is inadmissible
  bool residual(const Vector &x_new, Vector &residual, Tangent *tangent, std::string &failed);

  /// Speed and acceleration at the end; none without inertia.
  Vector speed(const Vector &x_new) const;
  Vector acceleration(const Vector &x_new) const;

  const Vector &force() const { return force_; } ///< where the residual was asked for last [N]
  const std::vector<LedUnknown> &led() const { return led_; }

  /// Work along the step that took the unknowns to x_new [J].
  struct Work
  {
    double forces, inertia, driven; ///< `driven` is done on what is led
  };
  /// @param was_led  by the step before
  Work work(const Vector &x_new, const std::vector<LedUnknown> &was_led) const;
  bool has_inertia() const { return !quasi_static_; }
  /// Of the force at the start in the mean that does work: without inertia both ends are in balance and count
  /// alike.
  double old_share() const { return quasi_static_ ? 0.5 : c_.alpha_f; }

private:
  const EquationOfMotion &equation_;
  AlphaCoefficients       c_;
  bool                    quasi_static_;
  double                  dt_;
  StepStart               start_;
  std::vector<LedUnknown> led_;
  Vector                  force_, leading_; ///< at the end; what leads each led unknown [N]

  Vector mixed_acceleration(const Vector &x_new) const;
};
} // namespace solemech::solver
