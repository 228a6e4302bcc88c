// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/output/results/run_record.h"

#include <filesystem>

namespace solemech::tools
{
/// Puts the results of a finished folder to the runs that they belong to.
/// @throws solver::ResultsError when the folder does not hold them
void read_back(RunRecord &record, const std::filesystem::path &finished);
} // namespace solemech::tools
