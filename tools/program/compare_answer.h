// SPDX-License-Identifier: Apache-2.0
// Where a comparison is kept, and its answer from there. Both executables use it.
#pragma once

#include "tools/output/results/run_folder.h"
#include "tools/output/results/run_record.h"
#include "tools/program/command_line.h"

#include <filesystem>
#include <optional>

namespace solemech::tools
{
/// Files of a comparison that hold a ready answer.
inline constexpr const char *comparison_summary = "summary.txt", *comparison_details = "data/details.txt",
                            *comparison_values = "data/comparison.json";

/// The finished folder of this comparison by this version, untouched since.
std::optional<std::filesystem::path> finished_comparison(const CompareRequest &request,
                                                         const RunRecord      &record);

/// A fresh folder: results/<label>/<number>, or the one that was asked for.
/// @throws solver::ResultsError
RunFolder fresh_comparison(const CompareRequest &request, const RunRecord &record);

/// Prints the answer that a finished folder holds.
void print_finished_comparison(const std::filesystem::path &folder, const CompareRequest &request);
} // namespace solemech::tools
