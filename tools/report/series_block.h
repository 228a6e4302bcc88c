// SPDX-License-Identifier: Apache-2.0
// Several runs of one page: the chart over what a series varies, and what the runs say together. Two values
// that lie within their estimated errors of each other count as equal.
#pragma once

#include "tools/report/report_blocks.h"

#include <string>
#include <vector>

namespace solemech::tools::report
{
/// The chart of a series: rebound or return, peak force and compression of every run, and its sentence.
/// Runs without a reading (stopped early) leave that reading out for all.
ChartSeries chart_series(const std::vector<const Run *> &runs, const Series &series);

/// What a chart says: where two groups cross, or which way the readings go.
std::string series_sentence(const ChartSeries &series);

/// Where the first of two lines over the same places comes to lie above the second for good, by straight
/// lines between the points; none when it does not, or when it lies above from the start.
std::optional<double> crossing(const std::vector<double> &place, const std::vector<double> &first,
                               const std::vector<double> &second);

/// Several runs side by side in one sentence: which rebounds higher, which hits harder.
std::string together_sentence(const std::vector<const Run *> &runs);

/// Three numbers of several runs: all values up to four runs, else from least to greatest.
std::vector<Headline> together_headline(const std::vector<const Run *> &runs);
} // namespace solemech::tools::report
