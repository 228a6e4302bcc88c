// SPDX-License-Identifier: Apache-2.0
// What `solemech compare` sets against each other: prebuilt cases, case files, and folders of finished runs,
// each with a name of its own.
#pragma once

#include "tools/output/results/run_record.h"
#include "tools/program/compare_request.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct ComparedCase
{
  std::string  label; ///< unique among those compared
  solver::Case setup;
};

struct CompareInputs
{
  std::vector<ComparedCase> cases; ///< at least two; a file with series gives several
  RunRecord record; ///< label, texts, hash and versions of the comparison; its runs are still empty
};

/// Reads and checks them all.
/// @throws UsageError when there are fewer than two cases
/// @throws materials::CaseError, MissingPart as read_inputs
/// @throws solver::ResultsError when a folder is no finished run or cannot be read as a case any more
CompareInputs read_compare_inputs(const CompareRequest &request);
} // namespace solemech::tools
