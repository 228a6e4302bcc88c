// SPDX-License-Identifier: Apache-2.0
// A finished trial as the values of its report page.
#pragma once

#include "tools/answers/trial/trial_answer.h"
#include "tools/output/report/report_blocks.h"

namespace solemech::tools
{
/// The page of a trial. `record` holds both sides (one when only a range was asked for) and must outlive it.
report::Page trial_page(const TrialAnswer &answer, const RunRecord &record);
} // namespace solemech::tools
