// SPDX-License-Identifier: Apache-2.0
// A comparison with something outside the project: standard, handbook formula, open data, general-purpose
// library. A test fills it, fails if it does not hold, and leaves it as one row file in the build folder; the
// program external_checks gathers the rows into tests/external/CHECKS.md. One file per row, replaced in one
// move, so that tests may run side by side.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace solemech::tests
{
struct ExternalCheck
{
  std::string source;       ///< where the expected value comes from, e.g. "Lame, thick cylinder (handbook)"
  std::string what;         ///< quantity and conditions, e.g. "hoop stress at the bore"
  double      expected = 0; ///< in `unit`, not 0
  double      obtained = 0; ///< in `unit`
  double      relative_tolerance = 0; ///< on |expected| [-]; fixed with a reason, never to fit
  std::string unit{};                 ///< of both values, e.g. "N"; empty for a pure number

  double deviation() const; ///< |obtained - expected|/|expected| [-]
  bool   holds() const;
};

/// Folder of the build in which rows are left.
std::filesystem::path external_rows_folder();

/// Leaves a row. Throws std::logic_error for an expected value of 0, a tolerance that is not above 0, an
/// empty source or quantity, or a text with a line break or a `|`.
void leave_row(const ExternalCheck &check, const std::filesystem::path &folder = external_rows_folder());

/// All rows left in a folder, by source, then quantity.
std::vector<ExternalCheck> rows_left(const std::filesystem::path &folder = external_rows_folder());
} // namespace solemech::tests
