// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/trial_page.h"

#include "solver/results/catalogue.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/report/report_page.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
/// The page says "no real change" and "cannot tell" itself; a change is neither better nor worse to it.
report::TrialRow page_row(const TrialRow &row)
{
  const auto  verdict = row.note.empty()              ? report::Verdict::fact
                        : row.trend == Trend::same    ? report::Verdict::same
                        : row.trend == Trend::unknown ? report::Verdict::unknown
                                                      : report::Verdict::fact;
  std::string note = row.note;
  for (const char *told : {"no real change ", "cannot tell: "})
    if (note.starts_with(told))
      note.erase(0, std::string(told).size());
  return {row.name, row.now, row.then, note, verdict};
}

/// Readings of rigs that throw nothing back, at most as many as a page shows beside each other.
void add_columns(report::ChartSeries &series, const RangeAnswer &range)
{
  constexpr std::size_t shown_readings = 3;
  for (const auto &point : range.points)
    if (point.stopped.empty())
    {
      series.values.push_back(point.value);
      series.groups.emplace_back("");
    }
  for (const auto &column : range.columns)
  {
    const auto            display = report::reading_display({column.reading, 0, "", "", -1});
    report::SeriesReading reading{column.reading, display.label, display.unit, {}};
    for (std::size_t i = 0; i < range.points.size(); ++i)
      if (range.points[i].stopped.empty() && column.values[i])
        reading.values.push_back(*column.values[i] * display.factor);
    if (reading.values.size() == series.values.size() && series.readings.size() < shown_readings)
      series.readings.push_back(std::move(reading));
  }
}

void add_blows(report::ChartSeries &series, const RangeAnswer &range)
{
  using solver::catalogue;
  report::SeriesReading back{catalogue.rebound_by_height, range.return_name, "%", {}},
    force{catalogue.peak_force, "peak force", "kN", {}},
    compression{catalogue.greatest_compression, "compression", "mm", {}};
  for (const auto &point : range.points)
    if (point.rebound && point.peak_force && point.compression)
    {
      series.values.push_back(point.value);
      series.groups.emplace_back("");
      back.values.push_back(100 * *point.rebound);
      force.values.push_back(1e-3 * *point.peak_force);
      compression.values.push_back(1e3 * *point.compression);
    }
  series.readings = {back, force, compression};
}

report::ChartSeries page_series(const RangeAnswer &range)
{
  report::ChartSeries series;
  series.quantity = range.quantity;
  series.unit = range.unit;
  if (range.columns.empty())
    add_blows(series, range);
  else
    add_columns(series, range);
  for (const auto &sentence : range.sentences)
    series.sentence += (series.sentence.empty() ? "" : " ") + sentence;
  return series;
}

std::string bottoms_text(const TrialAnswer &answer)
{
  std::string text;
  for (const auto &row : answer.rows)
    if (row.reading.starts_with("bottoming_") && row.reading != solver::catalogue.bottoming_margin)
      text += fmt::format("{}It {} of {}{}.", text.empty() ? "" : " ", row.name, row.now,
                          row.then.empty() ? "" : " before, " + row.then + " after");
  text += (text.empty() ? "" : " ") + answer.reserve_note;
  if (answer.range)
    text += (text.empty() ? "" : " ") + answer.range->bottoms;
  return text;
}

/// "262 mm" of "262 mm  65 %".
std::string short_cell(const std::string &cell)
{
  return cell.substr(0, cell.find("  "));
}

std::vector<rigs::Headline> headlines(const TrialAnswer &answer)
{
  using solver::catalogue;
  std::vector<rigs::Headline> list;
  for (const auto &row : answer.rows)
    if (row.reading == catalogue.rebound_by_height || row.reading == catalogue.loop_return ||
        row.reading == catalogue.peak_force || row.reading == catalogue.greatest_compression)
    {
      const auto now = short_cell(row.now), then = short_cell(row.then);
      if (then.empty())
        list.push_back({row.name, now, row.note});
      else
        list.push_back({row.name, now + " / " + then, row.note, {now, then}});
    }
  return list;
}
} // namespace

report::Page trial_page(const TrialAnswer &answer, const RunRecord &record)
{
  const std::string title = answer.swaps.empty() ? "range on " + answer.label
                                                 : fmt::format("{}: {}", answer.label, listed(answer.swaps));
  auto              page = report::side_by_side_page({&record}, record.label, title);
  page.kind = report::PageKind::trial;
  page.sentence = answer.sentence;
  page.headline = headlines(answer);
  std::vector<std::string> story;
  if (!answer.swaps.empty())
  {
    const auto told = [&](const std::vector<std::string> &items) {
      return items.empty() ? answer.nothing : listed(items);
    };
    story.push_back(
      fmt::format("What improves: {}. What gets worse: {}.", told(answer.improves), told(answer.gets_worse)));
  }
  story.insert(story.end(), answer.notes.begin(), answer.notes.end());
  page.story.insert(page.story.begin(), story.begin(), story.end());
  page.cautions = answer.cautions;

  report::Trial trial;
  trial.swaps = answer.swaps;
  for (const auto &row : answer.rows)
    trial.rows.push_back(page_row(row));
  trial.geometry = answer.geometry;
  if (answer.range)
    trial.range = page_series(*answer.range);
  trial.bottoms = bottoms_text(answer);
  trial.cautions = answer.cautions;
  page.trial = std::move(trial);
  return page;
}
} // namespace solemech::tools
