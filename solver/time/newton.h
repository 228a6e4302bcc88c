// SPDX-License-Identifier: Apache-2.0
// Newton's method with a halving line search. A trial state may be inadmissible; the residual is measured
// against a force scale given by the caller (the last converged contact force), never against an iterate.
#pragma once

#include "solver/linear/linear_solver.h"
#include "solver/time/step_settings.h"

#include <functional>

namespace solemech::solver
{
struct NewtonOutcome
{
  bool        converged = false;
  unsigned    n_iterations = 0;
  double      residual = 0; ///< norm at the end [N]
  std::string reason;       ///< when it did not converge
};

/// Residual at x and, where wanted, its tangent; false when x is inadmissible, with the culprit.
using Residual =
  std::function<bool(const Vector &x, Vector &residual, Tangent *tangent, std::string &failed)>;

NewtonOutcome newton(const Residual &evaluate, LinearSolver &solver, Vector &x, double force_scale,
                     const NewtonSettings &settings);
} // namespace solemech::solver
