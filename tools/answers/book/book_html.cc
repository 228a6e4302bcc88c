// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "tools/answers/book/book_pages.h"
#include "tools/output/report/hash_source.h"
#include "tools/output/report/page_template.h"
#include "tools/output/report/reading_display.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cctype>
#include <string_view>

namespace solemech::book
{
namespace
{
using Json = nlohmann::json;

constexpr const char *style = R"(
:root { color-scheme: light dark; --paper: #fdfcf8; --ink: #1d2530; --faint: #6b7480; --line: #d8d4c8; }
@media (prefers-color-scheme: dark) { :root { --paper: #15191f; --ink: #e8e6df; --faint: #9aa3ad; --line: #3a414b; } }
body { background: var(--paper); color: var(--ink); font: 16px/1.4 Georgia, "Times New Roman", serif; margin: 1.5rem; }
h1 { font-size: 1.4rem; margin: 0 0 0.3rem; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; min-width: 60rem; }
th, td { border-bottom: 1px solid var(--line); padding: 0.4rem 0.6rem; text-align: left; vertical-align: top; }
th button { font: inherit; font-weight: bold; color: inherit; background: none; border: 0; padding: 0; cursor: pointer; }
th[aria-sort=ascending] button::after { content: " \2191"; }
th[aria-sort=descending] button::after { content: " \2193"; }
input { font: inherit; padding: 0.3rem; width: min(24rem, 100%); background: var(--paper); color: var(--ink);
  border: 1px solid var(--faint); }
.faint { color: var(--faint); }
ul { margin: 0; padding-left: 1.1rem; }
@media print { .filter { display: none; } }
)";

// Order and filter of rows; numbers stand in data-key.
constexpr const char *script = R"(
"use strict";
const table = document.querySelector("table"), body = table.tBodies[0], heads = [...table.tHead.rows[0].cells];
const key = (row, i) => row.cells[i].dataset.key ?? row.cells[i].textContent.trim().toLowerCase();
heads.forEach((head, i) => head.querySelector("button").addEventListener("click", () => {
  const down = head.getAttribute("aria-sort") === "ascending";
  heads.forEach((other) => other.removeAttribute("aria-sort"));
  head.setAttribute("aria-sort", down ? "descending" : "ascending");
  const rows = [...body.rows].map((row) => [key(row, i), row]);
  const compare = (a, b) => {
    if (a === "" || b === "") return (a === "") - (b === "");
    const order = isFinite(a) && isFinite(b) ? a - b : a.localeCompare(b, undefined, { numeric: true });
    return down ? -order : order;
  };
  rows.sort((a, b) => compare(a[0], b[0]));
  body.append(...rows.map((pair) => pair[1]));
}));
const filter = document.querySelector("input"), count = document.querySelector("output");
filter.addEventListener("input", () => {
  const words = filter.value.toLowerCase().split(/\s+/).filter(Boolean);
  let shown = 0;
  for (const row of body.rows) {
    const text = row.textContent.toLowerCase();
    row.hidden = !words.every((word) => text.includes(word));
    shown += !row.hidden;
  }
  count.textContent = `${shown} of ${body.rows.length} sheets`;
});
document.querySelector("main").dataset.ready = String(Math.round(performance.now()));
)";

constexpr const char *page = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '{{{script_hash}}}'; style-src '{{{style_hash}}}'; img-src data:; base-uri 'none'; form-action 'none'">
{{{mark}}}
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<link rel="icon" href="data:,">
<title>Book of {{folder}}</title>
<style>{{{style}}}</style>
</head>
<body>
<main>
<h1>Book of {{folder}}</h1>
<p>Measured: as written in the sheets. Model: calculated in the newest run. Settled: fitted to the readings; the two numbers are the ends of a 90 % band.{{#yardstick}} Points: by your own yardstick{{#title}}, {{.}}{{/title}}. They weigh readings and say nothing about feet or safety.{{/yardstick}}</p>
<p class="filter"><label>Show only rows with <input type="search"></label> <output aria-live="polite">{{n_sheets}} of {{n_sheets}} sheets</output></p>
<div class="scroll" tabindex="0" role="region" aria-label="Sheets">
<table>
<thead><tr>{{#heads}}<th scope="col"><button type="button">{{.}}</button></th>{{/heads}}</tr></thead>
<tbody>
{{#rows}}
<tr>
<td>{{pair}}</td>
<td>{{part}}</td>
<td><a href="{{address}}">{{file}}</a>{{#title}}<br><span class="faint">{{.}}</span>{{/title}}{{#problem}}<br>{{.}}{{/problem}}</td>
<td>{{stack}}</td>
<td>{{#measured}}<ul>{{#lines}}<li>{{.}}</li>{{/lines}}</ul>{{/measured}}</td>
{{#result}}
<td>{{#model}}<ul>{{#lines}}<li>{{.}}</li>{{/lines}}</ul>{{/model}}</td>
<td>{{#settled}}<ul>{{#lines}}<li>{{.}}</li>{{/lines}}</ul>{{/settled}}</td>
<td data-key="{{days}}"><a href="{{report}}">{{age}}</a>{{#changed}}<br>the sheet was changed since{{/changed}}{{#changes}}<br>with {{.}}{{/changes}}</td>
{{/result}}
{{^result}}
<td></td>
<td></td>
<td data-key=""><span class="faint">not run</span></td>
{{/result}}
{{#points}}
<td data-key="{{key}}">{{#total}}<b>{{.}}</b>{{/total}}{{^total}}none{{/total}}{{#reasons}}<ul>{{#lines}}<li>{{.}}</li>{{/lines}}</ul>{{/reasons}}</td>
{{/points}}
</tr>
{{/rows}}
</tbody>
</table>
</div>
</main>
<script>{{{script}}}</script>
</body>
</html>
)";

/// A computed value in the units of people.
std::string people(const Computed &reading)
{
  return tools::report::display_text({reading.name, reading.value, reading.unit, "", -1});
}

/// A relative address; names of files are no addresses as they stand.
std::string link(const std::filesystem::path &path)
{
  std::string address = "./";
  for (const unsigned char c : path.generic_string())
    address += std::isalnum(c) || std::string_view("/-_.~").find(char(c)) != std::string_view::npos
                 ? std::string(1, char(c))
                 : fmt::format("%{:02X}", c);
  return address;
}

/// Null when there are none: no list then.
Json list(const std::vector<std::string> &lines)
{
  return lines.empty() ? Json() : Json::object({{"lines", lines}});
}

Json unless_empty(const std::string &text)
{
  return text.empty() ? Json() : Json(text);
}

std::vector<std::string> model_lines(const Result &result)
{
  // The readings of the summary; the rest stands in the CSV file and in the report.
  using solver::catalogue;
  const std::pair<const solver::ReadingKind *, const char *> shown[] = {
    {&catalogue.rebound_height, "rebound"},
    {&catalogue.rebound_by_height, "return by height"},
    {&catalogue.peak_force, "peak force"},
    {&catalogue.greatest_compression, "compression"},
    {&catalogue.contact_time, "contact time"}};
  std::vector<std::string> lines;
  for (const auto &[kind, words] : shown)
    for (const auto &reading : result.readings)
      if (reading.name == *kind)
        lines.push_back(fmt::format("{} {}", words, people(reading)));
  return lines;
}

std::vector<std::string> settled_lines(const Result &result)
{
  std::vector<std::string> lines;
  for (const auto &number : result.settled)
    lines.push_back(fmt::format("{} {:.3g} ({:.3g} to {:.3g}){}", number.name, number.value, number.low,
                                number.high, number.doubt_left > 0.5 ? ", not pinned down" : ""));
  return lines;
}

std::string age(const std::optional<int> &days)
{
  return !days        ? "dated in the future"
         : *days < 1  ? "today"
         : *days == 1 ? "1 day"
                      : fmt::format("{} days", *days);
}

Json result_values(const Result &result, std::chrono::system_clock::time_point now)
{
  const auto days = days_old(result, now);
  return {{"model", list(model_lines(result))},
          {"settled", list(settled_lines(result))},
          {"days", days ? std::to_string(*days) : ""},
          {"report", link(result.folder / "report.html")},
          {"age", age(days)},
          {"changed", !result.same_sheet},
          {"changes", unless_empty(result.changes)}};
}

Json points_values(const Yardstick &yardstick, const Sheet &sheet)
{
  const auto               judged = judge(yardstick, sheet);
  std::vector<std::string> reasons;
  for (const auto &points : judged.categories)
    reasons.push_back(points.category + ": " + points.reason);
  return {{"key", judged.total ? fmt::format("{:.4f}", *judged.total) : ""},
          {"total", judged.total ? Json(fmt::format("{:.1f}", *judged.total)) : Json()},
          {"reasons", list(reasons)}};
}

Json row(const Sheet &sheet, const Yardstick *yardstick, std::chrono::system_clock::time_point now)
{
  std::vector<std::string> measured;
  for (const auto &reading : sheet.readings)
    measured.push_back(reading.text());
  return {{"pair", sheet.pair},
          {"part", sheet.part},
          {"address", link(sheet.file)},
          {"file", sheet.file.generic_string()},
          {"title", unless_empty(sheet.title)},
          {"problem", unless_empty(sheet.problem)},
          {"stack", sheet.stack},
          {"measured", list(measured)},
          {"result", sheet.result ? result_values(*sheet.result, now) : Json()},
          {"points", yardstick ? points_values(*yardstick, sheet) : Json()}};
}
} // namespace

std::string book_html(const Book &book, const Yardstick *yardstick, const std::string &folder,
                      std::chrono::system_clock::time_point now)
{
  Json heads{"pair", "part", "sheet", "stack", "measured", "model", "settled", "result"},
    rows = Json::array();
  if (yardstick)
    heads.push_back("points");
  for (const auto &sheet : book.sheets)
    rows.push_back(row(sheet, yardstick, now));
  return tools::report::filled(
    page, {{"script", script},
           {"script_hash", tools::report::hash_source(script)},
           {"style", style},
           {"style_hash", tools::report::hash_source(style)},
           {"mark", html_mark},
           {"folder", folder},
           {"yardstick", yardstick ? Json::object({{"title", unless_empty(yardstick->title)}}) : Json()},
           {"n_sheets", book.sheets.size()},
           {"heads", heads},
           {"rows", rows}});
}
} // namespace solemech::book
