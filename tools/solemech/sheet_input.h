// SPDX-License-Identifier: Apache-2.0
// Whether a command line names a bench sheet instead of plain cases.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// The sheet, when one is named. A sheet is answered alone.
/// @throws UsageError when it stands beside other files
std::optional<std::filesystem::path> sheet_among(const std::vector<std::string> &names);
} // namespace solemech::tools
