// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/report_page.h"
#include "tools/output/results/block_json.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/facts.h"

namespace solemech::tools::report
{
std::vector<Version> versions_of(const RecordFacts &record)
{
  std::vector<Version> versions;
  for (const auto &[name, version] : record.versions)
    versions.push_back({name, version});
  return versions;
}

RunBlock run_block(const Run &run, const std::string &title, const RecordFacts &record, const Looks &looks,
                   bool moves)
{
  const auto parts = parts_of(run);
  return {run.label,
          title,
          rig_text(run.setup, Lengths::millimetre),
          run.changes,
          run.result.complete,
          run.result.stop_reason,
          reading_blocks(run, parts, record),
          warning_blocks(run),
          part_blocks(parts, looks),
          section_block(run, parts),
          curves_block(run),
          gas_blocks(run, parts),
          energy_block(run, parts),
          moves ? frames_block(run, parts) : std::nullopt,
          captions_block(run)};
}

std::vector<RunBlock> run_blocks(const Page &page)
{
  constexpr std::size_t moving_runs = 4;
  const auto           &runs = page.runs;
  const Looks           looks(runs);
  const auto            titles = rigs::titles_apart(runs);
  std::vector<RunBlock> blocks;
  for (std::size_t i = 0; i < runs.size(); ++i)
    blocks.push_back(run_block(*runs[i], titles.empty() ? rigs::title_of(*runs[i]) : titles[i], page.record,
                               looks, runs.size() <= moving_runs || i == 0 || i + 1 == runs.size()));
  return blocks;
}

std::string invented_of(const Page &page)
{
  return invented_words(labelled_cases(page.runs));
}

std::string report_json(const Page &page)
{
  const std::string plain = text_of(json_of(page));
  std::string       safe;
  safe.reserve(plain.size());
  for (const char c : plain)
    if (c == '<') // must not end the script element that the values stand in
      safe += "\\u003c";
    else
      safe += c;
  return safe;
}
} // namespace solemech::tools::report
