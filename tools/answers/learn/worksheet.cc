// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/worksheet.h"

#include "tools/answers/learn/stack_figure.h"
#include "tools/output/report/page_template.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace solemech::tools::learn
{
namespace
{
using Json = nlohmann::json;

constexpr std::size_t drawn_stacks = 3;

// Type sizes in points: this is a sheet of paper first.
constexpr const char *style = R"(
:root { color-scheme: light dark; --paper: #fdfcf8; --ink: #1d2530; --faint: #6b7480; }
@media (prefers-color-scheme: dark) { :root { --paper: #15191f; --ink: #e8e6df; --faint: #9aa3ad; } }
body { background: var(--paper); color: var(--ink); font: 11pt/1.4 Georgia, "Times New Roman", serif; margin: 0; }
.sheet { max-width: 46rem; margin: 0 auto; padding: 1.5rem 1.25rem; }
h1 { font-size: 16pt; line-height: 1.25; margin: 0.3rem 0 0.6rem; }
h2 { font-size: 12pt; margin: 1rem 0 0.3rem; }
p { margin: 0.4rem 0; }
.names { display: flex; flex-wrap: wrap; gap: 1rem; color: var(--faint); }
.names span { flex: 1 1 12rem; border-bottom: 1px solid var(--faint); padding-bottom: 0.2rem; }
ol.choices { list-style: none; margin: 0.4rem 0; padding: 0; }
ol.choices li { margin: 0.35rem 0; padding-left: 3.2rem; position: relative; }
ol.choices .box { position: absolute; left: 0; top: 0.15rem; width: 0.85rem; height: 0.85rem;
  border: 1.5px solid currentColor; }
ol.choices .number { position: absolute; left: 1.5rem; }
ol.choices .right .box { background: currentColor; }
ol.choices .right { font-weight: bold; }
.blank { border-bottom: 1px solid var(--faint); height: 1.9rem; }
table { border-collapse: collapse; width: 100%; margin: 0.4rem 0; }
th, td { border: 1px solid currentColor; padding: 0.35rem 0.5rem; text-align: left; vertical-align: top; }
td.number { text-align: right; font-variant-numeric: tabular-nums; }
td.empty { height: 1.5rem; }
.stacks { display: grid; grid-template-columns: repeat(auto-fit, minmax(19rem, 1fr)); gap: 0.3rem 1rem; }
figure { margin: 0; }
figcaption { font-style: italic; }
svg.stack { display: block; width: 100%; max-width: 30rem; height: auto; margin: 0.2rem 0 0; }
svg.stack text { font: 14px Georgia, "Times New Roman", serif; fill: currentColor; }
svg.stack .air { fill: var(--paper); }
.caution { border: 1.5px solid currentColor; padding: 0.2rem 0.7rem; margin: 0.6rem 0; }
.caution p { margin: 0.2rem 0; }
.small { font-size: 9pt; color: var(--faint); }
.answers { border-top: 2px dashed var(--faint); }
@page { size: A4; margin: 14mm; }
@media print {
  :root { color-scheme: light; --paper: #fff; --ink: #000; --faint: #555; }
  body { font-size: 10pt; }
  .sheet { max-width: none; padding: 0; }
  .answers { break-before: page; border-top: none; }
  .stacks { grid-template-columns: 1fr 1fr; }
  .caution { font-size: 9pt; }
  table, figure, li { break-inside: avoid; }
}
)";

constexpr const char *pages = R"(<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<title>Worksheet: {{title}}</title>
<style>{{{style}}}</style>
</head>
<body>
<section class="sheet">
<p class="names"><span>Name</span><span>Date</span></p>
<h1>{{question}}</h1>
<ol class="choices">
{{#choices}}
<li><span class="box"></span><span class="number">{{number}}</span>{{text}}</li>
{{/choices}}
</ol>
<h2>My guess, and why</h2>
<div class="blank"></div><div class="blank"></div><div class="blank"></div>
<h2>What is tested</h2>
{{#setting}}
{{#rigs}}
<p class="small">{{.}}</p>
{{/rigs}}
<div class="stacks">
{{#stacks}}
<figure>{{{drawing}}}{{#name}}<figcaption>{{.}}</figcaption>{{/name}}</figure>
{{/stacks}}
</div>
{{/setting}}
<h2>What the runs read</h2>
{{#table}}
<table>
<thead><tr><th scope="col">run</th>{{#heads}}<th scope="col">{{.}}</th>{{/heads}}</tr></thead>
<tbody>
{{#rows}}
<tr><th scope="row">{{run}}</th>{{#cells}}{{#value}}<td class="empty"></td>{{/value}}{{^value}}<td>-</td>{{/value}}{{/cells}}</tr>
{{/rows}}
</tbody></table>
{{/table}}
{{#cautions}}
<div class="caution">
{{#list}}
<p>Caution: {{.}}</p>
{{/list}}
</div>
{{/cautions}}
<p class="small">{{capital_title}}. A model, not a measurement.{{#invented}} Invented demo stacks: the numbers describe no product.{{/invented}}</p>
</section>
<section class="sheet answers">
<h1>Answers</h1>
<p>{{question}}</p>
<ol class="choices">
{{#choices}}
<li{{#right}} class="right"{{/right}}><span class="box"></span><span class="number">{{number}}</span>{{text}}</li>
{{/choices}}
</ol>
<p>{{because}}</p>
{{#explanation}}
<p>{{.}}</p>
{{/explanation}}
<h2>What the runs read</h2>
{{#table}}
<table>
<thead><tr><th scope="col">run</th>{{#heads}}<th scope="col">{{.}}</th>{{/heads}}</tr></thead>
<tbody>
{{#rows}}
<tr><th scope="row">{{run}}</th>{{#cells}}{{#value}}<td class="number">{{.}}</td>{{/value}}{{^value}}<td>-</td>{{/value}}{{/cells}}</tr>
{{/rows}}
</tbody></table>
{{/table}}
<h2>How it was decided</h2>
{{#decided_by}}
<p>{{words}}: {{value}}</p>
{{/decided_by}}
<p>{{rule}}</p>
<p class="small">Outside of this program: {{source}}.</p>
<p class="small">solemech {{version}}, case {{label}}</p>
</section>
</body>
</html>
)";

std::string run_name(const CaseFile &file, const Run &run)
{
  return file.cases.size() > 1 && run.label.size() > file.label.size() + 1
           ? run.label.substr(file.label.size() + 1)
           : run.label;
}

Json choices(const LessonAnswer &answer)
{
  Json list = Json::array();
  for (std::size_t i = 0; i < answer.choices.size(); ++i)
    list.push_back({{"number", i + 1}, {"text", answer.choices[i]}, {"right", i == answer.right}});
  return list;
}

/// One row a run, one column a reading; a dash where the rig does not give the reading.
Json table(const CaseFile &file, const RunRecord &record)
{
  Json heads = Json::array(), rows = Json::array();
  for (const auto &name : file.lesson->readings)
  {
    const auto display = report::reading_display({name, 1e3, "", "", -1});
    heads.push_back(display.label + (display.unit.empty() ? "" : ", " + display.unit));
  }
  for (const auto &run : record.runs)
  {
    Json cells = Json::array();
    for (const auto &name : file.lesson->readings)
    {
      const auto *reading = run.result.find(name);
      const auto  display = reading ? report::reading_display(*reading) : report::ReadingDisplay();
      cells.push_back(
        {{"value",
          reading ? Json(fmt::format("{:.{}f}", reading->value * display.factor, display.digits)) : Json()}});
    }
    rows.push_back({{"run", run_name(file, run)}, {"cells", cells}});
  }
  return {{"heads", heads}, {"rows", rows}};
}

/// Runs whose numbers decide, in the order of the record; all of them when there is no such run.
std::vector<std::size_t> deciding_runs(const Lesson &lesson)
{
  std::set<std::size_t> runs;
  const auto            add = [&](const ReadingMeasure &measure) {
    runs.insert(measure.first.run);
    if (measure.kind != MeasureKind::single)
      runs.insert(measure.second.run);
  };
  if (lesson.measure)
    add(*lesson.measure);
  for (const auto &choice : lesson.choices)
    if (choice.measure)
      add(*choice.measure);
  return {runs.begin(), runs.end()};
}

/// Rigs and stacks of the runs that decide, none twice.
Json setting(const CaseFile &file, const RunRecord &record)
{
  const auto                        deciding = deciding_runs(*file.lesson);
  std::vector<const solver::Case *> setups;
  for (const auto i : deciding)
    setups.push_back(&record.runs[i].setup);
  std::vector<std::string> rigs;
  for (const auto *setup : setups)
    if (const auto rig = rig_text(*setup, Lengths::millimetre);
        rigs.size() < drawn_stacks && std::find(rigs.begin(), rigs.end(), rig) == rigs.end())
      rigs.push_back(rig);
  const Looks looks(record.runs);
  Json        stacks = Json::array();
  int         number = 0;
  for (const auto i : different_stacks(setups, drawn_stacks))
  {
    const auto name = run_name(file, record.runs[deciding[i]]);
    stacks.push_back(
      {{"drawing", stack_figure(record.runs[deciding[i]], looks,
                                fmt::format("Section through the stack of {}, to scale", name), number++)},
       {"name", setups.size() > 1 ? Json(name) : Json()}});
  }
  return {{"rigs", rigs}, {"stacks", stacks}};
}
} // namespace

std::string worksheet_html(const CaseFile &file, const LessonAnswer &answer, const RunRecord &record)
{
  std::vector<const solver::Case *> setups;
  for (const auto &run : record.runs)
    setups.push_back(&run.setup);
  const auto all_cautions = cautions(setups);
  Json       decided_by = Json::array();
  for (const auto &number : answer.decided_by)
    decided_by.push_back({{"words", number.words}, {"value", number.value}});
  const auto version = record.versions.find("solemech");
  return report::filled(pages,
                        {{"style", style},
                         {"title", answer.title},
                         {"capital_title", report::capital(answer.title)},
                         {"question", answer.question},
                         {"choices", choices(answer)},
                         {"setting", setting(file, record)},
                         {"table", table(file, record)},
                         {"cautions", all_cautions.empty() ? Json() : Json::object({{"list", all_cautions}})},
                         {"invented", is_invented(*setups.front())},
                         {"because", answer.because},
                         {"explanation", answer.explanation},
                         {"decided_by", decided_by},
                         {"rule", answer.rule},
                         {"source", answer.source},
                         {"version", version == record.versions.end() ? "" : version->second},
                         {"label", file.label}});
}
} // namespace solemech::tools::learn
