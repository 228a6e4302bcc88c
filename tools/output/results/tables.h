// SPDX-License-Identifier: Apache-2.0
// Comma-separated tables of a run for spreadsheets and scripts: SI, decimal point, shortest digits that
// read back to the same number.
#pragma once

#include "solver/results/result.h"

#include <string>

namespace solemech::tools
{
/// time and every curve: a heading row "name [unit]", one row per recorded time.
std::string curves_table(const solver::Result &result);

/// One column per ledger row, headed "part: kind (type) [J]".
std::string ledger_table(const solver::Result &result);

/// One row per reading: name, value, unit, error, meaning.
std::string readings_csv(const solver::Result &result);
} // namespace solemech::tools
