// SPDX-License-Identifier: Apache-2.0
// Small questions to a run that every sentence of the report asks.
#pragma once

#include "tools/output/results/cautions.h"
#include "tools/rigs/facts.h"

#include <vector>

namespace solemech::tools::report
{
/// Runs as what is invented about them is asked.
LabelledCases labelled_cases(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
