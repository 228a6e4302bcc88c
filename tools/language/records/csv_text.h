// SPDX-License-Identifier: Apache-2.0
// The text side of a CSV record: fields, numbers, and what spreadsheets make of them.
#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace solemech::records
{
/// Without blanks, line ends and quotation marks at both ends.
std::string_view trimmed(std::string_view text);

/// Trimmed fields of a row.
std::vector<std::string_view> split(std::string_view row, char separator);

/// A finite number with a decimal point and nothing else.
std::optional<double> number_in(std::string_view field);

/// A finite number whose decimals stand behind a comma, and nothing else.
std::optional<double> number_with_comma(std::string_view field);

/// Length of the valid UTF-8 start of `text`; all of it when it is valid throughout. Overlong forms are not
/// looked for.
std::size_t valid_utf8(std::string_view text);

/// Tab, semicolon or comma, whichever of them the header has first in this order.
char separator_of(std::string_view header);
} // namespace solemech::records
