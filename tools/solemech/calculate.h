// SPDX-License-Identifier: Apache-2.0
// solemech run, the part that calculates: finished runs are read back, the rest is solved on all processors,
// written and printed. The solver is handed in as a function, so that this file knows none of its libraries.
#pragma once

#include "solver/case.h"
#include "solver/result.h"
#include "tools/solemech/command_line.h"
#include "tools/solemech/exit_codes.h"

#include <atomic>
#include <functional>

namespace solemech::tools
{
/// Told now and then: share of the run that is done, 0..1, and what is going on. Answers false to stop.
using RunProgress = std::function<bool(double fraction, const char *what)>;

/// Solves one case. A run that stops early comes back incomplete, with its reason.
using Solve = std::function<solver::Result(const solver::Case &, const RunProgress &)>;

/// Answers a run request.
/// @param interrupted  becomes true when the person wants to stop; nothing is written then
/// @throws materials::CaseError, solver::ResultsError
Exit calculate(const RunRequest &request, const Solve &solve, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
