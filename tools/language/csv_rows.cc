// SPDX-License-Identifier: Apache-2.0
#include "tools/language/csv_rows.h"

#include <algorithm>
#include <charconv>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr const char *blanks = " \t\r";

/// Where the field ends that begins at `begin`: at a separator outside of quotes, or at the end of the row.
std::size_t end_of_field(std::string_view row, std::size_t begin, char separator)
{
  const auto opening = row.find_first_not_of(' ', begin);
  auto       at = begin;
  if (opening != row.npos && row[opening] == '"')
  {
    auto closing = row.find('"', opening + 1);
    while (closing != row.npos && row.substr(closing).starts_with("\"\""))
      closing = row.find('"', closing + 2);
    if (closing != row.npos) // else a stray quote
      at = closing;
  }
  return std::min(row.find(separator, at), row.size());
}

/// What stands in a field.
std::string content(std::string_view field)
{
  if (!field.starts_with('"'))
    return std::string(field);
  field.remove_prefix(1);
  if (field.ends_with('"'))
    field.remove_suffix(1);
  std::string text;
  for (std::size_t i = 0; i < field.size(); ++i)
  {
    text += field[i];
    if (field.substr(i).starts_with("\"\""))
      ++i;
  }
  return text;
}
} // namespace

CsvRows::CsvRows(std::string_view text) : rest_(text)
{
  if (rest_.starts_with("\xEF\xBB\xBF"))
    rest_.remove_prefix(3);
}

std::optional<CsvRow> CsvRows::next()
{
  while (!rest_.empty())
  {
    const auto end = rest_.find('\n');
    const auto row = trimmed(rest_.substr(0, end));
    rest_ = end == rest_.npos ? std::string_view() : rest_.substr(end + 1);
    ++line_;
    if (!row.empty() && row.front() != '#')
      return CsvRow{row, line_};
  }
  return std::nullopt;
}

std::vector<CsvField> csv_fields(std::string_view row, char separator)
{
  std::vector<CsvField> fields;
  for (std::size_t begin = 0;; ++begin)
  {
    const auto end = end_of_field(row, begin, separator);
    const auto field = trimmed(row.substr(begin, end - begin));
    const auto at = field.empty() ? begin : static_cast<std::size_t>(field.data() - row.data());
    fields.push_back({std::string(trimmed(content(field))), at + 1});
    if (end == row.size())
      return fields;
    begin = end;
  }
}

char separator_of(std::string_view header)
{
  for (const char c : {'\t', ';'})
    if (header.find(c) != header.npos)
      return c;
  return ',';
}

std::string_view trimmed(std::string_view text)
{
  const auto begin = text.find_first_not_of(blanks);
  return begin == text.npos ? std::string_view()
                            : text.substr(begin, text.find_last_not_of(blanks) - begin + 1);
}

std::optional<double> number_in(std::string_view field)
{
  if (!field.empty() && field.front() == '+')
    field.remove_prefix(1);
  double     value = 0;
  const auto result = std::from_chars(field.data(), field.data() + field.size(), value);
  if (result.ec != std::errc() || result.ptr != field.data() + field.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

std::optional<double> number_with_comma(std::string_view field)
{
  std::string dotted(field);
  const auto  comma = dotted.find(',');
  if (comma == dotted.npos || dotted.find('.') != dotted.npos)
    return std::nullopt;
  dotted[comma] = '.';
  return number_in(dotted);
}
} // namespace solemech::tools
