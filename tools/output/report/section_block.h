// SPDX-License-Identifier: Apache-2.0
// Blocks of one run that come straight from case and result: the section at rest with its dimensions, the
// curves at full recorded resolution, and where the energy went, at the end and over time.
#pragma once

#include "tools/output/report/json.h"
#include "tools/output/report/parts.h"

namespace solemech::tools::report
{
/// The type Section of src/data.ts; null for a case without layers.
Json section_json(const Run &run, const std::vector<Part> &parts);

/// The type Curves.
Json curves_json(const Run &run);

/// The type Energy; null when the run has no energy account.
Json energy_json(const Run &run, const std::vector<Part> &parts);
} // namespace solemech::tools::report
