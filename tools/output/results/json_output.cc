// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/json_output.h"

#include "solver/results/result_check.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/cautions.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/result_blocks.h"

namespace solemech::tools
{
namespace
{
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
  Json                  chambers = Json::array();
  for (const auto &chamber : result.chambers)
    chambers.push_back({{"layer", chamber.layer},
                        {"gauge_pressure", is_open(run.setup, chamber) ? 0 : chamber.gauge_pressure},
                        {"air", air_text(run.setup, chamber)},
                        {"fibre_tension", chamber.fibre_tension},
                        {"bulge", chamber.bulge},
                        {"threshold_load", chamber.threshold_load},
                        {"heat_time", chamber.heat_time},
                        {"volume", chamber.volume}});
  return {{"label", run.label},
          {"title", run.setup.title},
          {"rig", rig_text(run.setup, Lengths::millimetre)},
          {"complete", result.complete},
          {"stop_reason", result.stop_reason},
          {"readings", readings_json(result)},
          {"energy", energy_of(run)},
          {"warnings", json_of(result.warnings)},
          {"cautions", cautions({&run.setup})},
          {"invented", is_invented(run.setup)},
          {"chambers", std::move(chambers)},
          {"solver", json_of(result.facts)}};
}
} // namespace

Json readings_json(const solver::Result &result)
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

Json records_json(const std::vector<RunRecord> &records)
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
      entry["series"] = json_of(*record.series);
    cases.push_back(std::move(entry));
  }
  return {{"schema", json_schema}, {"program", "solemech"}, {"cases", std::move(cases)}};
}

std::string json_text(const std::vector<RunRecord> &records)
{
  return text_of(records_json(records), 2) + "\n";
}
} // namespace solemech::tools
