// SPDX-License-Identifier: Apache-2.0
// The answer for programs (`--json`): readings in SI with unit and estimated error, where the energy went,
// warnings, rig and facts. `schema` rises when an entry changes its name or meaning; new entries do not
// raise it. Every number is finite.
#pragma once

#include "tools/output/results/block_json.h"
#include "tools/output/results/run_record.h"

#include <string>

namespace solemech::tools
{
constexpr int json_schema = 1;

/// Readings by name: value, unit, meaning, and error and band where they are known.
Json readings_json(const solver::Result &result);

Json records_json(const std::vector<RunRecord> &records);

/// @throws solver::ResultsError naming the entry when a number is not finite
std::string json_text(const std::vector<RunRecord> &records);
} // namespace solemech::tools
