// SPDX-License-Identifier: Apache-2.0
// Hold: a squeeze or a load comes on, stands for minutes to days, goes, and the stack rests; inertia is left
// out. Steps grow with the time since the load last changed, so that every decade of time has as many.
#pragma once

#include "solver/run.h"
#include "solver/stack_model.h"

namespace solemech::solver
{
/// One run at a given resolution; no error estimate. Throws RunFailed, RunStopped.
Result run_hold(const Case &input, const HoldRig &rig, const Resolution &resolution,
                const RunOptions &options);
} // namespace solemech::solver
