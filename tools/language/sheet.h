// SPDX-License-Identifier: Apache-2.0
// From the bytes of a sheet (case, stack, rig or material file, all TOML) to a table with positions. The text
// is looked through before the TOML parser sees it: what people slip on most gets a message of its own, is
// mended in a copy, and reading goes on so that the other problems of the file are found in the same pass.
#pragma once

#include "tools/language/problem.h"

#include <toml++/toml.h>

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::materials
{
/// Largest sheet taken [bytes]. The longest of ours has some 5 kB; more is a mistake or an attack.
constexpr std::size_t largest_sheet = 1'000'000;

/// Text of a file. A missing, unreadable, empty, too large or non-regular file becomes a problem and gives
/// "".
std::string read_sheet_text(const std::filesystem::path &path, Problems &problems);

/// Every *.toml file of a folder, in the order of names. Throws std::filesystem::filesystem_error.
std::vector<std::filesystem::path> sheet_files(const std::filesystem::path &folder);

/// Table of a sheet. `file` is the name for messages. Notes every slip in `problems`; when the parser cannot
/// go on the table is empty. Checks that `format = 1` is there.
toml::table parse_sheet(const std::string &text, const std::string &file, Problems &problems);
} // namespace solemech::materials
