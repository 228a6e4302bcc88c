// SPDX-License-Identifier: Apache-2.0
// The newest finished run of a sheet below the folder of a book: of the sheet alone, of a file with both
// parts of a pair, or of two sheets that were settled together.
#pragma once

#include "tools/answers/book/book_entries.h"

#include <filesystem>
#include <optional>
#include <string>

namespace solemech::book
{
/// @param sheet_text  as the file holds it now
/// @param part        of a file with both parts of a pair; empty: the file is one sheet
std::optional<Result> newest_result(const std::filesystem::path &root, const std::filesystem::path &sheet,
                                    const std::string &sheet_text, const std::string &part);
} // namespace solemech::book
