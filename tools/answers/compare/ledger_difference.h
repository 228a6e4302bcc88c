// SPDX-License-Identifier: Apache-2.0
// Where 100 % of the energy went in two runs, part by part, with the layers put side by side that answer to
// each other. Of a layer everything counts: its ring, its film, its gas.
#pragma once

#include "solver/results/result.h"
#include "tools/answers/compare/changes.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct PartDifference
{
  std::string name;             ///< "core -> unit", "guide", "thrown back"
  double      from = 0, to = 0; ///< share of the energy put in [-]
};

/// Thrown back first, parts foot side first, guide, left in the stack. Empty without a ledger. The rows of a
/// run add up to what its ledger accounts for.
std::vector<PartDifference> ledger_difference(const ChangePlan &plan, const solver::Result &a,
                                              const solver::Result &b);
} // namespace solemech::tools
