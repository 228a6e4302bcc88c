// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/record_summary.h"

#include "tools/output/report/series_block.h"
#include "tools/output/results/text_layout.h"

namespace solemech::tools::report
{
std::string record_summary(const RunRecord &record, const SummaryOptions &options)
{
  if (!record.series || record.series->values.size() != record.runs.size())
    return summary_text(record.runs, options);
  std::vector<const Run *> runs;
  for (const Run &run : record.runs)
    runs.push_back(&run);
  const std::string said = chart_series(runs, *record.series).sentence;
  return (said.empty() ? "" : wrapped(said, static_cast<std::size_t>(options.width), "") + "\n\n") +
         summary_text(record.runs, options, &*record.series);
}
} // namespace solemech::tools::report
