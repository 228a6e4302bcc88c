// SPDX-License-Identifier: Apache-2.0
// Where Newton's method finds no way on - at a limit point, where a surface creases or a column tips over -
// the force is still the gradient of an incremental potential, and a state of rest lies downhill. Steps are
// taken with a tangent shifted by a share of the mass until it is positive definite (Levenberg 1944;
// Marquardt 1963; Nocedal & Wright, Numerical Optimization, ch. 3.4), each as long as the slope of the
// potential along it allows.
#pragma once

#include "solver/time/newton.h"

namespace solemech::solver
{
struct DescentSettings
{
  double   tolerance = 1e-3; ///< of the residual against the force scale [-]
  unsigned n_iterations = 120;
  unsigned n_shortenings = 14; ///< of one step
};

/// Adds `share` of a stiffness that resists every motion, of the size of the tangent itself.
using Stiffen = std::function<void(double share, Tangent &tangent)>;

/// The residual has to be the gradient of a potential: symmetric tangents only.
NewtonOutcome descend(const Residual &evaluate, const Stiffen &stiffen, LinearSolver &solver, Vector &x,
                      double force_scale, const DescentSettings &settings = {});
} // namespace solemech::solver
