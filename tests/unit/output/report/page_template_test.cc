// SPDX-License-Identifier: Apache-2.0
// Values in a page: texts stay texts, and what is not there leaves nothing behind.
#include "tests/support/catch.h"
#include "tools/output/report/page_template.h"

#include <nlohmann/json.hpp>

using solemech::tools::report::filled;
using solemech::tools::report::html;

TEST_CASE("texts are escaped, markup is put in as it is, bytes that are no UTF-8 are replaced")
{
  CHECK(
    filled("<p title=\"{{text}}\">{{{markup}}}</p>", {{"text", "<b> & \"5\" 'x'"}, {"markup", "<i>y</i>"}}) ==
    "<p title=\"&lt;b&gt; &amp; &quot;5&quot; &apos;x&apos;\"><i>y</i></p>");
  CHECK(html("a\xFF<\x01") == "a\xEF\xBF\xBD&lt;\xEF\xBF\xBD");
  CHECK(filled("{{{value}}}", {{"value", "{{other}}"}, {"other", "no"}}) ==
        "{{other}}"); // a value is no template
}

TEST_CASE("lists repeat, objects and texts show once, null and an empty list not at all")
{
  const std::string page = "{{#list}}[{{.}}]{{/list}}{{#one}}({{name}}){{/one}}{{#word}}<{{.}}>{{/word}}"
                           "{{^word}}none{{/word}}";
  CHECK(filled(page, {{"list", {"a", "b"}}, {"one", nlohmann::json::object({{"name", 3}})}, {"word", "w"}}) ==
        "[a][b](3)<w>");
  CHECK(filled(page, {{"list", nlohmann::json::array()}, {"one", nullptr}, {"word", nullptr}}) == "none");
  CHECK_THROWS_AS(filled("{{#open}}", nlohmann::json::object()), std::logic_error);
}
