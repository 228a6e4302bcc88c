// SPDX-License-Identifier: Apache-2.0
// solemech plan: settles a bench sheet, from kept runs where there are some, and prints what to do next.
// Nothing is written but the kept runs.
#pragma once

#include "tools/program/commands.h"
#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
Exit answer_plan(const PlanRequest &request, const Solve &solve, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
