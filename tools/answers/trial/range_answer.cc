// SPDX-License-Identifier: Apache-2.0
// A range in words. The place where it bottoms is read off between the points, straight from one to the next.
#include "solver/results/catalogue.h"
#include "tools/answers/trial/trial_answer.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr std::size_t most_columns = 6, told_columns = 3;

/// "unit.gauge_pressure" -> "unit gauge pressure", as people say it.
std::string spoken(std::string address)
{
  std::replace_if(
    address.begin(), address.end(), [](char c) { return c == '.' || c == '_'; }, ' ');
  return address;
}

std::optional<double> value_of(const solver::Result &result, const std::string &name)
{
  const auto *reading = result.find(name);
  return reading ? std::optional(reading->value) : std::nullopt;
}

std::string at_text(double value, const std::string &unit)
{
  return fmt::format("{:.3g}{}{}", value, unit.empty() ? "" : " ", unit);
}

std::string bottoms_text(const RangeAnswer &range)
{
  std::vector<const RangePoint *> known;
  for (const auto &point : range.points)
    if (point.travel_left)
      known.push_back(&point);
  if (known.empty())
    return range.columns.empty() ? "No layer can bottom out." : "";
  std::vector<std::string> places;
  for (std::size_t i = 1; i < known.size(); ++i)
  {
    const double before = *known[i - 1]->travel_left, after = *known[i]->travel_left;
    if ((before > 0) == (after > 0))
      continue;
    const double x =
      known[i - 1]->value + (known[i]->value - known[i - 1]->value) * before / (before - after);
    places.push_back(fmt::format("{} about {}", before > 0 ? "from" : "below", at_text(x, range.unit)));
    if (before > 0)
      places.back() += " on";
  }
  const auto least = *std::min_element(known.begin(), known.end(), [](const auto *a, const auto *b) {
    return *a->travel_left < *b->travel_left;
  });
  if (!places.empty())
    return fmt::format("Under this load it bottoms {} ({} first).", listed(places), least->layer);
  if (*least->travel_left <= 0)
    return fmt::format("Under this load it bottoms everywhere in the range ({}).", least->layer);
  return fmt::format(
    "Under this load it bottoms nowhere in the range; least travel left: {:.0f} % in {} at {}.",
    100 * *least->travel_left, least->layer, at_text(least->value, range.unit));
}

/// "rebound goes from 77 % to 80 %"; with the extreme inside the range when there is one worth telling.
void add_trend(RangeAnswer &range, std::optional<double> RangePoint::*member, const std::string &name,
               std::string (*text)(double))
{
  std::vector<std::pair<double, double>> known;
  for (const auto &point : range.points)
    if (point.*member)
      known.emplace_back(point.value, *(point.*member));
  if (known.size() < 2)
    return;
  const auto [lowest, highest] = std::minmax_element(
    known.begin(), known.end(), [](const auto &a, const auto &b) { return a.second < b.second; });
  if (text(lowest->second) == text(highest->second))
  {
    range.sentences.push_back(fmt::format("{}: {} over the whole range.", name, text(lowest->second)));
    return;
  }
  auto sentence = fmt::format("{}: {} at {}, {} at {}", name, text(known.front().second),
                              at_text(known.front().first, range.unit), text(known.back().second),
                              at_text(known.back().first, range.unit));
  // An extreme inside the range counts when it stands off from both ends by more than can be read as real.
  const auto inside = [&](auto it) {
    const double front = std::abs(it->second - known.front().second),
                 back = std::abs(it->second - known.back().second);
    return std::min(front, back) > (member == &RangePoint::rebound ? 0.02 : 0.03 * std::abs(it->second));
  };
  if (inside(lowest))
    sentence += fmt::format(", lowest {} at {}", text(lowest->second), at_text(lowest->first, range.unit));
  if (inside(highest))
    sentence += fmt::format(", highest {} at {}", text(highest->second), at_text(highest->first, range.unit));
  range.sentences.push_back(sentence + ".");
}

std::string share_text(double share)
{
  return fmt::format("{:.1f} %", 100 * share);
}

std::string millimetres(double metres)
{
  return fmt::format("{:.1f} mm", 1e3 * metres);
}

/// What a table with one row a run would show, of readings that some run has.
std::vector<RangeColumn> columns_of(const TrialRange &range, const std::vector<solver::Result> &results)
{
  std::vector<RangeColumn> columns;
  for (const auto &row : reading_rows())
  {
    if (!row.short_cell || row.readings.empty() || columns.size() == most_columns)
      continue;
    RangeColumn column{row.readings.front(), row.short_heading, {}, {}};
    for (std::size_t i = 0; i < results.size(); ++i)
    {
      column.values.push_back(value_of(results[i], column.reading));
      column.cells.push_back(row.short_cell({"", range.cases[i], results[i]}, {}));
    }
    if (std::any_of(column.values.begin(), column.values.end(),
                    [](const auto &value) { return value.has_value(); }))
      columns.push_back(std::move(column));
  }
  return columns;
}

/// "grip: 0.77 at 50 ShoreA, 0.79 at 75 ShoreA."
std::string ends_text(const RangeAnswer &range, const RangeColumn &column)
{
  return fmt::format("{}: {} at {}, {} at {}.", column.heading, column.cells.front(),
                     at_text(range.points.front().value, range.unit), column.cells.back(),
                     at_text(range.points.back().value, range.unit));
}
} // namespace

RangeAnswer range_answer(const TrialRange &range, const std::vector<solver::Result> &results)
{
  RangeAnswer answer;
  answer.address = range.address;
  answer.quantity = spoken(range.address);
  answer.unit = range.unit;
  answer.return_name = "rebound";
  for (std::size_t i = 0; i < results.size(); ++i)
  {
    const auto &result = results[i];
    RangePoint  point;
    point.value = range.values[i];
    if (!result.complete)
      point.stopped = result.stop_reason;
    else
    {
      point.rebound = value_of(result, solver::catalogue.rebound_by_height);
      if (!point.rebound && (point.rebound = value_of(result, solver::catalogue.loop_return)))
        answer.return_name = "energy return";
      point.peak_force = value_of(result, solver::catalogue.peak_force);
      point.compression = value_of(result, solver::catalogue.greatest_compression);
      if (const auto left = travel_left(range.cases[i], result))
        point.travel_left = left->share, point.layer = left->layer;
    }
    answer.points.push_back(point);
  }
  add_trend(answer, &RangePoint::rebound, answer.return_name, share_text);
  add_trend(answer, &RangePoint::peak_force, "peak force", force_text);
  add_trend(answer, &RangePoint::compression, "compression", millimetres);
  if (std::none_of(answer.points.begin(), answer.points.end(),
                   [](const auto &point) { return point.rebound.has_value(); }))
    answer.columns = columns_of(range, results);
  for (const auto &column : answer.columns)
    if (answer.sentences.size() < told_columns && column.cells.front() != column.cells.back())
      answer.sentences.push_back(ends_text(answer, column));
  answer.bottoms = bottoms_text(answer);
  return answer;
}
} // namespace solemech::tools
