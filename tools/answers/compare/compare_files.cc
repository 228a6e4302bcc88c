// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/compare_files.h"

#include "solver/results/csv_text.h"
#include "tools/answers/compare/view.h"
#include "tools/output/results/block_json.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
/// A table with the names of its entries in this file.
Json table_json(const report::ShareTable &table)
{
  return {{"reading", table.reading},      {"unit", table.unit},
          {"total", table.total},          {"band", table.band},
          {"shares", json_of(table.rows)}, {"interactions", json_of(table.interactions)},
          {"sentence", table.sentence}};
}

} // namespace

Json comparison_document(const ComparedPair &pair)
{
  const auto         view = comparison_view(pair, 0, 1);
  const Explanation &explanation = pair.explanation;
  Json               readings = json_of(view.readings), shares = Json::array(), parts = Json::array();
  for (std::size_t i = 0; i < view.readings.size(); ++i)
    readings[i]["difference"] = view.readings[i].to - view.readings[i].from;
  for (const auto &table : view.shares)
    shares.push_back(table_json(table));
  for (const auto &part : view.parts)
    parts.push_back(
      {{"part", part.name}, {"from", part.from}, {"to", part.to}, {"unit", "% of the energy put in"}});
  return {{"from", pair.a},
          {"to", pair.b},
          {"sentence", view.sentence},
          {"sentences", view.sentences},
          {"differences", json_of(view.differences)},
          {"readings", std::move(readings)},
          {"shares", std::move(shares)},
          {"no_shares", explanation.no_shares},
          {"parts", std::move(parts)},
          {"impossible", view.impossible},
          {"possible_orders",
           explanation.possible_orders ? nlohmann::json(*explanation.possible_orders) : nlohmann::json()},
          {"sampled_orders", explanation.n_sampled_orders},
          {"rule", view.rule},
          {"runs", {{"calculated", explanation.n_calculated}, {"from_store", explanation.n_from_store}}}};
}

std::string comparison_json(const std::vector<ComparedPair>          &pairs,
                            const std::map<std::string, std::string> &versions)
{
  Json comparisons = Json::array();
  for (const ComparedPair &pair : pairs)
    comparisons.push_back(comparison_document(pair));
  const Json answer = {{"schema", comparison_schema},
                       {"program", "solemech"},
                       {"versions", versions},
                       {"comparisons", std::move(comparisons)}};
  return text_of(answer, 2) + "\n";
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
