// SPDX-License-Identifier: Apache-2.0
// How a step is to be taken: values that a rig gives to each step or to each phase of a run.
#pragma once

#include <limits>

namespace solemech::solver
{
struct NewtonSettings
{
  double   tolerance = 1e-3; ///< of the residual against the force scale [-]; convergence overshoots it
  unsigned n_iterations = 14;
  unsigned n_halvings = 8;
  double   allowed_growth = 10; ///< of the residual in one iteration [-]
};

struct StepSettings
{
  NewtonSettings newton = {};
  double         force_scale = 1;      ///< residuals count against it [N]
  bool           quasi_static = false; ///< masses are left out, and the force at the end counts
  /// Share of the last step's motion that iterations start with; 1 for smooth loads [-].
  double extrapolate = 0;
  /// Start from a linear step: what touches a led body goes with it; quasi-static.
  bool along_tangent = false;
  /// Go straight down the potential, where there is one, without a try by Newton's method alone.
  bool descend = false;
  /// A body goes no farther in a quasi-static step; one that a force drives, and that does so at every length
  /// of step, falls [m].
  double longest_way = std::numeric_limits<double>::infinity();
};
} // namespace solemech::solver
