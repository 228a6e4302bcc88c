// SPDX-License-Identifier: Apache-2.0
// solemech compare, the part that calculates: every case against the first, runs shared and kept, the answer
// written and printed.
#pragma once

#include "tools/output/results/run_folder.h"
#include "tools/output/results/run_record.h"
#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/job.h"

#include <vector>

namespace solemech::tools
{
/// Answers a comparison.
/// @throws Interrupted, materials::CaseError, UsageError, solver::ResultsError
Exit calculate_comparison(const CompareRequest &request, Job &job);

/// Says which cases stopped early and takes them out; true when all came to their end.
bool keep_complete(std::vector<Run> &runs);

/// Nothing is left to compare: what finished is kept as it is, for people to look at.
void write_finished(RunFolder &folder, const RunRecord &record, const AnswerWish &wish);
} // namespace solemech::tools
