// SPDX-License-Identifier: Apache-2.0
// solemech run, the part that calculates: finished runs are read back, the rest is solved, written and
// printed.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// Answers a run request.
/// @throws Interrupted (nothing is written then), materials::CaseError, solver::ResultsError
Exit calculate(const RunRequest &request, Job &job);
} // namespace solemech::tools
