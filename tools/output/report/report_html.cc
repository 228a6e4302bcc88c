// SPDX-License-Identifier: Apache-2.0
// The file around values, script and style. Its content security policy allows this one script, by its
// checksum (CSP level 3, hash-source), inline styles, and pictures and clips that the page makes itself;
// nothing is loaded.
#include "tools/output/report/bundle.h"
#include "tools/output/report/hash_source.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/report_page.h"
#include "tools/output/report/still_view.h"

#include <algorithm>
#include <cctype>
#include <string_view>

namespace solemech::tools::report
{
namespace
{
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
  return "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"
         "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src '" +
         hash_source(script) +
         "'; style-src 'unsafe-inline'; img-src data: blob:; media-src blob:; base-uri 'none'; form-action "
         "'none'\">\n"
         "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
         "<meta name=\"color-scheme\" content=\"light dark\">\n<link rel=\"icon\" href=\"data:,\">\n<title>" +
         html(page.title.empty() ? page.label : page.title) + "</title>\n<style>\n" +
         embeddable_style(bundled_style()) +
         "\n</style>\n</head>\n<body>\n<main id=\"report\"></main>\n<noscript>\n" + still_view(page) +
         "</noscript>\n<script type=\"application/json\" id=\"report-data\">" + report_json(page) +
         "</script>\n<script>" + script + "</script>\n</body>\n</html>\n";
}
} // namespace solemech::tools::report
