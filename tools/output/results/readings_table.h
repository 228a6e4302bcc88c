// SPDX-License-Identifier: Apache-2.0
// How a reading is printed: heading of the trade, unit for people, what stands beside it.
// One table serves the side-by-side summary, the one-row-a-run table and the pictures' titles.
#pragma once

#include "tools/language/number_text.h"
#include "tools/output/results/summary.h"

#include <functional>
#include <string>
#include <vector>

namespace solemech::tools
{
struct ReadingRow
{
  std::string              heading;       ///< e.g. "peak force"
  std::string              short_heading; ///< for narrow tables, e.g. "force kN"
  std::vector<std::string> readings;      ///< machine names it shows; warnings on these stand beside the row
  bool                     only_details = false;
  /// Cell of one run; empty when the run has no such reading.
  std::function<std::string(const Run &, const SummaryOptions &)> cell;
  /// The same as one bare number for narrow tables; null: not shown there.
  std::function<std::string(const Run &, const SummaryOptions &)> short_cell;
};

/// Rows in their order on the page, for drop and press runs alike.
const std::vector<ReadingRow> &reading_rows();

/// Points of the gauge of a case, with its scale: "58.6 Shore A".
std::string hardness_text(double points, const solver::Case &setup);

/// One line about the rig, with its masses, shapes and heights.
std::string rig_text(const solver::Case &setup, Lengths lengths);
} // namespace solemech::tools
