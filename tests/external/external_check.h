// SPDX-License-Identifier: Apache-2.0
// A comparison with something outside the project: standard, handbook formula, open data, general-purpose
// library. A test fills it, fails if it does not hold, and keeps it; when its program ends, the rows kept are
// compared with those that the committed table tests/external/CHECKS.md lists for this program. With
// SOLEMECH_WRITE_CHECKS set in the environment they are written there instead.
#pragma once

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

/// Throws std::logic_error for an expected value of 0, a tolerance that is not above 0, an empty source or
/// quantity, or a text with a line break or a `|`.
void validate(const ExternalCheck &check);

/// Keeps a row, validated, for the end of the program.
void keep_row(const ExternalCheck &check);
} // namespace solemech::tests
