// SPDX-License-Identifier: Apache-2.0
// Whether a command line names a bench sheet instead of plain cases.
#pragma once

#include "tools/answers/sheet/sheet.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// The sheet, when one is named. A sheet is answered alone.
/// @throws UsageError when it stands beside other files
std::optional<std::filesystem::path> sheet_among(const std::vector<std::string> &names);

/// The sheet, with the library and the prepared cases.
/// @param settings  as after --set
/// @throws materials::CaseError with every slip
Sheet settleable_sheet(const std::filesystem::path &path, const std::vector<std::string> &settings);

/// Of everything that the answer of a sheet follows from: its text and data files, the stack and rig they
/// resolve to, and what is assumed of the unknown numbers.
std::string sheet_fingerprint(const Sheet &sheet);

/// The folder with the answer to this sheet by this program version, untouched since: the one named, or the
/// newest below results.
std::optional<std::filesystem::path> finished_sheet(const Sheet                                &sheet,
                                                    const std::optional<std::filesystem::path> &output);
} // namespace solemech::tools
