// SPDX-License-Identifier: Apache-2.0
// The chart of a series and what it says. Two values that lie within their estimated errors of each other
// count as equal.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// The chart of a series: rebound or return, peak force and compression of every run, and its sentence.
/// A reading that one of the runs lacks (stopped early) is left out for all.
ChartSeries chart_series(const std::vector<const Run *> &runs, const Series &series);

/// What a chart says: from where on one group lies above the other, or which way the readings go.
std::string series_sentence(const ChartSeries &series);

/// One paragraph a group: the course of its readings and where it bottoms.
std::vector<std::string> series_story(const std::vector<const Run *> &runs, const ChartSeries &series);

/// Where the first of two lines over the same places comes to lie above the second for good, by straight
/// lines between the points; none when it does not, or when it lies above from the start.
std::optional<double> crossing(const std::vector<double> &place, const std::vector<double> &first,
                               const std::vector<double> &second);
} // namespace solemech::tools::report
