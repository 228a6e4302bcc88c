// SPDX-License-Identifier: Apache-2.0
// The part of the summary that shows where 100 % of the energy went, and the column widths it shares with
// the readings above it.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/output/results/summary.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Columns of the side-by-side tables; a bar is drawn with `bar_length` characters.
inline constexpr std::size_t label_width = 28, cell_width = 24, bar_length = 16;

/// The text in bold when the options ask for emphasis.
std::string bold(const std::string &text, const SummaryOptions &options);

/// One bar per part and run, each kind of share with its own pattern. Empty when no run has a ledger.
std::string energy_bars(const std::vector<Run> &runs, const SummaryOptions &options);

/// Shares in per cent, one row per run; parts that stay small everywhere are summed as "other".
std::string energy_rows(const std::vector<Run> &runs, const SummaryOptions &options);
} // namespace solemech::tools
