// SPDX-License-Identifier: Apache-2.0
// The drawn cross-section: at rest on the left, at greatest compression on the right, to one scale, with the
// names and thicknesses of the parts below.
#include "tools/language/number_text.h"
#include "tools/output/picture/charts.h"
#include "tools/output/picture/plot_text.h"
#include "tools/output/picture/section.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

namespace solemech::tools
{
namespace
{
constexpr int    canvas_width = 1400; ///< pixels
constexpr double part_line = 1.6, hatch_line = 0.7;

void append(std::string &text, const std::vector<Polygon> &polygons, double shift, bool closed)
{
  fmt::memory_buffer buffer;
  auto               out = std::back_inserter(buffer);
  for (const auto &polygon : polygons)
  {
    for (const auto &point : polygon)
      fmt::format_to(out, "{:.3f} {:.3f}\n", point[0] + shift, point[1]);
    if (closed && !polygon.empty())
      fmt::format_to(out, "{:.3f} {:.3f}\n", polygon[0][0] + shift, polygon[0][1]);
    fmt::format_to(out, "\n");
  }
  text.append(buffer.data(), buffer.size());
}

/// Data blocks and plot clauses, in the order in which they lie on top of each other.
class Layers
{
public:
  void fill(const std::vector<Polygon> &polygons, double shift, const std::string &tone)
  {
    const std::string name = block(polygons, shift, true);
    clause(
      fmt::format("${} with filledcurves closed fillstyle solid 1 noborder linecolor rgb '{}'", name, tone));
    clause(fmt::format("${} with lines linewidth {} linecolor rgb '{}'", name, part_line, plot::ink));
  }
  void strokes(const std::vector<Polygon> &polygons, double shift)
  {
    clause(fmt::format("${} with lines linewidth {} linecolor rgb '{}'", block(polygons, shift, false),
                       hatch_line, "#6d7681"));
  }
  std::string data() const { return data_; }
  std::string plots() const { return plots_; }

private:
  std::string block(const std::vector<Polygon> &polygons, double shift, bool closed)
  {
    const std::string name = fmt::format("p{}", n_blocks_++);
    data_ += "$" + name + " << EOD\n";
    append(data_, polygons, shift, closed);
    data_ += "EOD\n";
    return name;
  }
  void clause(const std::string &text) { plots_ += (plots_.empty() ? "plot " : ", \\\n     ") + text; }

  std::string data_, plots_;
  int         n_blocks_ = 0;
};

void draw(Layers &layers, const SectionDrawing &drawing, double shift)
{
  for (const auto &part : drawing.parts)
  {
    layers.fill(part.outlines, shift, tone_colour(part.look.tone));
    if (!part.hatch.empty())
      layers.strokes(part.hatch, shift);
  }
  if (!drawing.cavities.empty())
    layers.fill(drawing.cavities, shift, "#ffffff");
  if (!drawing.tup.empty())
    layers.fill({drawing.tup}, shift, "#dfe3e6");
}

std::string text_at(const std::string &text, double x, double y, const std::string &style)
{
  return fmt::format("set label {} at {:.3f},{:.3f} {} textcolor rgb '{}' front\n", plot::quoted(text), x, y,
                     style, plot::ink);
}

std::string arrow(double x0, double y0, double x1, double y1, const std::string &heads)
{
  return fmt::format(
    "set arrow from {:.3f},{:.3f} to {:.3f},{:.3f} {} linewidth 1.2 linecolor rgb '{}' front\n", x0, y0, x1,
    y1, heads, plot::ink);
}

/// A small field with the part's tone and hatch for the legend.
void swatch(Layers &layers, const Look &look, const Point &corner, double width, double height)
{
  const Polygon box = {corner,
                       {corner[0] + width, corner[1]},
                       {corner[0] + width, corner[1] + height},
                       {corner[0], corner[1] + height}};
  layers.fill({box}, 0, tone_colour(look.tone));
  // Drawn like a part: one undeformed nine-node cell.
  solver::Picture  cell;
  solver::Snapshot shot;
  cell.cells = {{0, 1, 2, 3, 4, 5, 6, 7, 8}};
  cell.cell_part = {0};
  cell.part_names.resize(1);
  for (int i = 0; i < 9; ++i)
    shot.position.push_back({1e-3 * width / 4 * (i % 3), 1e-3 * height / 2 * (i / 3)});
  shot.displacement.resize(9);
  const SectionDrawing drawing = draw_section(cell, shot, {look});
  for (const auto &one : drawing.parts)
  {
    auto strokes = one.hatch;
    for (auto &stroke : strokes)
      for (auto &point : stroke)
      {
        point[0] += corner[0] + width / 2;
        point[1] += corner[1];
      }
    layers.strokes(strokes, 0);
  }
}

/// The hatch that bears the name of a layer with an air unit is the material round the unit.
std::string part_text(const Run &run, const std::string &name)
{
  for (const auto &layer : run.setup.layers)
    if (layer.name == name)
      return fmt::format("{}{}, {}", name, layer.unit ? " ring" : "",
                         length_text(layer.thickness, Lengths::millimetre));
  return name;
}
} // namespace

std::string section_chart(const Run &run, const std::string &name, const Looks &all_looks)
{
  const auto &shots = run.result.picture.snapshots;
  if (shots.empty() || run.result.picture.cells.empty())
    return "";
  const auto &squeezed = *std::min_element(shots.begin(), shots.end(), [&](const auto &a, const auto &b) {
    return std::abs(a.time - run.result.time_of_peak) < std::abs(b.time - run.result.time_of_peak);
  });
  const auto  looks = all_looks.of_picture(run);
  const SectionDrawing rest = draw_section(run.result.picture, shots.front(), looks);
  const SectionDrawing peak = draw_section(run.result.picture, squeezed, looks);

  const double half = 0.5 * std::max(rest.width, peak.width), side = 0.42 * half + 4;
  const double span = 2 * (half + side), left = -0.5 * span, right = 0.5 * span;
  const double per_pixel = 2 * span / canvas_width; // [mm]
  const double line = 34 * per_pixel;               // height of one line of text
  double       top = rest.height;
  for (const auto *drawing : {&rest, &peak})
    for (const auto &point : drawing->tup)
      top = std::max(top, point[1]);

  Layers      layers;
  std::string labels;
  draw(layers, rest, left);
  draw(layers, peak, right);
  labels += text_at("at rest", left, top + 0.9 * line, "center font ',19'");
  labels += text_at("greatest compression, " + time_text(squeezed.time) + " after first touch", right,
                    top + 0.9 * line, "center font ',19'");
  if (const auto *drop = rigs::fall_of(run.setup); drop && !rest.tup.empty())
    labels +=
      text_at(fmt::format("{:.3g} kg", drop->mass), left, rest.touch + 0.3 * (top - rest.touch), "center");

  // Ground and dimensions.
  for (const double centre : {left, right})
    labels += arrow(centre - half - 0.3 * side, 0, centre + half + 0.3 * side, 0, "nohead");
  const double out = half + 0.35 * side;
  labels += arrow(left - out, 0, left - out, rest.height, "heads size screen 0.008,20");
  labels += arrow(left - out - 1, rest.height, left - half + 1, rest.height, "nohead dashtype 3");
  labels += text_at(length_text(1e-3 * rest.height, Lengths::millimetre), left - out, 0.5 * rest.height,
                    "center rotate by 90 offset -1.3,0");
  const double travel = rest.touch - peak.touch;
  labels += arrow(right - half - 1, rest.touch, right + half + 0.6 * side, rest.touch, "nohead dashtype 3");
  labels += arrow(right + half + 0.1 * side, rest.touch, right + half + 0.1 * side, peak.touch,
                  "head size screen 0.008,20");
  labels += text_at(length_text(1e-3 * travel, Lengths::millimetre), right + half + 0.1 * side,
                    0.5 * (rest.touch + peak.touch), "left offset 0.6,0");
  labels += arrow(left - 0.5 * rest.width, -0.55 * line, left + 0.5 * rest.width, -0.55 * line,
                  "heads size screen 0.008,20");
  labels += text_at((run.setup.plug.section == solver::Section::axisymmetric ? "Ø " : "") +
                      length_text(1e-3 * rest.width, Lengths::millimetre),
                    left, -1.15 * line, "center");
  for (const auto &chamber : run.result.chambers)
    if (!rest.cavities.empty())
    {
      const auto  &cavity = rest.cavities.front();
      const double low =
        std::min_element(cavity.begin(), cavity.end(), [](auto &a, auto &b) { return a[1] < b[1]; })->at(1);
      const double high =
        std::max_element(cavity.begin(), cavity.end(), [](auto &a, auto &b) { return a[1] < b[1]; })->at(1);
      labels += text_at("air, " + air_text(run.setup, chamber), left, 0.5 * (low + high), "center");
      break;
    }

  // Legend, four entries a line.
  constexpr std::size_t entries = 4;
  const auto           &names = run.result.picture.part_names;
  const double          column = 2 * (span - 4) / entries;
  double                bottom = -1.9 * line;
  for (std::size_t i = 0; i < names.size(); ++i)
  {
    const double x = -span + 4 + column * static_cast<double>(i % entries);
    const double y = -(2.6 + 1.15 * static_cast<double>(i / entries)) * line;
    swatch(layers, looks[i], {x, y}, 1.6 * line, 0.8 * line);
    labels += text_at(part_text(run, names[i]), x + 1.9 * line, y + 0.4 * line, "left");
    bottom = y;
  }
  bottom -= 1.2 * line;
  const double ceiling = top + 2.8 * line;
  const int    pixels = static_cast<int>((ceiling - bottom) / per_pixel);

  return layers.data() +
         plot::twice(
           name, canvas_width, pixels,
           plot::begin("", source_line({run})) +
             text_at("Cross-section of " + run.label + "; the hatching moves with the material", 0,
                     ceiling - 0.75 * line, "center font ',22'") +
             labels +
             fmt::format("unset border\nunset tics\nunset grid\nset margins 0,0,0,0\nset xrange "
                         "[{:.4f}:{:.4f}]\nset yrange [{:.4f}:{:.4f}]\n{}\nunset label\nunset arrow\n",
                         -span, span, bottom, ceiling, layers.plots()));
}
} // namespace solemech::tools
