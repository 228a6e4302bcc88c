// SPDX-License-Identifier: Apache-2.0
#include "solver/time/newton.h"

namespace solemech::solver
{
namespace
{
constexpr double safety = 0.5; // share of the wanted residual that the next one must be foreseen below

/// Why a trial state could not be evaluated, from the name of the contribution.
std::string crushed(const std::string &name)
{
  return name + " would be crushed or turned inside out";
}
} // namespace

NewtonOutcome newton(const Residual &evaluate, LinearSolver &solver, Vector &x, double force_scale,
                     const NewtonSettings &settings)
{
  NewtonOutcome outcome;
  Vector        residual, trial_residual;
  Tangent       tangent;
  std::string   failed;
  if (!evaluate(x, residual, &tangent, failed))
    return {false, 0, 0, failed + ": the step starts from an inadmissible shape"};
  double       norm = residual.norm(), last_norm = 0;
  const double wanted = settings.tolerance * force_scale;
  bool         has_tangent = true;

  for (outcome.n_iterations = 0; outcome.n_iterations < settings.n_iterations; ++outcome.n_iterations)
  {
    outcome.residual = norm;
    if (norm <= wanted)
    {
      outcome.converged = true;
      return outcome;
    }
    if (!has_tangent && !evaluate(x, residual, &tangent, failed))
      return {false, outcome.n_iterations, norm, crushed(failed)};
    if (!solver.factorise(tangent))
      return {false, outcome.n_iterations, norm, "singular tangent"};
    const Vector direction = solver.solve(-residual);
    if (!direction.allFinite())
      return {false, outcome.n_iterations, norm, "singular tangent"};

    // The error of a step is squared; where that will do, the next tangent would be assembled for nothing.
    const double foreseen = last_norm > 0 ? norm * (norm / last_norm) * (norm / last_norm) : norm;
    has_tangent = foreseen > safety * wanted;
    bool   accepted = false;
    double factor = 1;
    for (unsigned halving = 0; halving <= settings.n_halvings && !accepted; ++halving, factor *= 0.5)
    {
      const Vector trial = x + factor * direction;
      if (!evaluate(trial, trial_residual, has_tangent ? &tangent : nullptr, failed))
      {
        failed = crushed(failed);
        continue;
      }
      const double trial_norm = trial_residual.norm();
      if (trial_norm > settings.allowed_growth * norm && trial_norm > wanted)
      {
        failed = "residual grows";
        continue;
      }
      x = trial;
      residual.swap(trial_residual);
      last_norm = norm, norm = trial_norm;
      accepted = true;
    }
    if (!accepted)
      return {false, outcome.n_iterations, norm, failed};
  }
  outcome.residual = norm;
  outcome.converged = norm <= wanted;
  if (!outcome.converged)
    outcome.reason = "no convergence";
  return outcome;
}
} // namespace solemech::solver
