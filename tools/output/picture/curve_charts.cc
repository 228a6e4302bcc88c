// SPDX-License-Identifier: Apache-2.0
// Line charts: force against time, force against compression, readings of a series.
#include "solver/results/catalogue.h"
#include "tools/output/picture/charts.h"
#include "tools/output/picture/curve_data.h"
#include "tools/output/picture/plot_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
constexpr std::size_t labelled_runs = 12; ///< more lines than that carry no labels of their own

/// Recorded times up to a little after contact loss.
std::size_t shown_times(const solver::Result &result)
{
  if (result.time_of_loss <= 0)
    return result.time.size();
  const auto end = std::upper_bound(result.time.begin(), result.time.end(), 1.08 * result.time_of_loss);
  return static_cast<std::size_t>(end - result.time.begin());
}

struct Line
{
  std::string         title; ///< in the key; empty: none
  std::string         mark;  ///< beside its highest point; empty: the height itself
  std::size_t         look;
  std::vector<double> x, y;
};

/// A line in the look of its run, or of its group in a series.
Line line_of(const std::vector<Run> &runs, std::size_t run, const Series *series)
{
  if (!series)
    return {runs[run].label, "", run, {}, {}};
  const auto begin = series->groups.begin(),
             first = std::find(begin, series->groups.end(), series->groups.at(run));
  std::size_t look = 0;
  for (auto group = begin; group != first; ++group)
    look += std::find(begin, group, *group) == group;
  return {first - begin == static_cast<long>(run) ? *first : "",
          fmt::format("{:.4g} {}", series->values.at(run), series->unit),
          look,
          {},
          {}};
}

/// Lines in the look of their runs, each with a mark and its number at the highest point.
std::string line_chart(const std::string &name, const std::string &head, const std::vector<Line> &lines,
                       const std::string &y_unit)
{
  std::string data, labels, plots;
  double      highest = 0;
  for (const auto &line : lines)
    highest = std::max(highest, *std::max_element(line.y.begin(), line.y.end()));
  for (std::size_t i = 0; i < lines.size(); ++i)
  {
    const auto look = plot::line_look(lines[i].look);
    const auto peak =
      static_cast<std::size_t>(std::max_element(lines[i].y.begin(), lines[i].y.end()) - lines[i].y.begin());
    data += plot::data_block(fmt::format("d{}", i), lines[i].x, lines[i].y);
    plots += fmt::format("{}$d{} with lines linewidth 3.5 dashtype {} linecolor rgb '{}' {}",
                         i ? ", " : "plot ", i, look.dash, look.colour,
                         lines[i].title.empty() ? "notitle" : "title " + plot::quoted(lines[i].title));
    const std::string mark =
      lines[i].mark.empty() ? fmt::format("{:.2f} {}", lines[i].y[peak], y_unit) : lines[i].mark;
    if (lines.size() <= labelled_runs)
      labels +=
        fmt::format("set label {} {} at {:.6g},{:.6g} center offset 0,0.9 point pointtype 7 "
                    "pointsize 1.1 linecolor rgb '{}' textcolor rgb '{}' front\n",
                    i + 1, plot::quoted(mark), lines[i].x[peak], lines[i].y[peak], look.colour, look.colour);
  }
  return data + plot::twice(name, 1200, 750,
                            head + labels + fmt::format("set yrange [0:{:.6g}]\n", 1.15 * highest) +
                              "set key top left Left reverse samplen 4 spacing 1.3 textcolor rgb '" +
                              plot::ink + "'\n" + plots + "\n");
}
} // namespace

std::string source_line(const std::vector<Run> &runs)
{
  LabelledCases cases;
  for (const auto &run : runs)
    cases.emplace_back(run.label, &run.setup);
  std::string changed;
  if (!runs.empty())
    for (const auto &change : runs[0].changes)
      changed += "changed: " + change + "; ";
  const auto invented = invented_words(cases);
  return changed + "model, not a measurement" + (invented.empty() ? "" : "; " + invented);
}

std::string force_time_chart(const std::vector<Run> &runs, const Series *series)
{
  std::vector<Line> lines;
  double            longest = 0;
  for (const Run &run : runs)
    longest = std::max(longest, run.result.time.empty() ? 0 : run.result.time.back());
  const TimeUnit unit = time_unit(longest);
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (const auto *force = curve_named(runs[i].result, {"force"}); force && !force->empty())
    {
      const std::size_t n = shown_times(runs[i].result);
      Line             &line = lines.emplace_back(line_of(runs, i, series));
      line.x = scaled(runs[i].result.time, n, 1 / unit.seconds);
      line.y = scaled(*force, n, 1e-3);
    }
  if (lines.empty())
    return "";
  return line_chart("force-time",
                    plot::begin(rigs::kind_of(runs[0].setup).force_title(), source_line(runs)) +
                      fmt::format("set xlabel 'time since first touch, {}'\nset ylabel 'force, kN'\n"
                                  "set xrange [0:*]\n",
                                  unit.name),
                    lines, "kN");
}

std::string loop_chart(const std::vector<Run> &runs, const Series *series)
{
  std::vector<Line> lines;
  for (std::size_t i = 0; i < runs.size(); ++i)
  {
    const solver::Result &result = runs[i].result;
    const auto           *force = curve_named(result, {"force"});
    const auto           *compression = curve_named(result, {"tup_displacement"});
    if (!force || !compression || force->empty())
      continue;
    const std::size_t n = shown_times(result);
    Line             &line = lines.emplace_back(line_of(runs, i, series));
    line.x = scaled(*compression, n, 1e3);
    line.y = scaled(*force, n, 1e-3);
  }
  if (lines.empty())
    return "";
  return line_chart(
    "force-compression",
    plot::begin("Force against compression: the area inside a loop is the energy lost", source_line(runs)) +
      "set xlabel 'compression of the stack, mm'\nset ylabel 'force, kN'\nset xrange [0:*]\n",
    lines, "kN");
}

std::string series_chart(const std::vector<Run> &runs, const Series &series)
{
  struct Panel
  {
    std::vector<const solver::ReadingKind *> readings;
    const char                              *title;
    double                                   factor;
  };
  using solver::catalogue;
  const Panel panels[] = {
    {{&catalogue.rebound_by_height, &catalogue.loop_return}, "thrown back, %", 100},
    {{&catalogue.peak_force}, "peak force, kN", 1e-3},
    {{&catalogue.greatest_compression, &catalogue.peak_displacement}, "greatest compression, mm", 1e3}};

  // Groups in the order of their first run.
  std::vector<std::string> groups;
  for (const auto &group : series.groups)
    if (std::find(groups.begin(), groups.end(), group) == groups.end())
      groups.push_back(group);

  std::string data,
    body = plot::begin("", source_line(runs)) +
           fmt::format("set multiplot layout 1,3 title {} font ',22' textcolor rgb '{}' margins "
                       "0.07,0.985,0.17,0.76 spacing 0.06,0\nset key at screen 0.5,0.885 center "
                       "horizontal maxrows 1 samplen 4 textcolor rgb '{}'\n",
                       plot::quoted("Against the " + series.quantity + ": rebound, force and compression"),
                       plot::ink, plot::ink);
  body += fmt::format("set xlabel {}\n", plot::quoted(series.quantity + ", " + series.unit));
  bool any = false;
  for (std::size_t p = 0; p < std::size(panels); ++p)
  {
    std::string plots;
    for (std::size_t g = 0; g < groups.size(); ++g)
    {
      std::vector<std::pair<double, double>> points;
      for (std::size_t i = 0; i < runs.size(); ++i)
        for (const auto *kind : panels[p].readings)
          if (const auto *reading = runs[i].result.find(*kind); reading && series.groups.at(i) == groups[g])
          {
            points.emplace_back(series.values.at(i), reading->value * panels[p].factor);
            break;
          }
      if (points.empty())
        continue;
      std::sort(points.begin(), points.end());
      std::vector<double> x, y;
      for (const auto &[a, b] : points)
      {
        x.push_back(a);
        y.push_back(b);
      }
      const std::string name = fmt::format("s{}_{}", p, g);
      data += plot::data_block(name, x, y);
      const auto look = plot::line_look(g);
      plots +=
        fmt::format("{}${} with linespoints linewidth 3 dashtype {} pointtype {} pointsize 1.3 linecolor rgb "
                    "'{}' {}",
                    plots.empty() ? "plot " : ", ", name, look.dash, 5 + 2 * (g % 5), look.colour,
                    p == 0 ? "title " + plot::quoted(groups[g]) : std::string("notitle"));
    }
    if (plots.empty())
      continue;
    any = true;
    body += fmt::format("set title {} font ',17' offset 0,-0.4\nset yrange [0:*]\n{}\nunset label 999\n",
                        plot::quoted(panels[p].title), plots);
  }
  return any ? data + plot::twice("series", 1400, 620, body + "unset multiplot\n") : "";
}
} // namespace solemech::tools
