// SPDX-License-Identifier: Apache-2.0
// solemech run, the part that calculates: finished runs are read back, the rest is solved on all processors,
// written and printed. The solver is handed in as a function, so that this file knows none of its libraries.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
/// Answers a run request.
/// @param interrupted  becomes true when the person wants to stop; nothing is written then
/// @throws materials::CaseError, solver::ResultsError
Exit calculate(const RunRequest &request, const Solve &solve, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
