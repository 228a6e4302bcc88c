// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/series_block.h"

#include "solver/results/catalogue.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::tools::report
{
namespace
{
/// Points of one line of the chart, from left to right.
struct Line
{
  std::string         group;
  std::vector<double> place, value, error;
};

std::vector<Line> lines_of(const ChartSeries &series, const SeriesReading &reading)
{
  std::vector<std::size_t> order(series.values.size());
  std::iota(order.begin(), order.end(), std::size_t(0));
  std::stable_sort(order.begin(), order.end(),
                   [&](std::size_t a, std::size_t b) { return series.values[a] < series.values[b]; });
  std::vector<Line> lines;
  const auto        line_of = [&](const std::string &group) -> Line        &{
    for (auto &line : lines)
      if (line.group == group)
        return line;
    return lines.emplace_back(Line{group, {}, {}, {}});
  };
  // Groups in the order of the runs, points in the order of their places.
  for (std::size_t i = 0; i < series.values.size(); ++i)
    line_of(i < series.groups.size() ? series.groups[i] : "");
  for (const std::size_t i : order)
  {
    Line &line = line_of(i < series.groups.size() ? series.groups[i] : "");
    line.place.push_back(series.values[i]);
    line.value.push_back(reading.values[i]);
    line.error.push_back(i < reading.errors.size() ? std::max(reading.errors[i], 0.0) : 0.0);
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

/// The first of some readings that the series has.
const SeriesReading *first_of(const ChartSeries                                 &series,
                              std::initializer_list<const solver::ReadingKind *> kinds)
{
  for (const auto *kind : kinds)
    if (const auto *reading = find(series, *kind))
      return reading;
  return nullptr;
}

const solver::Main &words_of(const SeriesReading &reading)
{
  static constexpr solver::Main none;
  const auto                   *kind = solver::find_reading(reading.name);
  return kind ? kind->main : none;
}

std::string with_unit(double value, const std::string &unit)
{
  return fmt::format("{:.3g}", value) + (unit.empty() ? "" : " " + unit);
}

std::string reading_text(const SeriesReading &reading, double value)
{
  return reading.unit == "N" ? force_text(value)
                             : fmt::format("{:.{}f} {}", value, reading.unit == "%" ? 0 : 1, reading.unit);
}

std::string short_name(const SeriesReading &reading)
{
  const bool is_return =
    reading.name == solver::catalogue.rebound_by_height || reading.name == solver::catalogue.loop_return;
  return is_return ? std::string(words_of(reading).noun) : reading.label;
}

/// "rises from 0.70 kN to 2.18 kN", "hardly changes", "lies between ... and ...".
std::string course(const SeriesReading &reading, const Line &line)
{
  const auto &values = line.value;
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  // Two points of a share or three per cent of a value are the least that may be read as real.
  const double real = reading.unit == "%" ? 2 : 0.03 * std::max(std::abs(*least), std::abs(*most));
  const auto   words = [&](const char *verb, double from, double to) {
    return fmt::format("{} {} to {}", verb, reading_text(reading, from), reading_text(reading, to));
  };
  if (values.size() < 2)
    return "is " + reading_text(reading, values.front());
  if (*most - *least < real)
    return "hardly changes (" + words("", *least, *most).substr(1) + ")";
  if (std::is_sorted(values.begin(), values.end()))
    return words("rises from", values.front(), values.back());
  if (std::is_sorted(values.rbegin(), values.rend()))
    return words("falls from", values.front(), values.back());
  return fmt::format("lies between {} and {}", reading_text(reading, *least), reading_text(reading, *most));
}

/// +1 where the first line lies above the second beyond doubt, -1 below, 0 where the errors leave it open.
std::vector<int> order_of(const Line &first, const Line &second)
{
  std::vector<int> signs;
  for (std::size_t i = 0; i < first.value.size(); ++i)
  {
    const double difference = first.value[i] - second.value[i], band = first.error[i] + second.error[i];
    signs.push_back(difference > band ? 1 : difference < -band ? -1 : 0);
  }
  return signs;
}

/// "by 38 %" or "by 12 points".
std::string distance(const SeriesReading &reading, double greater, double less)
{
  if (reading.unit == "%")
    return fmt::format("by {:.0f} points", greater - less);
  return less > 0 ? fmt::format("by {:.0f} %", 100 * (greater / less - 1))
                  : "by " + reading_text(reading, greater - less);
}

/// The first line comes to lie above the second at the far end.
std::string rises_above(const ChartSeries &series, const SeriesReading &reading, const Line &upper,
                        const Line &lower, const std::vector<int> &signs, const std::string &verb)
{
  const std::string far = with_unit(upper.place.back(), series.unit);
  const std::string lead = distance(reading, upper.value.back(), lower.value.back());
  if (std::find(signs.begin(), signs.end(), -1) != signs.end())
    if (const auto at = crossing(upper.place, upper.value, lower.value))
      return fmt::format(
        "From about {} of {} upward, {} {} than {}, {} at {}. Below that it is the other way round.",
        with_unit(*at, series.unit), series.quantity, upper.group, verb, lower.group, lead, far);
  const auto first = static_cast<std::size_t>(std::find(signs.begin(), signs.end(), 1) - signs.begin());
  if (first == 0)
    return fmt::format("At every {}, {} {} than {}, {} at {} and {} at {}.", series.quantity, upper.group,
                       verb, lower.group, distance(reading, upper.value.front(), lower.value.front()),
                       with_unit(upper.place.front(), series.unit), lead, far);
  return fmt::format("Up to {} of {} the two cannot be separated. From {} upward, {} {} than {}, {} at {}.",
                     with_unit(upper.place[first - 1], series.unit), series.quantity,
                     with_unit(upper.place[first], series.unit), upper.group, verb, lower.group, lead, far);
}

/// How one group stands to another in one reading.
std::string against(const ChartSeries &series, const SeriesReading &reading, const Line &first,
                    const Line &second, const std::string &verb, const std::string &noun)
{
  if (first.place.empty() || first.place != second.place)
    return "";
  const auto signs = order_of(first, second);
  if (std::all_of(signs.begin(), signs.end(), [](int sign) { return sign == 0; }))
    return fmt::format("Between {} and {} there is no clear difference in {}.", first.group, second.group,
                       noun);
  if (signs.back() > 0)
    return rises_above(series, reading, first, second, signs, verb);
  if (signs.back() < 0)
  {
    auto turned = signs;
    for (int &sign : turned)
      sign = -sign;
    return rises_above(series, reading, second, first, turned, verb);
  }
  return fmt::format(
    "At {} of {} there is no clear difference in {} between {} and {}; below that there is one.",
    with_unit(first.place.back(), series.unit), series.quantity, noun, first.group, second.group);
}

std::string all_against_first(const ChartSeries &series, const SeriesReading &reading,
                              const std::string &verb, const std::string &noun)
{
  std::string text;
  const auto  lines = lines_of(series, reading);
  for (std::size_t i = 1; i < lines.size(); ++i)
    if (const auto one = against(series, reading, lines[0], lines[i], verb, noun); !one.empty())
      text += (text.empty() ? "" : " ") + one;
  return text;
}
} // namespace

std::optional<double> crossing(const std::vector<double> &place, const std::vector<double> &first,
                               const std::vector<double> &second)
{
  std::vector<std::size_t> order(place.size());
  std::iota(order.begin(), order.end(), std::size_t(0));
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
    return place[i] + (place[j] - place[i]) * -difference / (first[j] - second[j] - difference);
  }
  return std::nullopt;
}

ChartSeries chart_series(const std::vector<const Run *> &runs, const Series &series)
{
  ChartSeries chart{series.quantity, series.unit, series.values, series.groups, {}, ""};
  for (const auto *kind : solver::in_order([](const solver::ReadingKind &each) { return each.main.charted; }))
  {
    SeriesReading column{*kind, "", "", {}, {}};
    for (const auto *run : runs)
      if (const auto *reading = run->result.find(*kind))
      {
        const auto display = reading_display(*reading);
        column.label = display.label;
        column.unit = display.unit;
        column.values.push_back(rounded(reading->value * display.factor, 8));
        column.errors.push_back(reading->error * display.factor);
      }
    if (!runs.empty() && column.values.size() == runs.size() && runs.size() == series.values.size())
      chart.readings.push_back(std::move(column));
  }
  chart.sentence = series_sentence(chart);
  return chart;
}

std::string series_sentence(const ChartSeries &series)
{
  using solver::catalogue;
  const auto *force =
    first_of(series, {&catalogue.peak_force, &catalogue.hardness, &catalogue.effective_grip});
  const auto *back = first_of(series, {&catalogue.rebound_by_height, &catalogue.loop_return});
  if (!force || series.values.empty())
    return fmt::format("Not every run gave readings over {}.", series.quantity);
  const std::string verb(words_of(*force).verb), noun(words_of(*force).noun);
  const auto        lines = lines_of(series, *force);
  if (lines.size() > 1)
  {
    std::string text = all_against_first(series, *force, verb, noun);
    if (back)
      if (const auto more = all_against_first(series, *back, "gives more back", short_name(*back));
          !more.empty())
        text += (text.empty() ? "" : " ") + more;
    return text.empty() ? fmt::format("The groups were run at different values of {}.", series.quantity)
                        : text;
  }
  std::string text = fmt::format(
    "From {} to {} of {}, the {} {}", with_unit(lines[0].place.front(), series.unit),
    with_unit(lines[0].place.back(), series.unit), series.quantity, noun, course(*force, lines[0]));
  if (back)
    text += fmt::format("; the {} {}", short_name(*back), course(*back, lines_of(series, *back)[0]));
  return text + ".";
}

std::vector<std::string> series_story(const std::vector<const Run *> &runs, const ChartSeries &series)
{
  std::vector<std::string> story, groups;
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (const std::string group = i < series.groups.size() ? series.groups[i] : "";
        std::find(groups.begin(), groups.end(), group) == groups.end())
      groups.push_back(group);
  for (std::size_t g = 0; g < groups.size(); ++g)
  {
    std::vector<std::string> courses;
    for (const auto &reading : series.readings)
      courses.push_back(
        fmt::format("the {} {}", short_name(reading), course(reading, lines_of(series, reading)[g])));
    std::optional<double> bottoms; ///< least place at which the group bottoms out
    bool                  from_there_on = true;
    for (std::size_t i = 0; i < runs.size(); ++i)
      if ((i < series.groups.size() ? series.groups[i] : "") == groups[g])
        if (const auto margin = rigs::value_of(*runs[i], solver::catalogue.bottoming_margin);
            margin && *margin <= 0)
          bottoms = std::min(bottoms.value_or(series.values[i]), series.values[i]);
    for (std::size_t i = 0; i < runs.size(); ++i)
      if (bottoms && (i < series.groups.size() ? series.groups[i] : "") == groups[g] &&
          series.values[i] > *bottoms)
        from_there_on =
          from_there_on && rigs::value_of(*runs[i], solver::catalogue.bottoming_margin).value_or(1) <= 0;
    std::string text = groups[g].empty() ? "" : groups[g] + ": ";
    text += courses.empty() ? "not every run gave readings." : listed(courses) + ".";
    if (bottoms)
      text += from_there_on ? fmt::format(" It bottoms out from {} of {} upward.",
                                          with_unit(*bottoms, series.unit), series.quantity)
                            : fmt::format(" It bottoms out at {} of {} and at some other values.",
                                          with_unit(*bottoms, series.unit), series.quantity);
    story.push_back(groups[g].empty() ? capital(text) : text);
  }
  return story;
}
} // namespace solemech::tools::report
