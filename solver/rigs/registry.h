// SPDX-License-Identifier: Apache-2.0
// How each kind of rig is run: the one place of the solver that asks which rig a case has.
#pragma once

#include "solver/rig_kind.h"
#include "solver/run.h"
#include "solver/stack_model.h"

namespace solemech::solver
{
struct RigRun
{
  RigKind kind;
  /// One run at a given resolution; no error estimate. Throws RunFailed, RunStopped.
  Result (*run)(const Case &, const Resolution &, const RunOptions &);
  double mesh = 1; ///< finer by this than the mesh of a blow [-]
};

const RigRun &rig_run(const Rig &rig);
} // namespace solemech::solver
