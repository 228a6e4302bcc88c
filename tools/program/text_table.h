// SPDX-License-Identifier: Apache-2.0
// A table in plain text: columns as wide as their widest cell, two blanks between them.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace solemech::tools
{
enum class Align { left, right };

class TextTable
{
public:
  /// One alignment per column; rows must have as many cells.
  explicit TextTable(std::vector<Align> columns);

  void add_row(std::vector<std::string> cells);

  /// The rows in order, each indented and ended by a line break.
  /// @param width  columns of the page; the last column is broken between words to fit. 0: never broken
  std::string text(std::size_t indent = 0, std::size_t width = 0) const;

private:
  std::vector<Align>                    columns_;
  std::vector<std::vector<std::string>> rows_;
};

} // namespace solemech::tools
