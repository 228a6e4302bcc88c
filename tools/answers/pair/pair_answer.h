// SPDX-License-Identifier: Apache-2.0
// What a settled pair says: as text, as JSON, as a page. Measured beside model for both, then heel against
// forefoot.
#pragma once

#include "tools/answers/compare/sentences.h"
#include "tools/answers/pair/settle_pair.h"
#include "tools/output/report/report_blocks.h"
#include "tools/output/results/summary.h"

#include <map>
#include <string>
#include <vector>

namespace solemech::tools
{
struct PairAnswer
{
  const Pair            &pair;
  const SettledTogether &settled;
  const Explanation     &explanation; ///< heel against forefoot

  /// Else the forefoot is compared from another height than it was read from.
  bool         is_from_one_height() const;
  ComparedPair compared() const { return {explanation, "heel", "forefoot", true}; }
};

/// What both settled stacks read under the rod takes the numbers of their runs. Readings of the forefoot from
/// another height than the heel's say from which.
void take_from_runs(const Pair &pair, const Explanation &explanation, SettledTogether &settled);

/// @param runs  of both, as settled
std::string pair_text(const PairAnswer &answer, const std::vector<Run> &runs, const SummaryOptions &options);

/// Both sheets as `run --json` has them, the rod that they share, and the comparison; schema 1.
std::string pair_json(const PairAnswer &answer, const std::map<std::string, std::string> &versions);

/// @param record  with the runs of both; it must outlive the page
report::Page pair_page(const PairAnswer &answer, const RunRecord &record);
} // namespace solemech::tools
