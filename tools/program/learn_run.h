// SPDX-License-Identifier: Apache-2.0
// solemech learn, the part that asks, calculates and answers.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// Asks the question, lets a person at a terminal guess, runs the case, answers from its numbers, and leaves
/// a folder results/learn-<label>/<number> with the files of a run and worksheet.html.
/// @throws Interrupted (nothing is written then), UsageError, materials::CaseError, solver::ResultsError
Exit answer_lesson_request(const LearnRequest &request, Job &job);
} // namespace solemech::tools
