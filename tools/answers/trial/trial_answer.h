// SPDX-License-Identifier: Apache-2.0
// A finished trial as people read it, ready for the terminal, JSON and the report page: rows, room, range,
// sentences, cautions. All sentences are computed from the numbers of this trial.
#pragma once

#include "tools/answers/trial/geometry_cost.h"
#include "tools/answers/trial/trial_rows.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// One point of the range.
struct RangePoint
{
  double                value = 0;                                     ///< in the unit of the range
  std::optional<double> rebound, peak_force, compression, travel_left; ///< SI; travel below 0: beyond its end
  std::string           layer;                                         ///< with the least travel left
  std::string           stopped;                                       ///< why there are no numbers
};

/// One reading over the range, of rigs that throw nothing back: gauges, slides, treads, wear, abrasion.
struct RangeColumn
{
  std::string                        reading, heading; ///< machine name, heading with its unit
  std::vector<std::optional<double>> values;           ///< SI, one a point
  std::vector<std::string>           cells;            ///< as printed
};

struct RangeAnswer
{
  std::string              address, quantity, unit;
  std::string              return_name; ///< "rebound", or "energy return" on a press
  std::vector<RangePoint>  points;
  std::vector<RangeColumn> columns; ///< in place of rebound, force and compression; empty: those are told
  std::vector<std::string> sentences;
  std::string              bottoms; ///< where in the range it bottoms
};

struct TrialAnswer
{
  std::string                label;
  std::vector<std::string>   settings, swaps;
  std::string                rig;
  std::string                sentence; ///< the answer in one
  std::vector<TrialRow>      rows;
  std::string                reserve_note; ///< of the rows that say where it bottoms
  std::vector<GeometryLine>  geometry;     ///< empty when only a range was asked for
  std::vector<std::string>   improves, gets_worse;
  std::string                nothing; ///< what is said where one of them is empty
  std::optional<RangeAnswer> range;
  std::vector<std::string>   notes; ///< what else to know of this change
  std::vector<std::string>   cautions;
};

TrialAnswer trial_answer(const TrialInput &trial, const TrialResult &result, const SummaryOptions &options);

/// Points, trends and the place where it bottoms.
RangeAnswer range_answer(const TrialRange &range, const std::vector<solver::Result> &results);
} // namespace solemech::tools
