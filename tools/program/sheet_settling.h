// SPDX-License-Identifier: Apache-2.0
// What every command that settles a bench sheet shares: the sheet read, its runs
// kept, and how a settling that cannot end is told.
#pragma once

#include "tools/answers/sheet/settle_sheet.h"
#include "tools/program/exit_codes.h"
#include "tools/program/progress.h"

#include <atomic>
#include <functional>

namespace solemech::tools
{
/// @throws materials::CaseError with every slip
Sheet settleable_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings);

/// Calls `answer` with runs that are made in parallel, read back when they were made before, and kept; their
/// progress goes to standard error.
/// @param expected  runs that it will take about
Exit with_kept_runs(const Solve &solve, bool quiet, std::size_t expected,
                    const std::atomic<bool>                                            &interrupted,
                    const std::function<Exit(const RunCases &run, Progress &progress)> &answer);
} // namespace solemech::tools
