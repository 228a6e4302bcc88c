// SPDX-License-Identifier: Apache-2.0
// The comparison as the terminal shows it and summary.txt keeps it: what differs, what that does to the
// readings, which change has which share, where the energy went instead, and what to know.
#pragma once

#include "tools/answers/compare/sentences.h"
#include "tools/output/results/summary.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// What it comes to, in sentences.
std::string comparison_headline(const ComparedPair &pair, const SummaryOptions &options);

/// @param with_headlines  else they stand elsewhere
std::string comparison_text(const std::vector<ComparedPair> &pairs, const SummaryOptions &options,
                            bool with_headlines = true);
} // namespace solemech::tools
