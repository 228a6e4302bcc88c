// SPDX-License-Identifier: Apache-2.0
#include "tools/solemech/text_table.h"

#include <algorithm>
#include <cassert>
#include <sstream>

namespace solemech::tools
{
namespace
{
constexpr std::size_t gap            = 2;   // blanks between columns
constexpr std::size_t narrowest_room = 24;  // a last column squeezed further would be unreadable
} // namespace

TextTable::TextTable(std::vector<Align> columns)
  : columns_(std::move(columns))
{}

void TextTable::add_row(std::vector<std::string> cells)
{
  assert(cells.size() == columns_.size());
  rows_.push_back(std::move(cells));
}

std::string TextTable::text(std::size_t indent, std::size_t width) const
{
  std::vector<std::size_t> widths(columns_.size(), 0);
  for (const auto &row : rows_)
    for (std::size_t c = 0; c < row.size(); ++c)
      widths[c] = std::max(widths[c], n_characters(row[c]));

  std::size_t before_last = indent;
  for (std::size_t c = 0; c + 1 < widths.size(); ++c)
    before_last += widths[c] + gap;
  const bool        breaks = width > 0 && before_last + widths.back() > width;
  const std::size_t room   = std::max(narrowest_room, width > before_last ? width - before_last : 0);

  std::string text;
  for (const auto &row : rows_)
  {
    std::string line(indent, ' ');
    for (std::size_t c = 0; c < row.size(); ++c)
    {
      const bool        is_last = c + 1 == row.size();
      const std::string fill(widths[c] - n_characters(row[c]), ' ');
      if (is_last && breaks)
        for (const std::string &part : lines_of(row[c], room))
          line += (line.size() > before_last ? "\n" + std::string(before_last, ' ') : "") + part;
      else
        line += (columns_[c] == Align::right ? fill + row[c] : row[c] + fill) +
                std::string(is_last ? 0 : gap, ' ');
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

std::vector<std::string> lines_of(std::string_view text, std::size_t width)
{
  std::istringstream       words{std::string(text)};
  std::vector<std::string> lines;
  std::string              word;
  while (words >> word)
    if (lines.empty() || n_characters(lines.back()) + 1 + n_characters(word) > width)
      lines.push_back(word);
    else
      lines.back() += ' ' + word;
  return lines;
}
} // namespace solemech::tools
