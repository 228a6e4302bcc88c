// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/worksheet.h"

#include "tools/answers/learn/stack_figure.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <set>

namespace solemech::tools::learn
{
using report::html;

namespace
{
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

std::string run_name(const CaseFile &file, const Run &run)
{
  return file.cases.size() > 1 && run.label.size() > file.label.size() + 1
           ? run.label.substr(file.label.size() + 1)
           : run.label;
}

std::string choices(const LessonAnswer &answer, bool with_answer)
{
  std::string text = "<ol class=\"choices\">\n";
  for (std::size_t i = 0; i < answer.choices.size(); ++i)
    text +=
      fmt::format("<li{}><span class=\"box\"></span><span class=\"number\">{}</span>{}</li>\n",
                  with_answer && i == answer.right ? " class=\"right\"" : "", i + 1, html(answer.choices[i]));
  return text + "</ol>\n";
}

/// One row a run, one column a reading; a dash where the rig does not give the reading.
std::string table(const CaseFile &file, const RunRecord &record, bool with_numbers)
{
  std::string text = "<table>\n<thead><tr><th scope=\"col\">run</th>";
  for (const auto &name : file.lesson->readings)
  {
    const auto display = report::reading_display({name, 1e3, "", "", -1});
    text += fmt::format("<th scope=\"col\">{}{}</th>", html(display.label),
                        display.unit.empty() ? "" : ", " + html(display.unit));
  }
  text += "</tr></thead>\n<tbody>\n";
  for (const auto &run : record.runs)
  {
    text += fmt::format("<tr><th scope=\"row\">{}</th>", html(run_name(file, run)));
    for (const auto &name : file.lesson->readings)
    {
      const auto *reading = run.result.find(name);
      if (!reading)
        text += "<td>-</td>";
      else if (!with_numbers)
        text += "<td class=\"empty\"></td>";
      else
      {
        const auto display = report::reading_display(*reading);
        text +=
          fmt::format("<td class=\"number\">{:.{}f}</td>", reading->value * display.factor, display.digits);
      }
    }
    text += "</tr>\n";
  }
  return text + "</tbody></table>\n";
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

std::string figures(const CaseFile &file, const RunRecord &record)
{
  const auto                        deciding = deciding_runs(*file.lesson);
  std::vector<const solver::Case *> setups;
  for (const auto i : deciding)
    setups.push_back(&record.runs[i].setup);
  std::string           text;
  std::set<std::string> rigs;
  for (const auto *setup : setups)
    if (const auto rig = rig_text(*setup, Lengths::millimetre);
        rigs.size() < drawn_stacks && rigs.insert(rig).second)
      text += fmt::format("<p class=\"small\">{}</p>\n", html(rig));
  text += "<div class=\"stacks\">\n";
  int number = 0;
  for (const auto i : different_stacks(setups, drawn_stacks))
  {
    const auto name = run_name(file, record.runs[deciding[i]]);
    text += fmt::format(
      "<figure>{}{}</figure>\n",
      stack_figure(*setups[i], fmt::format("Section through the stack of {}, to scale", name), number++),
      setups.size() > 1 ? fmt::format("<figcaption>{}</figcaption>", html(name)) : "");
  }
  return text + "</div>\n";
}

/// All cautions in one box.
std::string caution_box(const std::vector<const solver::Case *> &setups)
{
  std::string text;
  for (const auto &caution : cautions(setups))
    text += fmt::format("<p>Caution: {}</p>\n", html(caution));
  return text.empty() ? text : "<div class=\"caution\">\n" + text + "</div>\n";
}

std::string first_page(const CaseFile &file, const LessonAnswer &answer, const RunRecord &record,
                       const std::vector<const solver::Case *> &setups)
{
  std::string text = fmt::format(
    "<section class=\"sheet\">\n<p class=\"names\"><span>Name</span><span>Date</span></p>\n<h1>{}</h1>\n{}"
    "<h2>My guess, and why</h2>\n<div class=\"blank\"></div><div class=\"blank\"></div><div "
    "class=\"blank\"></div>\n"
    "<h2>What is tested</h2>\n{}<h2>What the runs read</h2>\n{}",
    html(answer.question), choices(answer, false), figures(file, record), table(file, record, false));
  return text + caution_box(setups) +
         fmt::format("<p class=\"small\">{}. A model, no measurement.{}</p>\n</section>\n",
                     html(report::capital(answer.title)),
                     is_invented(*setups.front()) ? " Invented demo stacks: the numbers describe no product."
                                                  : "");
}

std::string second_page(const CaseFile &file, const LessonAnswer &answer, const RunRecord &record)
{
  std::string text =
    fmt::format("<section class=\"sheet answers\">\n<h1>Answers</h1>\n<p>{}</p>\n{}<p>{}</p>\n",
                html(answer.question), choices(answer, true), html(answer.because));
  for (const auto &paragraph : answer.explanation)
    text += fmt::format("<p>{}</p>\n", html(paragraph));
  text += "<h2>What the runs read</h2>\n" + table(file, record, true) + "<h2>How it was decided</h2>\n";
  for (const auto &number : answer.decided_by)
    text += fmt::format("<p>{}: {}</p>\n", html(number.words), html(number.value));
  text += fmt::format("<p>{}</p>\n<p class=\"small\">Outside of this program: {}.</p>\n", html(answer.rule),
                      html(answer.source));
  const auto version = record.versions.find("solemech");
  return text + fmt::format("<p class=\"small\">solemech {}, case {}</p>\n</section>\n",
                            html(version == record.versions.end() ? "" : version->second), html(file.label));
}
} // namespace

std::string worksheet_html(const CaseFile &file, const LessonAnswer &answer, const RunRecord &record)
{
  std::vector<const solver::Case *> setups;
  for (const auto &run : record.runs)
    setups.push_back(&run.setup);
  return fmt::format(
    "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src "
    "'unsafe-inline'\">\n<title>Worksheet: {}</title>\n<style>{}</style>\n</head>\n<body>\n{}{}"
    "</body>\n</html>\n",
    html(answer.title), style, first_page(file, answer, record, setups), second_page(file, answer, record));
}
} // namespace solemech::tools::learn
