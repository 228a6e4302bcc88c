// SPDX-License-Identifier: Apache-2.0
#include "tools/program/text_table.h"

#include "tools/output/results/text_layout.h"

#include <algorithm>
#include <cassert>

namespace solemech::tools
{
namespace
{
constexpr std::size_t gap = 2;             // blanks between columns
constexpr std::size_t narrowest_room = 24; // a last column squeezed further would be unreadable

/// Breaks a cell to `room` characters a line; lines after the first start at column `start`.
std::string hanging(const std::string &cell, std::size_t room, std::size_t start)
{
  std::string text;
  for (const char c : wrapped(cell, room, ""))
    text += c == '\n' ? '\n' + std::string(start, ' ') : std::string(1, c);
  return text;
}
} // namespace

TextTable::TextTable(std::vector<Align> columns) : columns_(std::move(columns)) {}

void TextTable::add_row(std::vector<std::string> cells)
{
  assert(cells.size() == columns_.size());
  rows_.push_back(std::move(cells));
}

std::string TextTable::text(std::size_t indent, std::size_t width) const
{
  const std::size_t        last = columns_.size() - 1;
  std::vector<std::size_t> widths(columns_.size(), 0);
  for (const auto &row : rows_)
    for (std::size_t c = 0; c <= last; ++c)
      widths[c] = std::max(widths[c], columns(row[c]));

  std::size_t last_start = indent;
  for (std::size_t c = 0; c < last; ++c)
    last_start += widths[c] + gap;
  const bool        breaks = width > 0 && last_start + widths[last] > width;
  const std::size_t room = std::max(narrowest_room, width > last_start ? width - last_start : 0);

  std::string text;
  for (const auto &row : rows_)
  {
    std::string line(indent, ' ');
    for (std::size_t c = 0; c < last; ++c)
      line += (columns_[c] == Align::right ? pad_left(row[c], widths[c]) : pad_right(row[c], widths[c])) +
              std::string(gap, ' ');
    if (breaks)
      line += hanging(row[last], room, last_start);
    else
      line += columns_[last] == Align::right ? pad_left(row[last], widths[last]) : row[last];
    line.erase(line.find_last_not_of(' ') + 1);
    text += line + '\n';
  }
  return text;
}
} // namespace solemech::tools
