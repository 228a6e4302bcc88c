// SPDX-License-Identifier: Apache-2.0
// The file as a browser meets it: valid values, escaped texts, a policy that names this script, nothing from
// outside.
#include "solver/results/result_check.h"
#include "tests/support/catch.h"
#include "tests/unit/output/results/synthetic.h"
#include "tools/output/report/report_page.h"

#include <nlohmann/json.hpp>
#include <openssl/evp.h>
#include <openssl/sha.h>

#include <limits>

using namespace solemech;
using Catch::Matchers::Contains;
using tools::report::report_html;
using tools::report::report_json;
using tools::report::run_page;

namespace
{
std::string between(const std::string &text, const std::string &open, const std::string &close,
                    std::size_t from = 0)
{
  const auto begin = text.find(open, from);
  REQUIRE(begin != std::string::npos);
  const auto end = text.find(close, begin + open.size());
  REQUIRE(end != std::string::npos);
  return text.substr(begin + open.size(), end - begin - open.size());
}

nlohmann::json values_in(const std::string &html)
{
  return nlohmann::json::parse(between(html, "id=\"report-data\">", "</script>"));
}

std::size_t count(const std::string &text, const std::string &what)
{
  std::size_t n = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1))
    ++n;
  return n;
}
} // namespace

TEST_CASE("the page holds its values, one script and one style")
{
  const auto record = tests::record_of({tests::synthetic_heel()}, "heel-drop");
  const auto html = report_html(run_page(record));
  CHECK_THAT(html, Contains("<main id=\"report\"></main>"));
  const auto values = values_in(html);
  CHECK(values.at("format") == 1);
  CHECK(values.at("kind") == "run");
  CHECK(values.at("runs").size() == 1);
  CHECK(values.at("headline").size() == 3);
  CHECK(values.at("series").is_null());
  CHECK(values.at("record").at("hash") == record.hash);
  CHECK(values.at("record").at("caseText") == record.case_text);
  CHECK(count(html, "<script") == 2);
  CHECK(count(html, "</script") == 2);
  CHECK_THAT(between(html, "<noscript>", "</noscript>"), Contains("<svg") && Contains("at rest"));
}

TEST_CASE("the policy allows this script by its checksum and nothing from outside")
{
  const auto html = report_html(run_page(tests::record_of({tests::synthetic_heel()})));
  const auto policy = between(html, "Content-Security-Policy\" content=\"", "\"");
  const auto script = between(html, "<script>", "</script>", html.find("report-data"));
  // The checksum by the library's own one-call functions, past the code under test.
  unsigned char digest[SHA256_DIGEST_LENGTH], text[64];
  SHA256(reinterpret_cast<const unsigned char *>(script.data()), script.size(), digest);
  const int size = EVP_EncodeBlock(text, digest, SHA256_DIGEST_LENGTH);
  CHECK_THAT(policy, Contains("script-src 'sha256-" + std::string(text, text + size) + "'"));
  CHECK_THAT(policy, Contains("default-src 'none'"));
  CHECK_THAT(policy, !Contains("http"));
  CHECK(count(html, " src=") == 0);
}

TEST_CASE("texts with markup, quotes and bytes that are no UTF-8 stay texts")
{
  auto run = tests::synthetic_heel("</script><b>label");
  run.setup.title = "</script><img src=x onerror=alert(1)> \"quoted\" & 'single' \xff\xfe \x01 <!-- ";
  run.setup.layers[1].name = "core<i>";
  run.result.warnings.push_back({"peak_force", "<svg onload=alert(2)>"});
  run.changes = {"core.thickness = <script>alert(3)</script>"};
  auto record = tests::record_of({run}, "<b>bench</b>");
  record.case_text = "title = \"</script><script>alert(4)</script>\" \xc3\x28";
  const auto html = report_html(run_page(record));
  CHECK(count(html, "<img") == 0);
  CHECK(count(html, "<svg onload") == 0);
  CHECK(count(html, "<b>") == 0);
  CHECK(count(html, "<script") == 2);
  CHECK(count(html, "</script") == 2);
  const auto values = values_in(html);
  CHECK_THAT(values.at("title").get<std::string>(), Contains("</script><img src=x onerror=alert(1)>"));
  CHECK_THAT(between(html, "<title>", "</title>"),
             Contains("&lt;/script&gt;") && Contains("&quot;quoted&quot;"));
  CHECK_THAT(values.at("title").get<std::string>(), Contains("\xEF\xBF\xBD")); // U+FFFD for what is no UTF-8
}

TEST_CASE("a number that is not finite is named and refused")
{
  auto page = run_page(tests::record_of({}, "empty"));
  page.comparison.emplace_back();
  page.comparison[0].readings.push_back({"peak_force", "peak force", "N", 0, 1149, 1209, 20, "higher"});
  CHECK_NOTHROW(report_json(page));
  page.comparison[0].readings[0].to = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_WITH(report_json(page), Contains("comparison[0].readings[0].to"));
  CHECK_THROWS_AS(report_json(page), solver::ResultsError);
}

TEST_CASE("blocks of other pages come through under the names of the contract")
{
  using namespace tools::report;
  const auto record = tests::record_of({tests::synthetic_heel()});
  auto       page = run_page(record);
  page.kind = PageKind::trial;
  Trial trial;
  trial.swaps = {"insert = pp-semirigid 2 mm"};
  trial.rows = {{"rebound", "262 mm", "265 mm", "no real change", Verdict::same}};
  trial.range = ChartSeries{
    "gauge pressure", "kPa", {80, 200}, {"", ""}, {{"peak_force", "peak force", "N", {1, 2}}}, "s"};
  page.trial = trial;
  page.lesson = Lesson{"Which?", {"a", "b"}, 1, {"because"}, std::nullopt};
  const auto values = nlohmann::json::parse(report_json(page));
  CHECK(values.at("kind") == "trial");
  CHECK(values.at("trial").at("rows")[0].at("verdict") == "same");
  CHECK(values.at("trial").at("range").at("readings")[0].at("values")[1] == 2);
  CHECK(values.at("lesson").at("answer") == 1);
  CHECK(values.at("lesson").at("guess").is_null());
}

TEST_CASE("a record without runs still makes a page")
{
  const auto values = values_in(report_html(run_page(tests::record_of({}, "nothing"))));
  CHECK(values.at("runs").empty());
  CHECK(values.at("title") == "nothing");
}
