// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/json_output.h"

#include "solver/results/result_check.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"

#include <nlohmann/json.hpp>

namespace solemech::tools
{
namespace
{
using Json = nlohmann::ordered_json;

const char *name_of(ShareKind kind)
{
  switch (kind)
  {
  case ShareKind::returned:
    return "returned";
  case ShareKind::lost_in_part:
    return "lost in part";
  case ShareKind::lost_in_guide:
    return "lost in guide";
  case ShareKind::left_in_stack:
    return "left in stack";
  }
  return "";
}

Json readings_of(const solver::Result &result)
{
  Json readings = Json::object();
  for (const auto &reading : result.readings)
  {
    Json entry = {{"value", reading.value}, {"unit", reading.unit}, {"meaning", reading.meaning}};
    if (reading.error >= 0)
      entry["error"] = reading.error;
    if (reading.doubt() >= 0)
      entry["band"] = reading.doubt();
    readings[reading.name] = std::move(entry);
  }
  return readings;
}

Json energy_of(const Run &run)
{
  const EnergyPicture picture = energy_picture(run.setup, run.result);
  Json                shares = Json::array();
  for (const auto &part : picture.shares)
  {
    shares.push_back({{"part", part.name},
                      {"kind", name_of(part.kind)},
                      {"energy", part.energy},
                      {"share", picture.share(part)}});
    if (part.error >= 0)
      shares.back()["error"] = part.error;
  }
  return {{"input", picture.input},
          {"shares", std::move(shares)},
          {"accounted", picture.accounted()},
          {"numerical", picture.numerical}};
}

Json run_json(const Run &run)
{
  const solver::Result &result = run.result;
  Json                  warnings = Json::array(), chambers = Json::array();
  for (const auto &warning : result.warnings)
    warnings.push_back({{"reading", warning.reading}, {"text", warning.text}});
  for (const auto &chamber : result.chambers)
    chambers.push_back({{"layer", chamber.layer},
                        {"gauge_pressure", is_open(run.setup, chamber) ? 0 : chamber.gauge_pressure},
                        {"air", air_text(run.setup, chamber)},
                        {"fibre_tension", chamber.fibre_tension},
                        {"bulge", chamber.bulge},
                        {"threshold_load", chamber.threshold_load},
                        {"heat_time", chamber.heat_time},
                        {"volume", chamber.volume}});
  const auto &facts = result.facts;
  return {{"label", run.label},
          {"title", run.setup.title},
          {"rig", rig_text(run.setup, Lengths::millimetre)},
          {"complete", result.complete},
          {"stop_reason", result.stop_reason},
          {"readings", readings_of(result)},
          {"energy", energy_of(run)},
          {"warnings", std::move(warnings)},
          {"cautions", cautions({&run.setup})},
          {"invented", is_invented(run.setup)},
          {"chambers", std::move(chambers)},
          {"solver",
           {{"unknowns", facts.unknowns},
            {"cells", facts.cells},
            {"steps", facts.steps},
            {"repeated_steps", facts.repeated_steps},
            {"iterations", facts.iterations},
            {"descents", facts.descents},
            {"given_up", facts.given_up},
            {"seconds", facts.seconds},
            {"ledger_residual", facts.ledger_residual},
            {"ledger_numerical", facts.ledger_numerical}}}};
}
} // namespace

std::string json_text(const std::vector<RunRecord> &records)
{
  Json cases = Json::array();
  for (const auto &record : records)
  {
    Json runs = Json::array();
    for (const auto &run : record.runs)
    {
      solver::require_writable(run.label, run.result);
      runs.push_back(run_json(run));
    }
    Json entry = {{"label", record.label},
                  {"case_hash", record.hash},
                  {"versions", record.versions},
                  {"changed", record.runs.empty() ? std::vector<std::string>() : record.runs[0].changes},
                  {"runs", std::move(runs)}};
    if (record.series)
      entry["series"] = {{"quantity", record.series->quantity},
                         {"unit", record.series->unit},
                         {"values", record.series->values},
                         {"groups", record.series->groups}};
    cases.push_back(std::move(entry));
  }
  const Json answer = {{"schema", json_schema}, {"program", "solemech"}, {"cases", std::move(cases)}};
  // Labels come from files and may hold any bytes: replace what is not UTF-8 instead of failing.
  return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}
} // namespace solemech::tools
