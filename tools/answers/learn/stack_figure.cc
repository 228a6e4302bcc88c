// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/stack_figure.h"

#include "solver/layer_parts.h"
#include "tools/output/report/page_template.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace solemech::tools::learn
{
namespace
{
constexpr double stack_width = 200, label_gap = 16, line_height = 17, figure_width = 480; ///< [SVG units]
constexpr double striker_height = 26, air = 12;

/// Hatches as patterns, none twice. They carry the number of the figure: names are common to the whole page.
std::string patterns(const std::vector<Part> &parts, const Looks &looks, int number)
{
  std::set<int> hatches;
  for (const auto &part : parts)
    hatches.insert(looks.of(part).hatch);
  std::string text = "<defs>";
  for (const int hatch : hatches)
  {
    std::string path;
    for (const auto &line : hatch_lines(hatch))
      for (std::size_t i = 0; i < line.size(); ++i)
        path += fmt::format("{}{:.1f} {:.1f}", i ? "L" : "M", line[i][0], hatch_tile - line[i][1]);
    text += fmt::format("<pattern id=\"hatch{}-{}\" width=\"{}\" height=\"{}\" "
                        "patternUnits=\"userSpaceOnUse\"><path d=\"{}\" fill=\"none\" "
                        "stroke=\"currentColor\" stroke-width=\"0.8\"/></pattern>",
                        hatch, number, hatch_tile, hatch_tile, path);
  }
  return text + "</defs>\n";
}

std::string box(double x, double y, double width, double height, const std::string &fill)
{
  return fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"{}\" "
                     "stroke=\"currentColor\" stroke-width=\"1\"/>\n",
                     x, y, width, height, fill);
}

std::string line(double x1, double y1, double x2, double y2)
{
  return fmt::format("<path d=\"M{:.1f} {:.1f}L{:.1f} {:.1f}\" stroke=\"currentColor\" stroke-width=\"0.7\" "
                     "fill=\"none\"/>\n",
                     x1, y1, x2, y2);
}

std::string words(double x, double y, const std::string &text)
{
  return fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\">{}</text>\n", x, y, report::html(text));
}

/// "core: eva-soft, 16.0 mm", with what is inside or around it.
std::string layer_words(const solver::Layer &layer)
{
  std::string text = fmt::format("{}: {}, {}", layer.name, layer.material.name,
                                 length_text(layer.thickness, Lengths::millimetre));
  if (layer.unit)
    text = fmt::format("{}: {}, {}", layer.name,
                       layer.unit->state == solver::ChamberState::open ? "dead air unit"
                       : layer.unit->gauge_pressure > 0
                         ? fmt::format("air unit, {:.0f} kPa", 1e-3 * layer.unit->gauge_pressure)
                         : "air unit",
                       length_text(layer.thickness, Lengths::millimetre));
  if (layer.ring)
    text += fmt::format(", ring {}", layer.ring->name);
  return text;
}

/// The inside of an air unit: film as its edge, fibres as upright strokes.
std::string unit_drawing(double x, double y, double width, double height, bool fibres)
{
  std::string text =
    fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" rx=\"{:.1f}\" "
                "class=\"air\" stroke=\"currentColor\" stroke-width=\"2\"/>\n",
                x, y, width, height, 0.4 * height);
  for (double at = x + 10; fibres && at < x + width - 9; at += 10)
    text += line(at, y + 2, at, y + height - 2);
  return text;
}

std::string striker_drawing(const solver::Case &setup, double scale, double middle, double top)
{
  const auto  &tup = solver::tup_of(setup.rig);
  const double half = std::min(0.5 * tup.diameter * scale, stack_width / 2);
  std::string  text =
    tup.shape == solver::TupShape::sphere
       ? fmt::format(
           "<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{:.1f}\" class=\"air\" stroke=\"currentColor\"/>\n",
           middle, top - air - half, std::min(half, 0.5 * striker_height))
       : box(middle - half, top - air - striker_height, 2 * half, striker_height, "none");
  text += words(middle + half + 8, top - air - 0.4 * striker_height, rigs::kind_of(setup).striker(setup));
  return text + line(middle, top - air + 1, middle, top - 2) + line(middle - 3, top - 5, middle, top - 2) +
         line(middle + 3, top - 5, middle, top - 2);
}
} // namespace

std::string stack_figure(const Run &run, const Looks &looks, const std::string &caption, int number)
{
  const auto  &setup = run.setup;
  const auto   parts = parts_of(run);
  const double radius = setup.plug.radius, scale = stack_width / (2 * radius), middle = stack_width / 2 + 2;
  const double top = striker_height + air + 16;
  const auto   fill_of = [&](const std::string &part) {
    const int  at = part_number(parts, part);
    const Look look = at < 0 ? Look() : looks.of(parts[static_cast<std::size_t>(at)]);
    return fmt::format("url(#hatch{}-{})", look.hatch, number);
  };

  std::string body = striker_drawing(setup, scale, middle, top);
  double      y = top, label_y = top - line_height;
  for (const auto &layer : setup.layers)
  {
    const double thickness = layer.thickness * scale;
    const auto   fill = fill_of(layer.name);
    const double inner =
      std::min(0.5 * (layer.unit ? layer.unit->diameter : layer.core_diameter), radius) * scale;
    if (layer.unit)
      body += box(2, y, stack_width, thickness, fill) +
              unit_drawing(middle - inner, y, 2 * inner, thickness, layer.unit->has_fibres);
    else if (layer.ring && inner > 0)
      body +=
        box(2, y, stack_width, thickness, fill_of(solver::ring_part(layer.name))) +
        fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" class=\"air\"/>\n",
                    middle - inner, y, 2 * inner, thickness) +
        box(middle - inner, y, 2 * inner, thickness, fill);
    else if (layer.area_share < 0.995)
    {
      // Lugs: blocks with gaps, in the right share.
      const double pitch = stack_width / 6;
      for (int i = 0; i < 6; ++i)
        body +=
          box(2 + pitch * (i + 0.5 * (1 - layer.area_share)), y, pitch * layer.area_share, thickness, fill);
    }
    else
      body += box(2, y, stack_width, thickness, fill);
    label_y = std::max(label_y + line_height, y + 0.5 * thickness);
    body += line(stack_width + 4, y + 0.5 * thickness, stack_width + label_gap, label_y) +
            words(stack_width + label_gap + 3, label_y + 4, layer_words(layer));
    y += thickness;
  }
  body += line(2, y + 1.5, stack_width + 2, y + 1.5);
  const double bottom = std::max(y, label_y) + 10;
  return fmt::format(
    "<svg viewBox=\"0 0 {:.0f} {:.0f}\" role=\"img\" aria-label=\"{}\" class=\"stack\">\n{}{}</svg>\n",
    figure_width, bottom, report::html(caption), patterns(parts, looks, number), body);
}

std::vector<std::size_t> different_stacks(const std::vector<const solver::Case *> &setups, std::size_t most)
{
  std::vector<std::size_t> chosen;
  std::vector<std::string> seen;
  for (std::size_t i = 0; i < setups.size(); ++i)
  {
    std::string look = fmt::format("{:.6f} ", setups[i]->plug.radius);
    for (const auto &layer : setups[i]->layers)
      look += fmt::format("{} {:.6f}|", layer_words(layer), layer.core_diameter);
    if (std::find(seen.begin(), seen.end(), look) != seen.end())
      continue;
    seen.push_back(look);
    chosen.push_back(i);
  }
  if (chosen.size() > most && most > 0)
  {
    chosen[most - 1] = chosen.back();
    chosen.resize(most);
  }
  return chosen;
}
} // namespace solemech::tools::learn
