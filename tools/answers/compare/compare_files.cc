// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/compare_files.h"

#include "solver/results/csv_text.h"
#include "tools/answers/compare/view.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace solemech::tools
{
namespace
{
using Json = nlohmann::ordered_json;

Json readings_json(const report::Comparison &view)
{
  Json readings = Json::array();
  for (const auto &reading : view.readings)
    readings.push_back({{"name", reading.name},
                        {"label", reading.label},
                        {"unit", reading.unit},
                        {"from", reading.from},
                        {"to", reading.to},
                        {"difference", reading.to - reading.from},
                        {"band", reading.band},
                        {"verdict", reading.verdict}});
  return readings;
}

Json table_json(const report::ShareTable &table)
{
  Json rows = Json::array(), interactions = Json::array();
  for (const auto &row : table.rows)
    rows.push_back(
      {{"change", row.change}, {"share", row.share}, {"band", row.band}, {"verdict", row.verdict}});
  for (const auto &pair : table.interactions)
    interactions.push_back({{"changes", pair.changes}, {"value", pair.value}, {"band", pair.band}});
  return {{"reading", table.reading},  {"unit", table.unit},        {"total", table.total},
          {"band", table.band},        {"shares", std::move(rows)}, {"interactions", std::move(interactions)},
          {"sentence", table.sentence}};
}

Json pair_json(const ComparedPair &pair)
{
  const auto         view = comparison_view(pair, 0, 1);
  const Explanation &explanation = pair.explanation;
  Json               differences = Json::array(), shares = Json::array(), parts = Json::array();
  for (const auto &difference : view.differences)
    differences.push_back({{"what", difference.what}, {"from", difference.from}, {"to", difference.to}});
  for (const auto &table : view.shares)
    shares.push_back(table_json(table));
  for (const auto &part : view.parts)
    parts.push_back(
      {{"part", part.name}, {"from", part.from}, {"to", part.to}, {"unit", "% of the energy put in"}});
  return {{"from", pair.a},
          {"to", pair.b},
          {"sentence", view.sentence},
          {"sentences", view.sentences},
          {"differences", std::move(differences)},
          {"readings", readings_json(view)},
          {"shares", std::move(shares)},
          {"no_shares", explanation.no_shares},
          {"parts", std::move(parts)},
          {"impossible", view.impossible},
          {"possible_orders", explanation.possible_orders},
          {"sampled_orders", explanation.n_sampled_orders},
          {"rule", view.rule},
          {"runs", {{"calculated", explanation.n_calculated}, {"from_store", explanation.n_from_store}}}};
}
} // namespace

std::string comparison_json(const std::vector<ComparedPair>          &pairs,
                            const std::map<std::string, std::string> &versions)
{
  Json comparisons = Json::array();
  for (const ComparedPair &pair : pairs)
    comparisons.push_back(pair_json(pair));
  const Json answer = {{"schema", comparison_schema},
                       {"program", "solemech"},
                       {"versions", versions},
                       {"comparisons", std::move(comparisons)}};
  return answer.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string shares_csv(const std::vector<ComparedPair> &pairs)
{
  using solver::csv_text;
  std::string text = "from,to,reading,unit,change,share,band,verdict\n";
  for (const ComparedPair &pair : pairs)
    for (const auto &table : comparison_view(pair, 0, 1).shares)
      for (const auto &row : table.rows)
        text += fmt::format("{},{},{},{},{},{},{},{}\n", csv_text(pair.a), csv_text(pair.b), table.reading,
                            table.unit, csv_text(row.change), row.share, row.band, csv_text(row.verdict));
  return text;
}
} // namespace solemech::tools
