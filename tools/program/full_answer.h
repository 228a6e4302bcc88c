// SPDX-License-Identifier: Apache-2.0
// Answers of the commands that calculate.
#pragma once

#include "tools/program/command_line.h"
#include "tools/program/exit_codes.h"
#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
/// @param interrupted  becomes true when the person wants to stop
/// @throws UsageError for a command that needs no calculation; what the commands throw
Exit full_answer(const Request &request, const Solve &solve, const std::atomic<bool> &interrupted);
} // namespace solemech::tools
