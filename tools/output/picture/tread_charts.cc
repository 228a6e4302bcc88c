// SPDX-License-Identifier: Apache-2.0
// Pictures of slides: pressure along the face of a lug, its face as it wears, and the grip of a sole all
// round.
#include "tools/output/picture/charts.h"
#include "tools/output/picture/curve_data.h"
#include "tools/output/picture/plot_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
struct Curve
{
  std::string         title;
  std::vector<double> x, y;
};

std::string drawn(const std::string &name, const std::string &head, const std::vector<Curve> &curves,
                  int width, int height)
{
  std::string data, plots;
  for (std::size_t i = 0; i < curves.size(); ++i)
  {
    const auto look = plot::line_look(i);
    data += plot::data_block(fmt::format("d{}", i), curves[i].x, curves[i].y);
    plots += fmt::format("{}$d{} with lines linewidth 3.5 dashtype {} linecolor rgb '{}' title {}",
                         i ? ", " : "plot ", i, look.dash, look.colour, plot::quoted(curves[i].title));
  }
  return data + plot::twice(name, width, height, head + plots + "\n");
}

std::string key(const char *place)
{
  return fmt::format("set key {} samplen 4 spacing 1.3 textcolor rgb '{}'\n", place, plot::ink);
}
} // namespace

std::string face_pressure_chart(const std::vector<Run> &runs)
{
  std::vector<Curve> curves;
  for (const auto &run : runs)
    if (!run.result.faces.empty())
    {
      const auto &face = run.result.faces.back();
      curves.push_back({run.label, scaled(face.place, 1e3), scaled(face.pressure, 1e-3)});
    }
  if (curves.empty())
    return "";
  return drawn("face-pressure",
               plot::begin("Pressure on the face of the lug", source_line(runs)) +
                 "set xlabel 'position across the bar, mm; leading end on the left'\nset ylabel 'pressure "
                 "over 0.25 mm, kPa'\nset "
                 "yrange [0:*]\n" +
                 key("top right"),
               curves, 1200, 750);
}

std::string worn_face_chart(const std::vector<Run> &runs)
{
  std::vector<Curve> curves;
  if (runs.size() == 1 && runs[0].result.faces.size() > 1)
    for (const auto &face : runs[0].result.faces)
      curves.push_back(
        {fmt::format("after {:.3g} km", 1e-3 * face.way), scaled(face.place, 1e3), scaled(face.height, 1e3)});
  if (curves.empty())
    return "";
  return drawn("worn-face",
               plot::begin("The face of the lug as it wears", source_line(runs)) +
                 "set xlabel 'position across the bar, mm'\nset ylabel 'height above the bonded plane, mm'\n"
                 "set size ratio -1\n" +
                 key("outside right top"),
               curves, 1200, 900);
}

std::string grip_map_chart(const std::vector<Run> &runs)
{
  constexpr double   ring = 0.25; // of grip, between circles
  std::vector<Curve> curves;
  double             greatest = ring;
  for (const auto &run : runs)
  {
    const auto *heading = curve_named(run.result, {"heading"}), *grip = curve_named(run.result, {"grip"});
    if (!heading || !grip || heading->empty())
      continue;
    Curve      line{run.label, {}, {}};
    const auto n = std::min(grip->size(), heading->size());
    for (std::size_t i = 0; i <= n; ++i)
    {
      // Ahead is up, the outer side to the right.
      line.x.push_back((*grip)[i % n] * std::sin((*heading)[i % n]));
      line.y.push_back((*grip)[i % n] * std::cos((*heading)[i % n]));
      greatest = std::max(greatest, (*grip)[i % n]);
    }
    curves.push_back(std::move(line));
  }
  if (curves.empty())
    return "";
  std::string  circles;
  const double edge = ring * std::ceil(greatest / ring);
  int          label = 1;
  for (double radius = ring; radius < edge * (1 + 1e-9); radius += ring)
    circles += fmt::format("set object circle at 0,0 size {0:.3g} fillstyle empty border rgb '{1}' back\n"
                           "set label {2} '{0:.3g}' at 0,{0:.3g} left offset 0.4,0.5 textcolor rgb '{3}'\n",
                           radius, plot::faint, label++, plot::ink);
  const std::pair<const char *, std::pair<double, double>> sides[] = {{"slides forward", {0, 1.12 * edge}},
                                                                      {"slides backward", {0, -1.12 * edge}},
                                                                      {"outwards", {1.19 * edge, 0}},
                                                                      {"inwards", {-1.17 * edge, 0}}};
  for (const auto &[word, at] : sides)
    circles += fmt::format("set label {} '{}' at {:.3g},{:.3g} center textcolor rgb '{}'\n", label++, word,
                           at.first, at.second, plot::ink);
  return drawn(
    "grip-map",
    plot::begin("Grip in all directions: friction divided by force, by the direction of the slide",
                source_line(runs)) +
      circles +
      fmt::format("unset border\nunset xtics\nunset ytics\nunset grid\nset size ratio -1\nset xrange "
                  "[{0:.3g}:{1:.3g}]\n"
                  "set yrange [{0:.3g}:{1:.3g}]\n",
                  -1.35 * edge, 1.35 * edge) +
      key("bottom right"),
    curves, 1000, 1000);
}
} // namespace solemech::tools
