// SPDX-License-Identifier: Apache-2.0
#include "tools/report/series_block.h"

#include "tools/report/plain_text.h"
#include "tools/report/reading_display.h"
#include "tools/report/story.h"
#include "tools/results/readings_table.h"
#include "tools/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr const char *charted[] = {"rebound_by_height", "loop_return", "peak_force", "greatest_compression"};

/// Points of one line of the chart.
struct Line
{
  std::string         group;
  std::vector<double> place, value;
};

std::vector<Line> lines_of(const ChartSeries &series, const SeriesReading &reading)
{
  std::vector<Line> lines;
  for (std::size_t i = 0; i < series.values.size(); ++i)
  {
    const std::string group = i < series.groups.size() ? series.groups[i] : "";
    auto              found =
      std::find_if(lines.begin(), lines.end(), [&](const Line &line) { return line.group == group; });
    if (found == lines.end())
      found = lines.insert(found, Line{group, {}, {}});
    found->place.push_back(series.values[i]);
    found->value.push_back(reading.values[i]);
  }
  return lines;
}

const SeriesReading *find(const ChartSeries &series, const std::string &name)
{
  for (const auto &reading : series.readings)
    if (reading.name == name)
      return &reading;
  return nullptr;
}

std::string with_unit(double value, const std::string &unit)
{
  return fmt::format("{:.3g}", value) + (unit.empty() ? "" : " " + unit);
}

std::string reading_value(const SeriesReading &reading, double value)
{
  return reading.unit == "N" ? force_text(value)
                             : fmt::format("{:.{}f} {}", value, reading.unit == "%" ? 0 : 1, reading.unit);
}

/// "rises from 0.70 kN to 2.18 kN", "stays at 65 %", "lies between ... and ...".
std::string course(const SeriesReading &reading, const std::vector<double> &values)
{
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  const double scale = std::max(std::abs(*least), std::abs(*most));
  // Two points of a share or three per cent of a value are the least that may be read as real.
  const double real = reading.unit == "%" ? 2 : 0.03 * scale;
  if (*most - *least < real)
    return fmt::format("hardly changes ({} to {})", reading_value(reading, *least),
                       reading_value(reading, *most));
  if (std::is_sorted(values.begin(), values.end()))
    return fmt::format("rises from {} to {}", reading_value(reading, values.front()),
                       reading_value(reading, values.back()));
  if (std::is_sorted(values.rbegin(), values.rend()))
    return fmt::format("falls from {} to {}", reading_value(reading, values.front()),
                       reading_value(reading, values.back()));
  return fmt::format("lies between {} and {}", reading_value(reading, *least), reading_value(reading, *most));
}

/// How one group stands to another in one reading.
std::string against(const ChartSeries &series, const Line &first, const Line &second, const std::string &more)
{
  if (first.place.size() < 2 || first.place != second.place)
    return "";
  if (const auto at = crossing(first.place, first.value, second.value))
    return fmt::format("From about {} of {} on, {} {} than {}.", with_unit(*at, series.unit), series.quantity,
                       first.group, more, second.group);
  if (const auto at = crossing(first.place, second.value, first.value))
    return fmt::format("From about {} of {} on, {} {} than {}.", with_unit(*at, series.unit), series.quantity,
                       second.group, more, first.group);
  bool above = true, below = true;
  for (std::size_t i = 0; i < first.value.size(); ++i)
  {
    above = above && first.value[i] > second.value[i];
    below = below && first.value[i] < second.value[i];
  }
  if (above || below)
    return fmt::format("{} {} than {} at every {}.", capital(above ? first.group : second.group), more,
                       above ? second.group : first.group, series.quantity);
  return "";
}

const solver::Reading *shared(const std::vector<const Run *> &runs, const char *name)
{
  for (const auto *run : runs)
    if (!run->result.find(name))
      return nullptr;
  return runs.front()->result.find(name);
}

std::vector<double> values_of(const std::vector<const Run *> &runs, const char *name)
{
  std::vector<double> values;
  for (const auto *run : runs)
    values.push_back(run->result.find(name)->value);
  return values;
}

/// True when the values differ by no more than both errors together.
bool same(const Run &a, const Run &b, const char *name)
{
  const auto  &x = *a.result.find(name), &y = *b.result.find(name);
  const double band = std::max(x.error, 0.0) + std::max(y.error, 0.0);
  return std::abs(x.value - y.value) <= std::max(band, 1e-9 * std::max(std::abs(x.value), std::abs(y.value)));
}

/// Greatest and least of several runs in one reading, or that there is no difference.
std::string ranking(const std::vector<const Run *> &runs, const char *name, const std::string &what,
                    const std::string &most_verb, std::string (*text)(double))
{
  const auto values = values_of(runs, name);
  const auto most = static_cast<std::size_t>(std::max_element(values.begin(), values.end()) - values.begin());
  const auto least =
    static_cast<std::size_t>(std::min_element(values.begin(), values.end()) - values.begin());
  if (same(*runs[most], *runs[least], name))
    return fmt::format("no difference in {} ({})", what, text(values[most]));
  return runs.size() == 2
           ? fmt::format("{} {} than {}, {} against {}", runs[most]->label, most_verb, runs[least]->label,
                         text(values[most]), text(values[least]))
           : fmt::format("{} {} than all others, {}; at the other end stands {} with {}", runs[most]->label,
                         most_verb, text(values[most]), runs[least]->label, text(values[least]));
}

std::string percent(double share)
{
  return share_words(share);
}
} // namespace

std::optional<double> crossing(const std::vector<double> &place, const std::vector<double> &first,
                               const std::vector<double> &second)
{
  std::vector<std::size_t> order(place.size());
  for (std::size_t i = 0; i < order.size(); ++i)
    order[i] = i;
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return place[a] < place[b]; });
  // From the far end back to the last point at which the first line was not above.
  for (std::size_t k = order.size(); k-- > 0;)
  {
    const std::size_t i = order[k];
    const double      difference = first[i] - second[i];
    if (difference > 0)
      continue;
    if (k + 1 == order.size())
      return std::nullopt;
    const std::size_t j = order[k + 1];
    const double      after = first[j] - second[j];
    return place[i] + (place[j] - place[i]) * -difference / (after - difference);
  }
  return std::nullopt;
}

ChartSeries chart_series(const std::vector<const Run *> &runs, const Series &series)
{
  ChartSeries chart{series.quantity, series.unit, series.values, series.groups, {}, ""};
  if (runs.empty() || series.values.size() != runs.size())
    return chart;
  for (const char *name : charted)
    if (const auto *reading = shared(runs, name))
    {
      const auto    display = reading_display(*reading);
      SeriesReading column{name, display.label, display.unit, {}};
      for (const double value : values_of(runs, name))
        column.values.push_back(rounded(value * display.factor, 8));
      chart.readings.push_back(std::move(column));
    }
  chart.sentence = series_sentence(chart);
  return chart;
}

std::string series_sentence(const ChartSeries &series)
{
  const auto *force = find(series, "peak_force");
  const auto *back = find(series, "rebound_by_height");
  if (!back)
    back = find(series, "loop_return");
  if (!force || series.values.empty())
    return fmt::format("Not every run gave readings over {}.", series.quantity);
  const auto  force_lines = lines_of(series, *force);
  std::string text;
  if (force_lines.size() > 1)
  {
    for (std::size_t i = 1; i < force_lines.size(); ++i)
    {
      const std::string one = against(series, force_lines[0], force_lines[i], "hits harder");
      text += (text.empty() || one.empty() ? "" : " ") + one;
    }
    if (!back)
      return text;
    const auto back_lines = lines_of(series, *back);
    for (std::size_t i = 1; i < back_lines.size(); ++i)
    {
      const std::string one = against(series, back_lines[0], back_lines[i], "gives more back");
      text += (text.empty() || one.empty() ? "" : " ") + one;
    }
    return text.empty() ? "The groups do not stand in one order." : text;
  }
  // One line: told in the order of the quantity.
  std::vector<std::size_t> order(series.values.size());
  for (std::size_t i = 0; i < order.size(); ++i)
    order[i] = i;
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return series.values[a] < series.values[b]; });
  const auto sorted = [&](const SeriesReading &reading) {
    std::vector<double> values;
    for (const std::size_t i : order)
      values.push_back(reading.values[i]);
    return values;
  };
  text = fmt::format(
    "From {} to {} of {} the peak force {}", with_unit(series.values[order.front()], series.unit),
    with_unit(series.values[order.back()], series.unit), series.quantity, course(*force, sorted(*force)));
  if (back)
    text += fmt::format("; the {} {}", back->name == "loop_return" ? "energy return" : "rebound",
                        course(*back, sorted(*back)));
  return text + ".";
}

std::string together_sentence(const std::vector<const Run *> &runs)
{
  if (runs.size() == 1)
    return sentence_of(*runs.front());
  std::vector<std::string> texts;
  if (runs.empty())
    return "";
  if (shared(runs, "rebound_by_height"))
    texts.push_back(ranking(runs, "rebound_by_height", "rebound", "rebounds higher", percent));
  else if (shared(runs, "loop_return"))
    texts.push_back(ranking(runs, "loop_return", "energy return", "gives more back", percent));
  if (shared(runs, "peak_force"))
    texts.push_back(ranking(runs, "peak_force", "peak force", "hits harder", force_text));
  if (texts.empty())
    return "Not every run gave readings; what there is stands below.";
  std::string text = capital(texts[0]);
  for (std::size_t i = 1; i < texts.size(); ++i)
    text += ". " + capital(texts[i]);
  return text + ".";
}

std::vector<Headline> together_headline(const std::vector<const Run *> &runs)
{
  if (runs.size() == 1)
    return headline_of(*runs.front());
  constexpr std::size_t most_named = 4;
  std::vector<Headline> headline;
  const auto add = [&](const char *name, const std::string &label, const std::string &note, auto text) {
    if (runs.empty() || !shared(runs, name))
      return;
    const auto values = values_of(runs, name);
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    std::vector<std::string> texts;
    if (runs.size() <= most_named)
      for (const double value : values)
        texts.push_back(text(value));
    else
      texts = {text(*least), text(*most)};
    headline.push_back(
      {label, fmt::format("{}", fmt::join(texts, runs.size() <= most_named ? " / " : " to ")), note});
  };
  std::vector<std::string> labels;
  for (const auto *run : runs)
    labels.push_back(run->label);
  const std::string note = runs.size() <= most_named ? fmt::format("{}", fmt::join(labels, " / "))
                                                     : fmt::format("over {} runs", runs.size());
  add("rebound_by_height", "rebound", note, percent);
  add("loop_return", "energy return", note, percent);
  add("peak_force", "peak force", note, force_text);
  add("greatest_compression", "compression", note,
      [](double value) { return length_text(value, Lengths::millimetre); });
  return headline;
}
} // namespace solemech::tools::report
