// SPDX-License-Identifier: Apache-2.0
// solemech plan: settles a bench sheet, from kept runs where there are some, and prints what to do next.
// Nothing is written but the kept runs.
#pragma once

#include "tools/program/commands.h"
#include "tools/study/job.h"

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, Job &job);
} // namespace solemech::tools
