// SPDX-License-Identifier: Apache-2.0
#include "tools/output/drawing/svg_sheet.h"

#include "tools/language/shown_text.h"
#include "tools/output/picture/plot_text.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr double tile = 3; ///< side of a tile of a hatch [mm]

std::string path_of(const Frame &frame, const Polygon &points, bool closed)
{
  std::string path;
  for (const auto &point : points)
    path += fmt::format("{}{:.2f} {:.2f}", path.empty() ? "M" : "L", frame.x + point[0], frame.y - point[1]);
  return path + (closed ? "Z" : "");
}

std::string stroke(const SvgSheet::Line &line)
{
  auto text =
    fmt::format("stroke=\"{}\" stroke-width=\"{:g}\"", line.faint ? "#8a8577" : plot::ink, line.width);
  if (!line.dashes.empty())
    text += fmt::format(" stroke-dasharray=\"{}\"", line.dashes);
  return text;
}
} // namespace

std::string escaped(std::string_view text)
{
  std::string safe;
  for (const char c : materials::shown_text(text))
    switch (c)
    {
    case '&':
      safe += "&amp;";
      break;
    case '<':
      safe += "&lt;";
      break;
    case '>':
      safe += "&gt;";
      break;
    case '"':
      safe += "&quot;";
      break;
    default:
      safe += c;
    }
  return safe;
}

std::string SvgSheet::fill(const Look &look)
{
  auto &name = names_[{look.tone, look.hatch}];
  if (!name.empty())
    return name;
  const auto id = fmt::format("look{}", names_.size());
  patterns_ += fmt::format("<pattern id=\"{}\" width=\"{}\" height=\"{}\" patternUnits=\"userSpaceOnUse\">"
                           "<rect width=\"{}\" height=\"{}\" fill=\"{}\"/>",
                           id, tile, tile, tile, tile, tone_colour(look.tone));
  for (auto line : hatch_lines(look.hatch))
  {
    for (auto &point : line)
      point = {point[0] * tile / hatch_tile, point[1] * tile / hatch_tile};
    patterns_ += fmt::format("<path d=\"{}\" fill=\"none\" stroke=\"{}\" stroke-width=\"0.15\"/>",
                             path_of({0, tile}, line, false), plot::ink);
  }
  patterns_ += "</pattern>\n";
  return name = fmt::format("url(#{})", id);
}

void SvgSheet::area(const Frame &frame, const Polygon &outline, const Look &look, bool edge)
{
  body_ += fmt::format("<path d=\"{}\" fill=\"{}\" {}/>\n", path_of(frame, outline, true), fill(look),
                       edge ? stroke({}) : std::string("stroke=\"none\""));
}

void SvgSheet::hollow(const Frame &frame, const Polygon &outline, bool of_paper, const Line &line)
{
  body_ += fmt::format("<path d=\"{}\" fill=\"{}\" {}/>\n", path_of(frame, outline, true),
                       of_paper ? plot::paper : "#ffffff", stroke(line));
}

void SvgSheet::line(const Frame &frame, const Polygon &points, const Line &line)
{
  body_ += fmt::format("<path d=\"{}\" fill=\"none\" {}/>\n", path_of(frame, points, false), stroke(line));
}

void SvgSheet::text(const Frame &frame, const Point &at, const std::string &words, Anchor anchor, double size,
                    bool bold)
{
  constexpr const char *anchors[] = {"start", "middle", "end"};
  body_ += fmt::format("<text x=\"{:.2f}\" y=\"{:.2f}\" text-anchor=\"{}\" font-size=\"{:g}\"{}>{}</text>\n",
                       frame.x + at[0], frame.y - at[1], anchors[static_cast<int>(anchor)], size,
                       bold ? " font-weight=\"bold\"" : "", escaped(words));
}

void SvgSheet::dimension(const Frame &frame, const Point &from, const Point &to, const std::string &value)
{
  constexpr double tick = 1.2;
  const double     dx = to[0] - from[0], dy = to[1] - from[1], length = std::hypot(dx, dy);
  line(frame, {from, to}, {});
  if (length == 0)
    return;
  // Slanted ticks at both ends, as on a building plan.
  for (const auto &end : {from, to})
    line(frame, {{end[0] - tick, end[1] - tick}, {end[0] + tick, end[1] + tick}}, {.width = 0.35});
  const Point middle{(from[0] + to[0]) / 2, (from[1] + to[1]) / 2};
  if (std::abs(dx) >= std::abs(dy))
    text(frame, {middle[0], middle[1] + 1.1}, value, Anchor::middle);
  else
    text(frame, {middle[0] + 1.4, middle[1] - 1.1}, value);
}

std::string SvgSheet::finished(double width, double height, const std::string &title,
                               const std::string &mark) const
{
  return fmt::format("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<!-- {} -->\n"
                     "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{:.1f}mm\" height=\"{:.1f}mm\" "
                     "viewBox=\"0 0 {:.1f} {:.1f}\" "
                     "role=\"img\" font-family=\"'DejaVu Sans', Verdana, sans-serif\">\n<title>{}</title>\n"
                     "<style>text {{ fill: {}; paint-order: stroke; stroke: {}; stroke-width: 0.9px; "
                     "stroke-linejoin: round; }}"
                     "</style>\n<defs>\n{}</defs>\n<rect width=\"100%\" height=\"100%\" fill=\"{}\"/>\n"
                     "<g stroke-linejoin=\"round\">\n{}</g>\n</svg>\n",
                     mark, width, height, width, height, escaped(title), plot::ink, plot::paper, patterns_,
                     plot::paper, body_);
}
} // namespace solemech::tools
