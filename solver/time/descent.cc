// SPDX-License-Identifier: Apache-2.0
#include "solver/time/descent.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double smallest_shift = 1e-6, largest_shift = 1e2; // shares of the tangent
constexpr double raise = 6, ease = 0.2; // of the shift, from one factorisation or step to the next
constexpr double overshoot =
  0.5; // slope at the end of a step over that at its start, rising instead of falling

struct Direction
{
  Vector along;
  double slope = 0; ///< of the potential, negative [J]
};

/// Solves with the least shift that makes the tangent positive definite.
/// @return false when none does
bool find_direction(const Tangent &tangent, const Vector &residual, const Stiffen &stiffen,
                    LinearSolver &solver, double &shift, Direction &direction)
{
  for (; shift <= largest_shift; shift = std::max(raise * shift, smallest_shift))
  {
    Tangent shifted = tangent;
    if (shift > 0)
      stiffen(shift, shifted);
    if (!solver.factorise(shifted) || solver.indefinite())
      continue;
    direction.along = solver.solve(-residual);
    direction.slope = residual.dot(direction.along);
    if (direction.along.allFinite() && direction.slope < 0)
      return true;
  }
  return false;
}
} // namespace

NewtonOutcome descend(const Residual &evaluate, const Stiffen &stiffen, LinearSolver &solver, Vector &x,
                      double force_scale, const DescentSettings &settings)
{
  NewtonOutcome outcome;
  Vector        residual, trial_residual;
  Tangent       tangent, trial_tangent;
  std::string   failed;
  if (!evaluate(x, residual, &tangent, failed))
    return {false, 0, 0, failed + ": the step starts from an inadmissible shape"};
  double shift = 0;
  for (; outcome.n_iterations < settings.n_iterations; ++outcome.n_iterations)
  {
    outcome.residual = residual.norm();
    outcome.converged = outcome.residual <= settings.tolerance * force_scale;
    if (outcome.converged)
      return outcome;
    Direction direction;
    if (!find_direction(tangent, residual, stiffen, solver, shift, direction))
      return {false, outcome.n_iterations, outcome.residual, "singular tangent"};

    double   factor = 1;
    bool     accepted = false;
    unsigned n_shorter = 0;
    for (; n_shorter <= settings.n_shortenings && !accepted; ++n_shorter)
    {
      const Vector trial = x + factor * direction.along;
      if (!evaluate(trial, trial_residual, &trial_tangent, failed))
      {
        factor *= 0.4;
        continue;
      }
      const double slope =
        trial_residual.dot(direction.along) / -direction.slope; // -1: as steep as at the start
      accepted = slope <= overshoot;
      if (accepted)
        x = trial;
      else
        factor *= std::clamp(1 / (1 + slope), 0.1, 0.6);
    }
    if (!accepted)
      return {false, outcome.n_iterations, outcome.residual, "no convergence"};
    residual.swap(trial_residual);
    std::swap(tangent, trial_tangent);
    if (n_shorter == 1)
      shift = ease * shift < smallest_shift ? 0 : ease * shift;
    else if (n_shorter > 3)
      shift = std::max(raise * shift, smallest_shift);
  }
  outcome.reason = "no convergence";
  return outcome;
}
} // namespace solemech::solver
