// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "tools/answers/book/book_pages.h"
#include "tools/output/report/hash_source.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/reading_display.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cctype>
#include <string_view>

namespace solemech::book
{
namespace
{
using tools::report::html;

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

std::string list(const std::vector<std::string> &lines)
{
  if (lines.empty())
    return {};
  std::string text = "<ul>";
  for (const auto &line : lines)
    text += "<li>" + html(line) + "</li>";
  return text + "</ul>";
}

std::string cell(const std::string &content, const std::string &key = "\x01")
{
  return key == "\x01" ? "<td>" + content + "</td>\n"
                       : "<td data-key=\"" + html(key) + "\">" + content + "</td>\n";
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
                                number.high, number.doubt_left > 0.5 ? ", still open" : ""));
  return lines;
}

std::string row(const Sheet &sheet, const Yardstick *yardstick, std::chrono::system_clock::time_point now)
{
  std::vector<std::string> measured;
  for (const auto &reading : sheet.readings)
    measured.push_back(reading.text());
  std::string text =
    "<tr>\n" + cell(html(sheet.pair)) + cell(html(sheet.part)) +
    cell("<a href=\"" + link(sheet.file) + "\">" + html(sheet.file.generic_string()) + "</a>" +
         (sheet.title.empty() ? "" : "<br><span class=\"faint\">" + html(sheet.title) + "</span>") +
         (sheet.problem.empty() ? "" : "<br>" + html(sheet.problem))) +
    cell(html(sheet.stack)) + cell(list(measured));
  if (sheet.result)
  {
    const auto &result = *sheet.result;
    const auto  days = days_old(result, now);
    text += cell(list(model_lines(result))) + cell(list(settled_lines(result)));
    text += cell("<a href=\"" + link(result.folder / "report.html") + "\">" +
                   (!days        ? "dated in the future"
                    : *days < 1  ? "today"
                    : *days == 1 ? "1 day"
                                 : fmt::format("{} days", *days)) +
                   "</a>" + (result.same_sheet ? "" : "<br>the sheet was changed since") +
                   (result.changes.empty() ? "" : "<br>with " + html(result.changes)),
                 days ? std::to_string(*days) : "");
  }
  else
    text += cell("") + cell("") + cell("<span class=\"faint\">not run</span>", "");
  if (yardstick)
  {
    const auto               judged = judge(*yardstick, sheet);
    std::vector<std::string> reasons;
    for (const auto &points : judged.categories)
      reasons.push_back(points.category + ": " + points.reason);
    text +=
      cell((judged.total ? fmt::format("<b>{:.1f}</b>", *judged.total) : std::string("none")) + list(reasons),
           judged.total ? fmt::format("{:.4f}", *judged.total) : "");
  }
  return text + "</tr>\n";
}
} // namespace

std::string book_html(const Book &book, const Yardstick *yardstick, const std::string &folder,
                      std::chrono::system_clock::time_point now)
{
  std::string text = fmt::format(
    "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
    "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src '{}'; style-src "
    "'{}'; "
    "img-src data:; base-uri 'none'; form-action 'none'\">\n{}\n"
    "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
    "<meta name=\"color-scheme\" content=\"light dark\">\n<link rel=\"icon\" href=\"data:,\">\n"
    "<title>Book of {}</title>\n<style>{}</style>\n</head>\n<body>\n<main>\n<h1>Book of {}</h1>\n",
    tools::report::hash_source(script), tools::report::hash_source(style), html_mark, html(folder), style,
    html(folder));
  text +=
    "<p>Measured: as the sheets say. Model: of the newest run, a calculation. Settled: what readings made of "
    "assumptions; 90 of 100 cases lie between the two numbers.";
  if (yardstick)
    text += " Points: by your own yardstick" +
            (yardstick->title.empty() ? "" : ", " + html(yardstick->title)) +
            "; they weigh readings and say nothing of feet or safety.";
  text += "</p>\n";
  text += fmt::format(
    "<p class=\"filter\"><label>Show only rows with <input type=\"search\"></label> "
    "<output aria-live=\"polite\">{0} of {0} sheets</output></p>\n"
    "<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"Sheets\">\n<table>\n<thead><tr>",
    book.sheets.size());
  std::vector<std::string> heads{"pair", "part", "sheet", "stack", "measured", "model", "settled", "result"};
  if (yardstick)
    heads.emplace_back("points");
  for (const auto &head : heads)
    text += "<th scope=\"col\"><button type=\"button\">" + head + "</button></th>";
  text += "</tr></thead>\n<tbody>\n";
  for (const auto &sheet : book.sheets)
    text += row(sheet, yardstick, now);
  return text + "</tbody>\n</table>\n</div>\n</main>\n<script>" + script + "</script>\n</body>\n</html>\n";
}
} // namespace solemech::book
