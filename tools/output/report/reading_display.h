// SPDX-License-Identifier: Apache-2.0
// How the page names and prints a reading: words of the trade, one display unit for all runs, decimals.
#pragma once

#include "solver/results/result.h"

#include <string>

namespace solemech::tools::report
{
struct ReadingDisplay
{
  std::string label;            ///< "peak force"
  std::string unit;             ///< "N"; "" for a pure number
  double      factor = 1;       ///< from SI to `unit`
  int         digits = 2;       ///< decimals
  bool        headline = false; ///< belongs to the numbers at the top of its rig
};

/// Looks a reading up by its machine name; one that is not known is shown under its name with spaces, in the
/// display unit of its SI unit.
ReadingDisplay reading_display(const solver::Reading &reading);

/// The value with its unit, "262 mm".
std::string display_text(const solver::Reading &reading);
} // namespace solemech::tools::report
