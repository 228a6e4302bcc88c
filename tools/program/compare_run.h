// SPDX-License-Identifier: Apache-2.0
// solemech compare, the part that calculates: every case against the first, runs shared and kept, the answer
// written and printed.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// Answers a comparison.
/// @throws Interrupted, materials::CaseError, UsageError, solver::ResultsError
Exit calculate_comparison(const CompareRequest &request, Job &job);
} // namespace solemech::tools
