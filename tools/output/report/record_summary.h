// SPDX-License-Identifier: Apache-2.0
// Summary of a record as text: of a series what its chart says first, then the table.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/output/results/summary.h"

#include <string>

namespace solemech::tools::report
{
std::string record_summary(const RunRecord &record, const SummaryOptions &options);
} // namespace solemech::tools::report
