// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/report_page.h"

#include "tools/output/report/series_block.h"
#include "tools/output/report/story.h"
#include "tools/output/report/together.h"
#include "tools/output/results/cautions.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

namespace solemech::tools::report
{
namespace
{
std::vector<std::string> cautions_of(const std::vector<const Run *> &runs)
{
  std::vector<const solver::Case *> setups;
  for (const auto *run : runs)
    setups.push_back(&run->setup);
  auto texts = cautions(setups);
  for (auto &sentence : invented_sentences(labelled_cases(runs)))
    texts.push_back(std::move(sentence));
  texts.emplace_back("Local safety rules and the instructions of your tools come first. For pain or "
                     "numbness, ask a licensed foot professional.");
  return texts;
}

/// Charts that kinds of rig add, each of its own runs.
std::vector<rigs::LineBlock> rig_blocks(const std::vector<const Run *> &runs)
{
  std::vector<rigs::LineBlock> blocks;
  for (const auto *kind : rigs::kinds())
  {
    std::vector<const Run *> mine;
    for (const auto *run : runs)
      if (&rigs::kind_of(run->setup) == kind)
        mine.push_back(run);
    for (auto &block : kind->blocks(mine))
      blocks.push_back(std::move(block));
  }
  return blocks;
}

std::string record_title(const RunRecord &record)
{
  return record.runs.empty() ? record.label : rigs::title_of(record.runs.front());
}
} // namespace

Page side_by_side_page(const std::vector<const RunRecord *> &records, const std::string &label,
                       const std::string &title)
{
  Page page;
  page.label = label;
  page.title = title;
  for (const auto *record : records)
    for (const auto &run : record->runs)
      page.runs.push_back(&run);
  if (!records.empty())
  {
    const auto &first = *records.front();
    const auto  program = first.versions.find("solemech");
    page.record = {"solemech" + (program == first.versions.end() ? "" : " " + program->second),
                   first.versions, first.hash, first.case_text, first.canonical_text};
  }
  page.sentence = together_sentence(page.runs);
  page.headline = together_headline(page.runs);
  if (page.runs.size() == 1)
    page.story = story_of(*page.runs.front());
  else
  {
    const auto labels = rigs::short_labels(page.runs);
    for (std::size_t i = 0; i < page.runs.size(); ++i)
      page.story.push_back(labels[i] + ": " + sentence_of(*page.runs[i]));
  }
  page.cautions = cautions_of(page.runs);
  page.lines = rig_blocks(page.runs);
  return page;
}

Page run_page(const RunRecord &record)
{
  Page page = side_by_side_page({&record}, record.label, record_title(record));
  if (record.series && record.series->values.size() == record.runs.size())
  {
    page.series = chart_series(page.runs, *record.series);
    page.sentence = page.series->sentence;
    page.story = series_story(page.runs, *page.series);
  }
  return page;
}
} // namespace solemech::tools::report
