// SPDX-License-Identifier: Apache-2.0
#include "solver/results/catalogue.h"
#include "tools/answers/trial/trial_text.h"
#include "tools/output/results/json_output.h"
#include "tools/output/results/result_blocks.h"

namespace solemech::tools
{
namespace
{
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

Json limit_of(const std::optional<LimitSearch::Answer> &answer, const char *unit)
{
  return answer ? Json{{"answer", name_of(answer->outcome)}, {"load", answer->load}, {"unit", unit}} : Json();
}

Json side_of(const TrialSide &side)
{
  Json json = {{"readings", readings_json(side.result)},
               {"warnings", json_of(side.result.warnings)},
               {"bottoming_energy", limit_of(side.reserve.energy, "J")},
               {"bottoming_mass", limit_of(side.reserve.body_mass, "kg")}};
  if (side.reserve.under_player)
    json["under_player"] = {{"travel_left", side.reserve.under_player->share},
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
    Json        entry = {{"value", point.value},
                         {"rebound", json_of(point.rebound)},
                         {"peak_force", json_of(point.peak_force)},
                         {"compression", json_of(point.compression)},
                         {"travel_left", json_of(point.travel_left)},
                         {"layer", point.layer}};
    for (const auto &column : range.columns)
      entry["readings"][column.reading] = json_of(column.values[i]);
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
  Json rows = Json::array();
  for (const auto &row : answer.rows)
    rows.push_back({{"reading", row.reading},
                    {"name", row.name},
                    {"now", json_of(row.now_value)},
                    {"changed", json_of(row.then_value)},
                    {"trend", name_of(row.trend)},
                    {"note", row.note}});
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
               {"room", json_of(answer.geometry)},
               {"improves", answer.improves},
               {"gets_worse", answer.gets_worse},
               {"range", answer.range ? range_of(*answer.range) : Json()},
               {"notes", answer.notes},
               {"cautions", answer.cautions},
               {"hash", hash},
               {"versions", versions}};
  if (trial.player_mass)
    json["player_mass"] = *trial.player_mass;
  return text_of(json, 2) + "\n";
}
} // namespace solemech::tools
