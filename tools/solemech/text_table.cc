// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/text_table.h"

#include <algorithm>
#include <cassert>
#include <sstream>

namespace solemech::tools
{
TextTable::TextTable(std::vector<Align> columns)
  : columns_(std::move(columns))
{}

void TextTable::add_row(std::vector<std::string> cells)
{
  assert(cells.size() == columns_.size());
  rows_.push_back(std::move(cells));
}

std::string TextTable::text(std::size_t indent) const
{
  std::vector<std::size_t> widths(columns_.size(), 0);
  for (const auto &row : rows_)
    for (std::size_t c = 0; c < row.size(); ++c)
      widths[c] = std::max(widths[c], n_characters(row[c]));

  std::string text;
  for (const auto &row : rows_)
  {
    std::string line(indent, ' ');
    for (std::size_t c = 0; c < row.size(); ++c)
    {
      const std::string fill(widths[c] - n_characters(row[c]), ' ');
      line += (c > 0 ? "  " : "") + (columns_[c] == Align::right ? fill + row[c] : row[c] + fill);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + '\n';
  }
  return text;
}

std::size_t n_characters(std::string_view text)
{
  return std::count_if(text.begin(), text.end(), [](unsigned char c) { return (c & 0xC0) != 0x80; });
}

std::string wrapped(std::string_view text, std::size_t width, std::size_t indent)
{
  std::istringstream words{std::string(text)};
  std::string        result, word;
  std::size_t        column = 0;
  while (words >> word)
  {
    if (column > 0 && column + 1 + n_characters(word) > width)
    {
      result += '\n' + std::string(indent, ' ');
      column = indent;
    }
    else if (column > 0)
    {
      result += ' ';
      ++column;
    }
    result += word;
    column += n_characters(word);
  }
  return result;
}
} // namespace solemech::tools
