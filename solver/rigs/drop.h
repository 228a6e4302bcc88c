// SPDX-License-Identifier: Apache-2.0
// Drop rig and ball rebound: a free weight falls on the stack, once or several times with rests between.
#pragma once

#include "solver/run.h"
#include "solver/stack_model.h"

namespace solemech::solver
{
/// One run at a given resolution; no error estimate. Readings are means over the counted hits, curves, ledger
/// and pictures those of the last one. Throws RunFailed, RunStopped.
Result run_drop(const Case &input, const DropRig &rig, const Resolution &resolution,
                const RunOptions &options);
} // namespace solemech::solver
