// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "solver/results/result_check.h"
#include "tools/answers/trial/trial_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <cmath>

namespace solemech::tools
{
namespace
{
using Json = nlohmann::ordered_json;

double finite(double value, const std::string &name)
{
  if (!std::isfinite(value))
    throw solver::ResultsError(fmt::format("{} is not a finite number.", name));
  return value;
}

Json number(const std::optional<double> &value, const std::string &name)
{
  return value ? Json(finite(*value, name)) : Json();
}

const char *name_of(Trend trend)
{
  switch (trend)
  {
  case Trend::higher:
    return "higher";
  case Trend::lower:
    return "lower";
  case Trend::same:
    return "no real change";
  case Trend::unknown:
    break;
  }
  return "cannot tell";
}

const char *name_of(LimitSearch::Outcome outcome)
{
  switch (outcome)
  {
  case LimitSearch::Outcome::found:
    return "bottoms at";
  case LimitSearch::Outcome::above:
    return "above";
  case LimitSearch::Outcome::below:
    return "below";
  case LimitSearch::Outcome::stopped:
    break;
  }
  return "a run stopped";
}

Json readings_of(const solver::Result &result)
{
  Json readings = Json::object();
  for (const auto &reading : result.readings)
  {
    Json entry = {
      {"value", finite(reading.value, reading.name)}, {"unit", reading.unit}, {"meaning", reading.meaning}};
    if (reading.error >= 0)
      entry["error"] = reading.error;
    if (reading.doubt() >= 0)
      entry["band"] = reading.doubt();
    readings[reading.name] = std::move(entry);
  }
  return readings;
}

Json limit_of(const std::optional<LimitSearch::Answer> &answer, const char *unit)
{
  return answer ? Json{{"answer", name_of(answer->outcome)},
                       {"load", finite(answer->load, "load")},
                       {"unit", unit}}
                : Json();
}

Json side_of(const TrialSide &side)
{
  Json warnings = Json::array();
  for (const auto &warning : side.result.warnings)
    warnings.push_back({{"reading", warning.reading}, {"text", warning.text}});
  Json json = {{"readings", readings_of(side.result)},
               {"warnings", std::move(warnings)},
               {"bottoming_energy", limit_of(side.reserve.energy, "J")},
               {"bottoming_mass", limit_of(side.reserve.body_mass, "kg")}};
  if (side.reserve.under_player)
    json["under_player"] = {{"travel_left", finite(side.reserve.under_player->share, "travel_left")},
                            {"bottoms", side.reserve.under_player->share <= 0},
                            {"layer", side.reserve.under_player->layer}};
  return json;
}

Json range_of(const RangeAnswer &range)
{
  Json points = Json::array();
  for (std::size_t i = 0; i < range.points.size(); ++i)
  {
    const auto &point = range.points[i];
    Json        entry = {{"value", finite(point.value, range.address)},
                         {"rebound", number(point.rebound, "rebound")},
                         {"peak_force", number(point.peak_force, solver::catalogue.peak_force)},
                         {"compression", number(point.compression, "compression")},
                         {"travel_left", number(point.travel_left, "travel_left")},
                         {"layer", point.layer}};
    for (const auto &column : range.columns)
      entry["readings"][column.reading] = number(column.values[i], column.reading);
    if (!point.stopped.empty())
      entry["stopped"] = point.stopped;
    points.push_back(std::move(entry));
  }
  return {{"entry", range.address},
          {"unit", range.unit},
          {"points", std::move(points)},
          {"sentences", range.sentences},
          {"bottoms", range.bottoms}};
}
} // namespace

std::string trial_json(const TrialInput &trial, const TrialResult &result, const TrialAnswer &answer,
                       const std::map<std::string, std::string> &versions, const std::string &hash)
{
  Json rows = Json::array(), geometry = Json::array();
  for (const auto &row : answer.rows)
    rows.push_back({{"reading", row.reading},
                    {"name", row.name},
                    {"now", number(row.now_value, row.reading)},
                    {"changed", number(row.then_value, row.reading)},
                    {"trend", name_of(row.trend)},
                    {"note", row.note}});
  for (const auto &line : answer.geometry)
    geometry.push_back({{"name", line.name}, {"value", line.value}, {"note", line.note}});
  Json json = {{"schema", trial_json_schema},
               {"program", "solemech"},
               {"kind", "trial"},
               {"case", trial.label},
               {"settings", answer.settings},
               {"swaps", answer.swaps},
               {"rig", answer.rig},
               {"sentence", answer.sentence},
               {"now", side_of(result.now)},
               {"changed", side_of(result.changed)},
               {"rows", std::move(rows)},
               {"reserve_note", answer.reserve_note},
               {"room", std::move(geometry)},
               {"improves", answer.improves},
               {"gets_worse", answer.gets_worse},
               {"range", answer.range ? range_of(*answer.range) : Json()},
               {"notes", answer.notes},
               {"cautions", answer.cautions},
               {"hash", hash},
               {"versions", versions}};
  if (trial.player_mass)
    json["player_mass"] = *trial.player_mass;
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}
} // namespace solemech::tools
