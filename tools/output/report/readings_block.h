// SPDX-License-Identifier: Apache-2.0
// Readings, warnings and parts of a run as the page lists them, with how each number came about.
#pragma once

#include "tools/output/report/json.h"
#include "tools/output/report/parts.h"
#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// An array of the type Reading of src/data.ts.
Json readings_json(const Run &run, const std::vector<Part> &parts, const RecordFacts &record);

/// An array of the type Warning; a run that stopped early says so here too.
Json warnings_json(const Run &run);

/// An array of the type Part.
Json parts_json(const std::vector<Part> &parts);

/// How good one reading is, in words; empty when its error was not estimated.
std::string error_words(const solver::Reading &reading);

/// What no calculation of this program represents; stands at the foot of every page.
const std::vector<std::string> &model_limits();
} // namespace solemech::tools::report
