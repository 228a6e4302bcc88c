// SPDX-License-Identifier: Apache-2.0
// The table of outside checks as markdown, and the comparison of a committed table with the rows of a run.
#pragma once

#include "tests/external/external_check.h"

#include <string>
#include <vector>

namespace solemech::tests
{
/// The whole text of CHECKS.md.
std::string checks_table(const std::vector<ExternalCheck> &rows);

/// What differs between a committed table and the rows of a run, one sentence each; empty when all is well.
/// Rows, expected values, tolerances and verdicts must agree as printed. An obtained value may move by 5 % of
/// its tolerance or one unit in the sixth digit, whichever is larger: processors differ in their last digits.
std::vector<std::string> table_differences(const std::string                &committed,
                                           const std::vector<ExternalCheck> &rows);
} // namespace solemech::tests
