// SPDX-License-Identifier: Apache-2.0
// Files that a command writes beside those of a person and may write again.
#pragma once

#include <filesystem>
#include <string>

namespace solemech::tools
{
/// Replaces a file of ours in one step; one without `mark` in its head is somebody else's and is left alone.
/// @param command  that writes such files
/// @throws solver::ResultsError
void write_ours(const std::filesystem::path &path, const std::string &text, const std::string &mark,
                const std::string &command);
} // namespace solemech::tools
