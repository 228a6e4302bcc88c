// SPDX-License-Identifier: Apache-2.0
// The file around values, script and style. Its content security policy allows this one script, by its
// checksum (CSP level 3, hash-source), inline styles, and pictures and clips that the page makes itself;
// nothing is loaded.
#include "tools/output/report/bundle.h"
#include "tools/output/report/hash_source.h"
#include "tools/output/report/page_template.h"
#include "tools/output/report/report_page.h"
#include "tools/output/report/still_view.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cctype>
#include <string_view>

namespace solemech::tools::report
{
namespace
{
constexpr const char *file = R"(<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '{{{script_hash}}}'; style-src 'unsafe-inline'; img-src data: blob:; media-src blob:; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<link rel="icon" href="data:,">
<title>{{title}}</title>
<style>
{{{style}}}
</style>
</head>
<body>
<main id="report"></main>
<noscript>
{{{still_view}}}</noscript>
<script type="application/json" id="report-data">{{{values}}}</script>
<script>{{{script}}}</script>
</body>
</html>
)";

/// The script with the texts that would end or confuse its element broken up; inside the strings and patterns
/// where they can stand, the backslash changes nothing.
std::string embeddable(std::string_view script)
{
  std::string text;
  for (std::size_t i = 0; i < script.size(); ++i)
  {
    const auto rest = script.substr(i);
    text += script[i];
    if (rest.starts_with("<!--") ||
        (rest.size() > 8 && rest.starts_with("</") &&
         std::equal(rest.begin() + 2, rest.begin() + 8, "script",
                    [](char a, char b) { return std::tolower(static_cast<unsigned char>(a)) == b; })))
      text += '\\';
  }
  // A browser reads CR LF as LF, which would change the checksum.
  text.erase(std::remove(text.begin(), text.end(), '\r'), text.end());
  return text;
}

std::string embeddable_style(std::string_view style)
{
  std::string text(style);
  // "</" has no meaning in a style sheet outside of strings, where the escape is the same character.
  for (std::size_t at = 0; (at = text.find("</", at)) != std::string::npos; at += 3)
    text.replace(at, 2, "<\\/");
  return text;
}
} // namespace

std::string report_html(const Page &page)
{
  const std::string script = embeddable(bundled_script());
  return filled(file, {{"script", script},
                       {"script_hash", hash_source(script)},
                       {"title", page.title.empty() ? page.label : page.title},
                       {"style", embeddable_style(bundled_style())},
                       {"still_view", still_view(page)},
                       {"values", report_json(page)}});
}
} // namespace solemech::tools::report
