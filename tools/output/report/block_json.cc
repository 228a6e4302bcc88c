// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/report_json.h"

#include <nlohmann/json.hpp>

namespace solemech::tools::report
{
namespace
{
/// An array of what `one` makes of each entry.
template <typename Entry, typename One>
Json list(const std::vector<Entry> &entries, One one)
{
  Json array = Json::array();
  for (const auto &entry : entries)
    array.push_back(one(entry));
  return array;
}

Json share_table(const ShareTable &table)
{
  return {
    {"reading", table.reading},
    {"label", table.label},
    {"unit", table.unit},
    {"digits", table.digits},
    {"total", table.total},
    {"band", table.band},
    {"rows",
     list(
       table.rows,
       [](const ChangeShare &row) -> Json {
         return {{"change", row.change}, {"share", row.share}, {"band", row.band}, {"verdict", row.verdict}};
       })},
    {"interactions", list(table.interactions,
                          [](const Interaction &one) -> Json {
                            return {{"changes", one.changes}, {"value", one.value}, {"band", one.band}};
                          })},
    {"sentence", table.sentence}};
}

const char *name_of(Verdict verdict)
{
  switch (verdict)
  {
  case Verdict::better:
    return "better";
  case Verdict::worse:
    return "worse";
  case Verdict::same:
    return "same";
  case Verdict::fact:
    return "fact";
  case Verdict::unknown:
    break;
  }
  return "unknown";
}
} // namespace

Json series_json(const ChartSeries &series)
{
  return {{"quantity", series.quantity},
          {"unit", series.unit},
          {"values", series.values},
          {"groups", series.groups},
          {"readings", list(series.readings,
                            [](const SeriesReading &reading) -> Json {
                              return {{"name", reading.name},
                                      {"label", reading.label},
                                      {"unit", reading.unit},
                                      {"values", reading.values}};
                            })},
          {"sentence", series.sentence}};
}

Json tables_json(const std::vector<TableBlock> &blocks)
{
  return list(blocks, [](const TableBlock &block) -> Json {
    return {{"heading", block.heading},
            {"sentence", block.sentence},
            {"columns", block.columns},
            {"rows", block.rows}};
  });
}

Json lines_json(const std::vector<rigs::LineBlock> &blocks)
{
  const auto line = [](const rigs::ChartLine &each) -> Json {
    return {{"name", each.name}, {"x", each.x}, {"y", each.y}};
  };
  const auto chart = [&](const rigs::LineChart &each) -> Json {
    return {{"name", each.name},
            {"xLabel", each.x_label},
            {"yLabel", each.y_label},
            {"lines", list(each.lines, line)},
            {"round", each.round}};
  };
  return list(blocks, [&](const rigs::LineBlock &block) -> Json {
    return {{"heading", block.heading}, {"sentence", block.sentence}, {"charts", list(block.charts, chart)}};
  });
}

Json comparison_json(const Comparison &comparison)
{
  return {{"from", comparison.from},
          {"to", comparison.to},
          {"sentence", comparison.sentence},
          {"sentences", comparison.sentences},
          {"differences", list(comparison.differences,
                               [](const Difference &one) -> Json {
                                 return {{"what", one.what}, {"from", one.from}, {"to", one.to}};
                               })},
          {"readings", list(comparison.readings,
                            [](const ComparedReading &one) -> Json {
                              return {{"name", one.name},     {"label", one.label},    {"unit", one.unit},
                                      {"digits", one.digits}, {"from", one.from},      {"to", one.to},
                                      {"band", one.band},     {"verdict", one.verdict}};
                            })},
          {"shares", list(comparison.shares, share_table)},
          {"parts", list(comparison.parts,
                         [](const ComparedPart &one) -> Json {
                           return {{"name", one.name}, {"from", one.from}, {"to", one.to}};
                         })},
          {"impossible", comparison.impossible},
          {"runs", comparison.runs},
          {"rule", comparison.rule}};
}

Json trial_json(const Trial &trial)
{
  return {{"swaps", trial.swaps},
          {"rows", list(trial.rows,
                        [](const TrialRow &row) -> Json {
                          return {{"name", row.name},
                                  {"now", row.now},
                                  {"then", row.then},
                                  {"note", row.note},
                                  {"verdict", name_of(row.verdict)}};
                        })},
          {"geometry", list(trial.geometry,
                            [](const GeometryCost &cost) -> Json {
                              return {{"name", cost.name}, {"value", cost.value}, {"note", cost.note}};
                            })},
          {"range", trial.range ? series_json(*trial.range) : Json(nullptr)},
          {"bottoms", trial.bottoms},
          {"cautions", trial.cautions}};
}

Json lesson_json(const Lesson &lesson)
{
  return {{"question", lesson.question},
          {"choices", lesson.choices},
          {"answer", lesson.answer},
          {"explanation", lesson.explanation},
          {"guess", lesson.guess ? Json(*lesson.guess) : Json(nullptr)}};
}
} // namespace solemech::tools::report
