// SPDX-License-Identifier: Apache-2.0
#include "solver/newton.h"

namespace solemech::solver
{
NewtonOutcome newton(const Residual &evaluate, LinearSolver &solver, Vector &x, double force_scale,
                     const NewtonSettings &settings)
{
  NewtonOutcome outcome;
  Vector        residual, trial_residual;
  Tangent       tangent;
  std::string   failed;
  if (!evaluate(x, residual, tangent, failed))
    return {false, 0, 0, failed + ": the step starts from an inadmissible shape"};
  double norm = residual.norm();
  const double wanted = settings.tolerance * force_scale;

  for (outcome.n_iterations = 0; outcome.n_iterations < settings.n_iterations; ++outcome.n_iterations)
  {
    outcome.residual = norm;
    if (norm <= wanted)
    {
      outcome.converged = true;
      return outcome;
    }
    if (!solver.factorise(tangent))
      return {false, outcome.n_iterations, norm, "singular tangent"};
    const Vector direction = solver.solve(-residual);
    if (!direction.allFinite())
      return {false, outcome.n_iterations, norm, "singular tangent"};

    bool   accepted = false;
    double factor = 1;
    for (unsigned halving = 0; halving <= settings.n_halvings && !accepted; ++halving, factor *= 0.5)
    {
      const Vector trial = x + factor * direction;
      if (!evaluate(trial, trial_residual, tangent, failed))
        continue;
      const double trial_norm = trial_residual.norm();
      if (trial_norm > settings.allowed_growth * norm && trial_norm > wanted)
      {
        failed = "residual grows";
        continue;
      }
      x = trial;
      residual.swap(trial_residual);
      norm = trial_norm;
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
