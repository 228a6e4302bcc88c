// SPDX-License-Identifier: Apache-2.0
// From the values of a page to report.html: one file without outside references that a browser opens from
// disk.
#pragma once

#include "tools/output/report/report_blocks.h"

#include <string>

namespace solemech::tools::report
{
/// The page of one record: its runs, sentence, headline, story, cautions and, for a series, the chart. The
/// record must outlive it.
Page run_page(const RunRecord &record);

/// The same for runs of several records side by side, as a start for comparisons, trials and lessons: facts
/// of the record come from the first. `label` and `title` name the page.
Page side_by_side_page(const std::vector<const RunRecord *> &records, const std::string &label,
                       const std::string &title);

/// The values of the page as JSON text (the type Report of src/data.ts), as it stands in the page.
/// @throws solver::ResultsError naming the entry when a number is not finite
std::string report_json(const Page &page);

/// The whole file: values, script and style of the committed bundle, and a still version for readers without
/// scripts and for print. Text of users is escaped wherever it stands.
/// @throws solver::ResultsError as report_json
std::string report_html(const Page &page);
} // namespace solemech::tools::report
