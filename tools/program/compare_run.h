// SPDX-License-Identifier: Apache-2.0
// solemech compare, the part that calculates: every case against the first, runs shared and kept, the answer
// written and printed. The solver is handed in as a function, so that this file knows none of its libraries.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
/// Answers a comparison.
/// @param interrupted  becomes true when the person wants to stop; finished runs stay in the store
/// @throws materials::CaseError, UsageError, solver::ResultsError, and what the solver throws for the cases
/// themselves
Exit calculate_comparison(const CompareRequest &request, const Solve &solve,
                          const std::atomic<bool> &interrupted);
} // namespace solemech::tools
