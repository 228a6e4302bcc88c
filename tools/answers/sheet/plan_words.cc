// SPDX-License-Identifier: Apache-2.0
// The plan of a bench sheet in words of the bench.
#include "tools/answers/sheet/reading_plan.h"
#include "tools/answers/sheet/sheet_words.h"
#include "tools/answers/sheet/teardown.h"
#include "tools/language/reading_measure.h"
#include "tools/output/results/block_json.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
std::string teardown_text(const Sheet &sheet)
{
  std::string text;
  for (const auto &caution : teardown_cautions(sheet))
    text += "  Caution: " + caution + "\n";
  text += fmt::format(
    "\norder of work{}; steps that destroy nothing come first\n",
    dismantled(sheet.cut) == Dismantled::nothing ? "" : fmt::format(" from here on (\"{}\")", sheet.cut));
  int  n = 0;
  bool cutting = false;
  for (const auto &step : teardown_order(sheet))
  {
    if (step.cuts && !cutting)
      text += "\n  from here on, each cut makes some readings impossible\n";
    cutting = step.cuts;
    text += fmt::format("  {:>2}  {}\n        gives: {}\n", ++n, step.what, step.gives);
    if (!step.ends.empty())
      text += fmt::format("        ends:  {}\n", step.ends);
  }
  return text;
}
} // namespace

std::string plan_text(const Sheet &sheet, const ReadingPlan &plan)
{
  std::string text =
    fmt::format("plan for {}{}{}; ± is a 90 % band\n\n", sheet.file.label,
                sheet.pair.empty() ? "" : ", " + sheet.pair, sheet.part.empty() ? "" : ", " + sheet.part) +
    teardown_text(sheet);
  const auto   dimension = dimension_of(*plan.question.reading);
  const double half = 0.5 * (plan.now.high - plan.now.low);
  text += fmt::format("\nbest next readings for: {} on this rig, now {} ±{}\n", plan.question.title,
                      fine_text(plan.now.value, dimension), fine_text(half, dimension));
  int n = 0;
  for (const auto &one : plan.ranked)
    if (one.worth)
      text += fmt::format("  {:>2}  {:<46} band from ±{} to ±{}\n        by: {}; needs: {}{}{}\n", ++n,
                          one.name, fine_text(half, dimension), fine_text(one.half_band, dimension),
                          one.instrument, one.needs, one.note.empty() ? "" : "; ", one.note);
  text += n > 0 ? "  Each alone, and as far as the model holds; a reading of the number itself needs no "
                  "model. Put the one you "
                  "took on\n  the sheet and ask again: the order of the others changes.\n"
                : "  None of the possible readings narrows it by as much as 5 %.\n";
  if (sheet.tools.empty())
    text += "  Write tools = [\"rule\", \"callipers\"] under [pair] to rank only what your tools can read.\n";
  if (std::any_of(plan.ranked.begin(), plan.ranked.end(), [](const auto &one) { return !one.worth; }) ||
      !plan.left_out.empty())
    text += "\nnot worth doing for this question\n";
  for (const auto &one : plan.ranked)
    if (!one.worth)
      text += fmt::format("      {:<46} band from ±{} to ±{}; needs: {}\n", one.name,
                          fine_text(half, dimension), fine_text(one.half_band, dimension), one.needs);
  for (const auto &sentence : plan.left_out)
    text += "      " + sentence + "\n";
  if (!plan.doubts.empty())
    text += "\n";
  for (const auto &sentence : plan.doubts)
    text += "  " + sentence + "\n";
  return text;
}

namespace
{
Json plan_document(const Sheet &sheet, const ReadingPlan &plan)
{
  Json out{{"schema", 1},
           {"sheet", sheet.file.label},
           {"pair", sheet.pair},
           {"part", sheet.part},
           {"cautions", teardown_cautions(sheet)},
           {"question", plan.question.name},
           {"unit", materials::dimension_name(dimension_of(*plan.question.reading))},
           {"now", {{"value", plan.now.value}, {"low", plan.now.low}, {"high", plan.now.high}}},
           {"not_ranked", plan.left_out},
           {"doubts", plan.doubts}};
  for (const auto &step : teardown_order(sheet))
    out["teardown"].push_back(
      {{"cuts", step.cuts}, {"do", step.what}, {"gives", step.gives}, {"ends", step.ends}});
  out["readings"] = Json::array();
  for (const auto &one : plan.ranked)
    out["readings"].push_back({{"name", one.name},
                               {"by", one.instrument},
                               {"needs", one.needs},
                               {"note", one.note},
                               {"half_band_after", one.half_band},
                               {"worth", one.worth}});
  return out;
}
} // namespace

std::string plan_json(const std::vector<Sheet> &sheets, const std::vector<ReadingPlan> &plans)
{
  Json all = Json::array();
  for (std::size_t i = 0; i < sheets.size(); ++i)
    all.push_back(plan_document(sheets[i], plans[i]));
  return text_of(all.size() == 1 ? all.front() : all, 2) + "\n";
}
} // namespace solemech::tools
