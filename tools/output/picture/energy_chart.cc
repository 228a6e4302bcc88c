// SPDX-License-Identifier: Apache-2.0
// Where the energy went, as bars: a row a part with one bar a run, or one stacked bar a run when there are
// many.
#include "tools/output/picture/charts.h"
#include "tools/output/picture/plot_text.h"
#include "tools/output/results/energy_picture.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace solemech::tools
{
namespace
{
constexpr std::size_t grouped_runs = 3;

struct Bars
{
  std::vector<std::string>         names; ///< of the shares
  std::vector<std::string>         runs;
  std::vector<std::vector<double>> shares; ///< [run][name] in %, negative: no such part
};

Bars collect(const std::vector<Run> &runs)
{
  Bars                       bars;
  std::vector<EnergyPicture> pictures;
  for (const auto &run : runs)
    if (auto picture = energy_picture(run.setup, run.result); picture.input > 0)
    {
      bars.runs.push_back(run.label);
      pictures.push_back(std::move(picture));
    }
  for (const auto kind :
       {ShareKind::returned, ShareKind::lost_in_part, ShareKind::lost_in_guide, ShareKind::left_in_stack})
    for (const auto &picture : pictures)
      for (const auto &part : picture.shares)
        if (part.kind == kind &&
            std::find(bars.names.begin(), bars.names.end(), part.name) == bars.names.end())
          bars.names.push_back(part.name);
  for (const auto &picture : pictures)
  {
    auto &row = bars.shares.emplace_back(bars.names.size(), -1.);
    for (const auto &part : picture.shares)
      row[static_cast<std::size_t>(std::find(bars.names.begin(), bars.names.end(), part.name) -
                                   bars.names.begin())] = 100 * picture.share(part);
  }
  return bars;
}

std::string grouped(const Bars &bars, const std::string &source)
{
  const double height = 0.8 / static_cast<double>(bars.runs.size());
  std::string  data, ticks, labels, plots;
  double       greatest = 0;
  for (std::size_t n = 0; n < bars.names.size(); ++n)
    ticks += fmt::format("{}{} {}", n ? ", " : "", plot::quoted(bars.names[n]), -static_cast<double>(n));
  int label = 1;
  for (std::size_t r = 0; r < bars.runs.size(); ++r)
  {
    data += fmt::format("$b{} << EOD\n", r);
    for (std::size_t n = 0; n < bars.names.size(); ++n)
    {
      const double share = bars.shares[r][n];
      // The only bar of a row stands in its middle.
      const bool   alone = std::count_if(bars.shares.begin(), bars.shares.end(),
                                         [&](const auto &row) { return row[n] >= 0; }) == 1;
      const double top = alone ? -static_cast<double>(n) + height / 2
                               : -static_cast<double>(n) + 0.4 - height * static_cast<double>(r);
      greatest = std::max(greatest, share);
      if (share < 0)
        continue;
      data += fmt::format("{0:.4g} {1:.4g} 0 {0:.4g} {2:.4g} {3:.4g}\n", share, top - height / 2,
                          top - height * 0.94, top);
      labels +=
        fmt::format("set label {} '{:.{}f} %' at {:.4g},{:.4g} left offset 0.6,0 textcolor rgb '{}' front\n",
                    label++, share, share < 9.95 ? 1 : 0, share, top - height / 2, plot::ink);
    }
    data += "EOD\n";
    const auto look = plot::line_look(r);
    plots += fmt::format(
      "{}$b{} using 1:2:3:4:5:6 with boxxyerror fillstyle {} border rgb '{}' linecolor rgb '{}' title {}",
      r ? ", " : "plot ", r,
      r == 0   ? "solid 0.75"
      : r == 1 ? "pattern 4"
               : "pattern 2",
      look.colour, look.colour, plot::quoted(bars.runs[r]));
  }
  const int pixels = 190 + static_cast<int>(bars.names.size() * (24 + 26 * bars.runs.size()));
  return data +
         plot::twice(
           "energy", 1200, pixels,
           plot::begin("Where the energy went, in % of the energy put in", source) + labels +
             fmt::format("set ytics ({}) scale 0\nset border 2\nunset xtics\nunset grid\nset xrange "
                         "[0:{:.4g}]\nset yrange [{}:0.6]\nset lmargin 24\nset bmargin 2\nset rmargin 3\n"
                         "set key bottom right samplen 3 spacing 1.3 textcolor rgb '{}'\n{}\n",
                         ticks, 1.15 * greatest, 0.45 - static_cast<double>(bars.names.size()), plot::ink,
                         plots));
}

/// Tones of the parts by their names; what is no part is plain.
std::map<std::string, const char *> part_tones(const std::vector<Run> &runs)
{
  const Looks                         looks(runs);
  std::map<std::string, const char *> tones;
  for (const auto &run : runs)
    for (const auto &part : parts_of(run))
      tones.emplace(part.name, tone_colour(looks.of(part).tone));
  return tones;
}

const char *tone_of(const std::map<std::string, const char *> &tones, const std::string &name)
{
  const auto found = tones.find(name);
  return found == tones.end() ? tone_colour(-1) : found->second;
}

std::string stacked(const Bars &bars, const std::map<std::string, const char *> &tones,
                    const std::string &source)
{
  constexpr double    characters_across = 1.35; ///< width of a letter on the axis [%]
  int                 label = 1;
  std::string         data, ticks, labels, plots;
  std::vector<double> reached(bars.runs.size(), 0.);
  for (std::size_t r = 0; r < bars.runs.size(); ++r)
    ticks += fmt::format("{}{} {}", r ? ", " : "", plot::quoted(bars.runs[r]), -static_cast<double>(r));
  for (std::size_t n = 0; n < bars.names.size(); ++n)
  {
    data += fmt::format("$b{} << EOD\n", n);
    for (std::size_t r = 0; r < bars.runs.size(); ++r)
    {
      const double share = std::max(bars.shares[r][n], 0.), from = reached[r], y = -static_cast<double>(r);
      reached[r] += share;
      data += fmt::format("{:.4g} {:.4g} {:.4g} {:.4g} {:.4g} {:.4g}\n", reached[r], y, from, reached[r],
                          y - 0.36, y + 0.36);
      // Named on the bar where there is room, so that the colours need no deciphering.
      const std::string number = fmt::format("{:.0f}", share), full = bars.names[n] + " " + number;
      if (const double room = share / characters_across; room > static_cast<double>(number.size()))
        labels += fmt::format("set label {} {} at {:.4g},{:.4g} center font ',13' textcolor rgb '{}' front\n",
                              label++, plot::quoted(room > static_cast<double>(full.size()) ? full : number),
                              from + share / 2, y, n == 0 ? plot::paper : plot::ink);
    }
    data += "EOD\n";
    plots += fmt::format(
      "{0}$b{1} using 1:2:3:4:5:6 with boxxyerror fillstyle solid 1 border rgb '{4}' linecolor rgb '{2}' "
      "title {3}",
      n ? ", " : "plot ", n, n ? tone_of(tones, bars.names[n]) : plot::line_look(0).colour,
      plot::quoted(bars.names[n]), plot::ink);
  }
  const int pixels = 260 + static_cast<int>(std::max(34 * bars.runs.size(), 30 * bars.names.size()));
  return data +
         plot::twice(
           "energy", 1400, pixels,
           plot::begin("Where the energy went, run by run, in % of the energy put in", source) + labels +
             fmt::format(
               "set ytics ({}) scale 0\nset border 1\nset grid noytics\nset xrange [0:100]\nset yrange "
               "[{}:0.6]\nset lmargin 26\nset rmargin 30\nset xlabel '%'\nset key outside right top vertical "
               "maxcols 1 "
               "Left reverse samplen 2 spacing 1.2 textcolor rgb '{}'\n{}\n",
               ticks, 0.4 - static_cast<double>(bars.runs.size()), plot::ink, plots));
}
} // namespace

std::string energy_chart(const std::vector<Run> &runs)
{
  const Bars bars = collect(runs);
  if (bars.names.empty())
    return "";
  return bars.runs.size() <= grouped_runs ? grouped(bars, source_line(runs))
                                          : stacked(bars, part_tones(runs), source_line(runs));
}
} // namespace solemech::tools
