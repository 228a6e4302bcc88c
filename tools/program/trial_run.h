// SPDX-License-Identifier: Apache-2.0
// solemech trial, the part that calculates: runs both sides, where they bottom, the player and the range,
// then writes and prints.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// @throws Interrupted (nothing is written then), materials::CaseError, solver::ResultsError
Exit answer_trial(const TrialRequest &request, Job &job);
} // namespace solemech::tools
