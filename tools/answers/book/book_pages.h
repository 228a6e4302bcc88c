// SPDX-License-Identifier: Apache-2.0
// The book as files: one page for any browser, without network, and one table for spreadsheets.
#pragma once

#include "tools/answers/book/book_entries.h"
#include "tools/answers/book/yardstick.h"

namespace solemech::book
{
/// Marks of our own files: a file of that name without its mark is somebody else's and stays.
inline constexpr const char *html_mark = "<meta name=\"generator\" content=\"solemech book\">";
inline constexpr const char *csv_mark = "sheet,pair,part,title,stack,";

/// Sortable by each column, with a filter; the policy allows this script and this style by their checksums
/// alone.
/// @param yardstick  nullptr: no points
std::string book_html(const Book &book, const Yardstick *yardstick, const std::string &folder,
                      std::chrono::system_clock::time_point now);

/// One row a sheet, one column a reading (as written) and a number (SI); RFC 4180. Text that a spreadsheet
/// would take for a formula gets an apostrophe in front.
std::string book_csv(const Book &book, const Yardstick *yardstick, std::chrono::system_clock::time_point now);

/// Whole days since the result was made; nothing when its date lies in the future.
std::optional<int> days_old(const Result &result, std::chrono::system_clock::time_point now);
} // namespace solemech::book
