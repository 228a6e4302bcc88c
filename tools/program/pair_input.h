// SPDX-License-Identifier: Apache-2.0
// The pair that a command line names, and where its answer is kept. Both executables use it.
#pragma once

#include "tools/answers/pair/read_pair.h"
#include "tools/output/results/run_record.h"
#include "tools/program/pair_request.h"
#include "tools/program/plan_request.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Files of a settled pair that hold a ready answer.
inline constexpr const char *pair_summary = "summary.txt", *pair_details = "data/details.txt",
                            *pair_values = "pair.json";

/// With the library and the prepared cases.
/// @param settings  as after --set
/// @throws materials::CaseError with every mistake
Pair pair_named(const std::vector<std::string> &files, const std::vector<std::string> &settings = {});

/// The one sheet of a plan, or both of a pair.
/// @throws materials::CaseError with every mistake
std::vector<Sheet> planned_sheets(const PlanRequest &request);

/// Label, fingerprint, versions, folder and changes; no run yet.
RunRecord pair_record(const Pair &pair);

/// The finished folder of this pair by this version, untouched since: the one named, or the newest below
/// results.
std::optional<std::filesystem::path> finished_pair(const RunRecord &record, const PairRequest &request);
} // namespace solemech::tools
