// SPDX-License-Identifier: Apache-2.0
// The case of a finished run, read again from the texts in its folder.
#pragma once

#include "tools/language/case_file.h"

#include <filesystem>

namespace solemech::tools
{
/// True when the path is a folder with the manifest of a finished run.
bool is_run_folder(const std::filesystem::path &path);

/// Its case file with the changes made to it, as read now.
/// @param options  case roots and library; changes are taken from the folder
/// @throws solver::ResultsError when the folder does not hold a run, or when what is read now is not what was
/// run
CaseFile finished_case(const std::filesystem::path &folder, ReadOptions options);
} // namespace solemech::tools
