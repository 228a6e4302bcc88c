// SPDX-License-Identifier: Apache-2.0
// The table of outside checks as markdown. Every row belongs to the test program that makes it, which alone
// compares it and writes it: no test depends on what others left behind.
#pragma once

#include "tests/external/external_check.h"

#include <map>
#include <string>
#include <utility>
#include <vector>

namespace solemech::tests
{
class ChecksTable
{
public:
  explicit ChecksTable(const std::string &text = {});

  /// The whole text of CHECKS.md, rows by source, then quantity.
  std::string text() const;

  /// What differs between the table and the rows that a test program made, one sentence each; empty when all
  /// is well. Values may move by a tenth of the row's tolerance: processors, libraries and threads differ in
  /// late digits, and iterations and time steps chosen by them in earlier ones. Rows that were not made count
  /// only in a complete run.
  std::vector<std::string> differences(const std::string &program, const std::vector<ExternalCheck> &rows,
                                       bool complete) const;

  /// Takes the rows of a test program in; those that agree stay as they are printed. In a complete run the
  /// rows of this program that were not made go.
  void replace(const std::string &program, const std::vector<ExternalCheck> &rows, bool complete);

private:
  using Key = std::pair<std::string, std::string>; ///< source, quantity
  std::map<Key, std::vector<std::string>> rows_;   ///< cells as printed
};
} // namespace solemech::tests
