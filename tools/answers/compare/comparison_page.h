// SPDX-License-Identifier: Apache-2.0
// The page of a comparison.
#pragma once

#include "tools/answers/compare/sentences.h"
#include "tools/output/report/report_page.h"

#include <vector>

namespace solemech::tools
{
/// The runs of the record side by side: each pair sets the next one against the first. The record must
/// outlive the page.
report::Page comparison_page(const RunRecord &record, const std::vector<ComparedPair> &pairs);
} // namespace solemech::tools
