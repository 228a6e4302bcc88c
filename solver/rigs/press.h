// SPDX-License-Identifier: Apache-2.0
// Press: slow cycles or body-like pulses, driven by displacement or force; inertia is left out.
#pragma once

#include "solver/run.h"
#include "solver/stack_model.h"

namespace solemech::solver
{
/// One run at a given resolution; no error estimate. Curves, ledger and readings are those of the last cycle.
/// Throws RunFailed, RunStopped.
Result run_press(const Case &input, const PressRig &rig, const Resolution &resolution,
                 const RunOptions &options);
} // namespace solemech::solver
