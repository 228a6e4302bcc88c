// SPDX-License-Identifier: Apache-2.0
// What every bench records of a stack: the striker, the air units, the energies of all, pictures.
#pragma once

#include "solver/models/stack_model.h"
#include "solver/results/recorder.h"

namespace solemech::solver
{
/// @param picture_interval  at least this long between pictures [s]; <= 0: none
Recorder stack_recorder(const StackModel &model, const TimeIntegrator &state, double picture_interval);
} // namespace solemech::solver
