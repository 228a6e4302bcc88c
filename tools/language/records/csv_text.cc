// SPDX-License-Identifier: Apache-2.0
#include "tools/language/records/csv_text.h"

#include <charconv>
#include <cmath>
#include <string>

namespace solemech::records
{
std::string_view trimmed(std::string_view text)
{
  const auto begin = text.find_first_not_of(" \t\r\"");
  return begin == text.npos ? std::string_view()
                            : text.substr(begin, text.find_last_not_of(" \t\r\"") - begin + 1);
}

std::vector<std::string_view> split(std::string_view row, char separator)
{
  std::vector<std::string_view> fields;
  for (std::size_t begin = 0;;)
  {
    const auto end = row.find(separator, begin);
    fields.push_back(trimmed(row.substr(begin, end == row.npos ? row.npos : end - begin)));
    if (end == row.npos)
      return fields;
    begin = end + 1;
  }
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

std::size_t valid_utf8(std::string_view text)
{
  for (std::size_t i = 0; i < text.size();)
  {
    const auto        byte = static_cast<unsigned char>(text[i]);
    const std::size_t more = byte < 0x80       ? 0
                             : byte >> 5 == 6  ? 1
                             : byte >> 4 == 14 ? 2
                             : byte >> 3 == 30 ? 3
                                               : 9;
    if (more == 9 || i + more >= text.size() + (more == 0))
      return i;
    for (std::size_t k = 1; k <= more; ++k)
      if (static_cast<unsigned char>(text[i + k]) >> 6 != 2)
        return i;
    i += more + 1;
  }
  return text.size();
}

char separator_of(std::string_view header)
{
  for (const char c : {'\t', ';'})
    if (header.find(c) != header.npos)
      return c;
  return ',';
}
} // namespace solemech::records
