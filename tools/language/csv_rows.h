// SPDX-License-Identifier: Apache-2.0
// The one reader of CSV files (RFC 4180), those of sensors and spreadsheets and our own, with the place of
// every field for messages. A row is a line: a line break inside of quotes is not followed, since a single
// stray quote would then swallow the rest of a recording. Written here because the C library of Debian for
// CSV tells no places.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
struct CsvRow
{
  std::string_view text; ///< without blanks and line end
  int              line = 0;
};

struct CsvField
{
  std::string text;       ///< without blanks and quotes round it; doubled quotes inside are one
  std::size_t column = 1; ///< of its first character in the row, in bytes from 1
};

/// The rows of a file one after another. Empty lines and those that begin with # are passed over, and so is
/// the mark of UTF-8 at the start.
class CsvRows
{
public:
  explicit CsvRows(std::string_view text);
  std::optional<CsvRow> next();

private:
  std::string_view rest_;
  int              line_ = 0;
};

std::vector<CsvField> csv_fields(std::string_view row, char separator = ',');

/// Tab, semicolon or comma, whichever of them the header has first in this order.
char separator_of(std::string_view header);

/// Without blanks and line ends at both ends.
std::string_view trimmed(std::string_view text);

/// A finite number with a decimal point and nothing else.
std::optional<double> number_in(std::string_view field);

/// A finite number whose decimals stand behind a comma, and nothing else.
std::optional<double> number_with_comma(std::string_view field);
} // namespace solemech::tools
