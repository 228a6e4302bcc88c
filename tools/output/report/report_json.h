// SPDX-License-Identifier: Apache-2.0
// The blocks of a page that stand for themselves (chart, comparison, trial, lesson) as JSON in the shape of
// src/data.ts; report_json of report_page.h puts the page together.
#pragma once

#include "tools/output/report/json.h"
#include "tools/output/report/report_page.h"

namespace solemech::tools::report
{
Json series_json(const ChartSeries &series);
Json comparison_json(const Comparison &comparison);
Json tables_json(const std::vector<TableBlock> &blocks);
Json lines_json(const std::vector<rigs::LineBlock> &blocks);
Json trial_json(const Trial &trial);
Json lesson_json(const Lesson &lesson);
} // namespace solemech::tools::report
