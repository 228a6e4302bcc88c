// SPDX-License-Identifier: Apache-2.0
// SHA-256 (FIPS 180-4) of texts and files, as 64 lower-case hexadecimal digits.
#pragma once

#include <filesystem>
#include <string>
#include <string_view>

namespace solemech::tools
{
std::string sha256_of_text(std::string_view text);

/// @throws solver::ResultsError when the file cannot be read
std::string sha256_of_file(const std::filesystem::path &path);
} // namespace solemech::tools
