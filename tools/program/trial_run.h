// SPDX-License-Identifier: Apache-2.0
// solemech trial, the part that calculates: runs both sides, where they bottom, the player and the range,
// then writes and prints.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
/// @param interrupted  becomes true when the person wants to stop; nothing is written then, but finished runs
///                     stay in the store
/// @throws materials::CaseError, solver::ResultsError
Exit answer_trial(const TrialRequest &request, const Solve &solve, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
