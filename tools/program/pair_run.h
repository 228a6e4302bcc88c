// SPDX-License-Identifier: Apache-2.0
// solemech pair, the part that calculates: both sheets settled together, heel against forefoot, the answer
// written and printed.
#pragma once

#include "tools/program/commands.h"
#include "tools/study/job.h"

namespace solemech::tools
{
/// @throws Interrupted, materials::CaseError, solver::ResultsError, and what settle::settle throws
Exit answer_pair(const PairRequest &request, Job &job);
} // namespace solemech::tools
