// SPDX-License-Identifier: Apache-2.0
// A comparison as the values that terminal, report page and data files show: display units, words, verdicts.
#pragma once

#include "tools/answers/compare/sentences.h"
#include "tools/output/report/report_blocks.h"

namespace solemech::tools
{
/// @param from, to  numbers of the two runs on the page
report::Comparison comparison_view(const ComparedPair &pair, std::size_t from, std::size_t to);

/// "64 mixtures at two levels of mesh and step: 128 runs, 120 of them there already".
std::string runs_text(const Explanation &explanation);
} // namespace solemech::tools
