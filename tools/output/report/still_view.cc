// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/still_view.h"

#include "tools/language/number_text.h"
#include "tools/output/picture/section.h"
#include "tools/output/report/page_template.h"
#include "tools/output/report/reading_display.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace solemech::tools::report
{
namespace
{
using Json = nlohmann::json;

constexpr std::size_t drawn_runs = 2;    ///< of many, the first and the last
constexpr double      text_height = 3.2; ///< [mm]

std::string path_of(const std::vector<Polygon> &polygons, bool closed)
{
  fmt::memory_buffer text;
  auto               out = std::back_inserter(text);
  for (const auto &polygon : polygons)
  {
    for (std::size_t i = 0; i < polygon.size(); ++i)
      // y downwards on the page.
      fmt::format_to(out, "{}{:.2f} {:.2f}", i == 0 ? "M" : "L", polygon[i][0], -polygon[i][1]);
    if (closed)
      fmt::format_to(out, "Z");
  }
  return fmt::to_string(text);
}

void add_path(std::string &svg, const std::vector<Polygon> &polygons, bool closed, const char *fill,
              double line)
{
  if (!polygons.empty())
    svg += fmt::format(R"(<path d="{}" fill="{}" stroke="currentColor" stroke-width="{}"/>)",
                       path_of(polygons, closed), fill, line);
}

std::string drawing(const SectionDrawing &section, double shift, const std::string &caption)
{
  std::string svg = "<g transform=\"translate(" + fmt::format("{:.2f}", shift) + " 0)\">";
  for (const auto &part : section.parts)
  {
    add_path(svg, part.outlines, true, tone_colour(part.look.tone), 0.25);
    add_path(svg, part.hatch, false, "none", 0.1);
  }
  add_path(svg, section.cavities, true, "#ffffff", 0.25);
  if (!section.tup.empty())
    add_path(svg, {section.tup}, true, "#d5dadd", 0.3);
  svg += fmt::format(
    R"(<text x="0" y="{:.2f}" text-anchor="middle" font-size="{}" fill="currentColor">{}</text></g>)",
    1.8 * text_height, text_height, html(caption));
  return svg;
}

constexpr const char *view = R"(<h1>{{title}}</h1>
<p>{{sentence}}</p>
<ul>
{{#headline}}
<li><strong>{{name}}: {{value}}</strong> {{note}}</li>
{{/headline}}
</ul>
{{#story}}
<p>{{.}}</p>
{{/story}}
{{#runs}}
<h2>{{title}}</h2>
{{#stopped}}
<p><strong>Stopped early: {{.}}</strong></p>
{{/stopped}}
{{#warnings}}
<p>Note: {{.}}</p>
{{/warnings}}
{{{section}}}
<table>
{{#readings}}
<tr><th scope="row">{{label}}</th><td>{{value}}</td><td>{{meaning}}</td></tr>
{{/readings}}
</table>
{{/runs}}
{{#cautions}}
<p>Caution: {{.}}</p>
{{/cautions}}
<p>A model, not a measurement. This page shows more where scripts are allowed; it loads nothing from elsewhere.</p>
)";

/// The section of one run at rest and at its greatest compression as one SVG; empty without pictures.
std::string section_svg(const Run &run, const Looks &all_looks)
{
  const auto &picture = run.result.picture;
  const auto &shots = picture.snapshots;
  if (shots.empty() || picture.cells.empty())
    return "";
  const auto &squeezed = *std::min_element(shots.begin(), shots.end(), [&](const auto &a, const auto &b) {
    return std::abs(a.time - run.result.time_of_peak) < std::abs(b.time - run.result.time_of_peak);
  });
  const auto  looks = all_looks.of_picture(run);
  const auto  rest = draw_section(picture, shots.front(), looks),
             peak = draw_section(picture, squeezed, looks);
  const double width = std::max(rest.width, peak.width) + 6;
  double       top = rest.height;
  for (const auto &point : rest.tup)
    top = std::max(top, point[1]);
  const std::string peak_caption = "greatest compression, " + time_text(squeezed.time) + " after first touch";
  return fmt::format(R"(<svg class="still" role="img" aria-label="{}" viewBox="{:.1f} {:.1f} {:.1f} {:.1f}" )"
                     R"(xmlns="http://www.w3.org/2000/svg">)",
                     html("Section of " + run.label + " at rest and at greatest compression"), -width / 2,
                     -top - 1, 2 * width, top + 1 + 3 * text_height) +
         drawing(rest, 0, "at rest") + drawing(peak, width, peak_caption) + "</svg>";
}

Json run_values(const Run &run, const Looks &looks, bool with_section)
{
  Json warnings = Json::array(), readings = Json::array();
  for (const auto &warning : run.result.warnings)
    warnings.push_back(warning.text);
  for (const auto &reading : run.result.readings)
    readings.push_back({{"label", reading_display(reading).label},
                        {"value", display_text(reading)},
                        {"meaning", reading.meaning}});
  return {{"title", run.setup.title.empty() ? run.label : run.setup.title},
          {"stopped", run.result.complete ? Json() : Json(run.result.stop_reason)},
          {"warnings", warnings},
          {"section", with_section ? section_svg(run, looks) : ""},
          {"readings", readings}};
}
} // namespace

std::string still_view(const Page &page)
{
  Json        headline = Json::array(), runs = Json::array();
  const Looks looks(page.runs);
  for (const auto &number : page.headline)
    headline.push_back({{"name", number.name}, {"value", number.value}, {"note", number.note}});
  for (std::size_t i = 0; i < page.runs.size(); ++i)
    runs.push_back(run_values(*page.runs[i], looks,
                              page.runs.size() <= drawn_runs || i == 0 || i + 1 == page.runs.size()));
  return filled(view, {{"title", page.title},
                       {"sentence", page.sentence},
                       {"headline", headline},
                       {"story", page.story},
                       {"runs", runs},
                       {"cautions", page.cautions}});
}
} // namespace solemech::tools::report
