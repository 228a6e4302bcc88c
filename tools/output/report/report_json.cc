// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/report_json.h"

#include "solver/results/result_check.h"
#include "tools/output/report/frames_block.h"
#include "tools/output/report/readings_block.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/report/section_block.h"
#include "tools/output/report/story.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr std::size_t moving_runs =
  4; ///< of more runs only the first and the last move, or the file grows too large

const char *name_of(PageKind kind)
{
  switch (kind)
  {
  case PageKind::comparison:
    return "comparison";
  case PageKind::trial:
    return "trial";
  case PageKind::lesson:
    return "lesson";
  case PageKind::run:
    break;
  }
  return "run";
}

Json run_json(const Run &run, const RecordFacts &record, bool moves)
{
  const auto parts = parts_of(run);
  return {{"label", run.label},
          {"title", run.setup.title.empty() ? run.label : run.setup.title},
          {"rig", rig_text(run.setup, Lengths::millimetre)},
          {"changes", run.changes},
          {"complete", run.result.complete},
          {"stopReason", run.result.stop_reason},
          {"readings", readings_json(run, parts, record)},
          {"warnings", warnings_json(run)},
          {"parts", parts_json(parts)},
          {"section", section_json(run, parts)},
          {"curves", curves_json(run)},
          {"energy", energy_json(run, parts)},
          {"frames", moves ? frames_json(run) : Json(nullptr)},
          {"captions", captions_json(run)}};
}

Json record_json(const RecordFacts &record)
{
  Json versions = Json::array();
  for (const auto &[name, version] : record.versions)
    versions.push_back({{"name", name}, {"version", version}});
  return {{"program", record.program},    {"versions", std::move(versions)},      {"hash", record.hash},
          {"caseText", record.case_text}, {"resolvedText", record.resolved_text}, {"limits", model_limits()}};
}

/// JSON has no word for what is not finite; the library would write null in silence.
void require_finite(const Json &value, const std::string &place)
{
  if (value.is_number_float() && !std::isfinite(value.get<double>()))
    throw solver::ResultsError("report: " + place + " is not a finite number; nothing was written");
  if (value.is_object())
    for (const auto &[name, entry] : value.items())
      require_finite(entry, place.empty() ? name : place + "." + name);
  else if (value.is_array())
    for (std::size_t i = 0; i < value.size(); ++i)
      if (value[i].is_structured() || value[i].is_number_float())
        require_finite(value[i], fmt::format("{}[{}]", place, i));
}
} // namespace

std::string report_json(const Page &page)
{
  Json runs = Json::array(), comparison = Json::array(), headline = Json::array();
  for (std::size_t i = 0; i < page.runs.size(); ++i)
    runs.push_back(run_json(*page.runs[i], page.record,
                            page.runs.size() <= moving_runs || i == 0 || i + 1 == page.runs.size()));
  for (const auto &one : page.comparison)
    comparison.push_back(comparison_json(one));
  for (const auto &one : page.headline)
    headline.push_back({{"name", one.name}, {"value", one.value}, {"note", one.note}});
  const Json report = {{"format", 1},
                       {"kind", name_of(page.kind)},
                       {"title", page.title},
                       {"label", page.label},
                       {"origin", page.origin == Origin::model ? "model" : "measured"},
                       {"invented", invented_words(labelled_cases(page.runs))},
                       {"sentence", page.sentence},
                       {"headline", std::move(headline)},
                       {"story", page.story},
                       {"runs", std::move(runs)},
                       {"series", page.series ? series_json(*page.series) : Json(nullptr)},
                       {"comparison", std::move(comparison)},
                       {"tables", tables_json(page.tables)},
                       {"lines", lines_json(page.lines)},
                       {"trial", page.trial ? trial_json(*page.trial) : Json(nullptr)},
                       {"lesson", page.lesson ? lesson_json(*page.lesson) : Json(nullptr)},
                       {"cautions", page.cautions},
                       {"record", record_json(page.record)}};
  require_finite(report, "");
  // Texts come from files and may hold any bytes; `<` must not end the script element they stand in.
  const std::string plain = report.dump(-1, ' ', false, Json::error_handler_t::replace);
  std::string       safe;
  safe.reserve(plain.size());
  for (const char c : plain)
    if (c == '<')
      safe += "\\u003c";
    else
      safe += c;
  return safe;
}
} // namespace solemech::tools::report
