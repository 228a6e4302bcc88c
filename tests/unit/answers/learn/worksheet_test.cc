// SPDX-License-Identifier: Apache-2.0
// The worksheet: static, escaped, blanks first and answers on a page of their own.
#include "tests/support/catch.h"
#include "tools/answers/learn/lesson_page.h"
#include "tools/answers/learn/stack_figure.h"
#include "tools/answers/learn/worksheet.h"

#include "made_up_runs.h"

#include <cmath>

using namespace solemech;
using namespace solemech::tests;

namespace
{
tools::RunRecord record_of(const tools::CaseFile &file)
{
  tools::RunRecord record;
  record.label = "learn-" + file.label;
  record.versions = {{"solemech", "1.2.3 (<made up>)"}};
  record.runs = made_up_runs(file);
  return record;
}

std::string sheet_of(const tools::CaseFile &file)
{
  const auto record = record_of(file);
  return tools::learn::worksheet_html(file, tools::learn::answer_lesson(file, record.runs, std::nullopt),
                                      record);
}

std::size_t count(const std::string &text, const std::string &part)
{
  std::size_t n = 0;
  for (auto at = text.find(part); at != std::string::npos; at = text.find(part, at + part.size()))
    ++n;
  return n;
}
} // namespace

TEST_CASE("every worksheet is static, whole, and keeps its answers for the second page")
{
  for (const auto &file : committed_lessons())
  {
    INFO(file.label);
    const auto html = sheet_of(file);
    CHECK(html.find("<script") == std::string::npos);
    CHECK(html.find("http") == html.find("http-equiv")); // no address anywhere
    CHECK(html.find("default-src 'none'") != std::string::npos);
    CHECK(html.find("prefers-color-scheme: dark") != std::string::npos);
    CHECK(html.find("break-before: page") != std::string::npos);
    CHECK(count(html, "<section") == 2);
    CHECK(count(html, "<table>") == 2);
    for (const char *tag :
         {"section", "table", "tr", "p", "ol", "li", "svg", "figure", "h2", "span", "div", "defs", "text"})
    {
      INFO(tag);
      CHECK(count(html, std::string("<") + tag + ">") + count(html, std::string("<") + tag + " ") ==
            count(html, std::string("</") + tag + ">"));
    }
    const auto second = html.find("class=\"sheet answers\"");
    REQUIRE(second != std::string::npos);
    const auto first_page = html.substr(0, second), second_page = html.substr(second);
    CHECK(first_page.find("class=\"right\"") == std::string::npos);
    CHECK(first_page.find("class=\"blank\"") != std::string::npos);
    CHECK(first_page.find("td class=\"number\"") == std::string::npos);
    CHECK(first_page.find("Invented demo stacks") != std::string::npos);
    CHECK(first_page.find("Caution: ") != std::string::npos);
    CHECK(count(second_page, "class=\"right\"") == 1);
    CHECK(count(second_page, "td class=\"number\"") == count(first_page, "td class=\"empty\""));
    CHECK(html.find('{', html.find("<body>")) == std::string::npos);
  }
}

TEST_CASE("markup in texts of a case is shown, not obeyed")
{
  auto file =
    tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/thin-foam.toml", committed_options());
  file.title = "<script>alert(1)</script>";
  file.question = "\"><img src=x onerror=alert(1)>?";
  file.cases[0].layers[0].name = "<b>foam</b>";
  file.lesson->choices[0].text = "</li><h1>&";
  const auto html = sheet_of(file);
  CHECK(html.find("<script") == std::string::npos);
  CHECK(html.find("<img") == std::string::npos);
  CHECK(html.find("<b>") == std::string::npos);
  CHECK(html.find("&lt;/li&gt;&lt;h1&gt;&amp;") != std::string::npos);
  CHECK(html.find("&lt;made up&gt;") != std::string::npos);
}

TEST_CASE("the figure is to scale and shows stacks that differ")
{
  const auto file =
    tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/thin-foam.toml", committed_options());
  std::vector<const solver::Case *> setups;
  for (const auto &setup : file.cases)
    setups.push_back(&setup);
  CHECK(tools::learn::different_stacks(setups, 2) == std::vector<std::size_t>{0, 2});
  CHECK(tools::learn::different_stacks(setups, 5) == std::vector<std::size_t>{0, 1, 2});
  CHECK(tools::learn::different_stacks({setups[0], setups[0]}, 2) == std::vector<std::size_t>{0});
  // 24 mm of 2 x 44 mm in the shoe (puck radius and stack height): the box is 200 wide, so 54.5 high.
  const std::vector<tools::Run> runs{{"run", file.cases[0], {}}};
  const auto                    svg = tools::learn::stack_figure(runs[0], tools::Looks(runs), "a \"stack\"");
  CHECK(std::abs(file.cases[0].plug.radius - 0.044) < 1e-9);
  CHECK(svg.find("width=\"200.0\" height=\"54.5\"") != std::string::npos);
  CHECK(svg.find("aria-label=\"a &quot;stack&quot;\"") != std::string::npos);
}

TEST_CASE("the report page carries the lesson with its guess")
{
  const auto file =
    tools::read_case_file(std::string(SOLEMECH_SOURCE) + "/cases/learn/dead-unit.toml", committed_options());
  const auto record = record_of(file);
  const auto answer = tools::learn::answer_lesson(file, record.runs, 2);
  const auto page = tools::learn::lesson_page(answer, record);
  REQUIRE(page.lesson);
  CHECK(page.kind == tools::report::PageKind::lesson);
  CHECK(page.lesson->answer == answer.right);
  CHECK(page.lesson->guess == 2u);
  CHECK(page.lesson->choices.size() == 4);
  CHECK(page.runs.size() == 3);
  const auto json = tools::learn::lesson_json(answer, record);
  CHECK(json.find("\"guess\": 3") != std::string::npos);
  CHECK(json.find("\"answer\": " + std::to_string(answer.right + 1)) != std::string::npos);
}
