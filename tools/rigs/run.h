// SPDX-License-Identifier: Apache-2.0
// One run of a case: what a kind of rig, a summary or a page is asked about.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <string>
#include <vector>

namespace solemech::tools
{
struct Run
{
  std::string              label; ///< short, unique in the record
  solver::Case             setup;
  solver::Result           result;
  std::vector<std::string> changes =
    {}; ///< made to the case file for this run, e.g. "core.thickness = 18 mm"
  std::vector<std::string> assumed =
    {}; ///< entries left at their defaults, e.g. "plug.base bonded"; empty when not known
};
} // namespace solemech::tools
