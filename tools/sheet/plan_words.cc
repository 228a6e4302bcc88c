// SPDX-License-Identifier: Apache-2.0
// The plan of a bench sheet in words of the bench.
#include "tools/sheet/reading_plan.h"
#include "tools/sheet/sheet_words.h"
#include "tools/sheet/teardown.h"

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
  text += "\norder of work; what destroys nothing comes first\n";
  int  n = 0;
  bool cutting = false;
  for (const auto &step : teardown_order(sheet))
  {
    if (step.cuts && !cutting)
      text += "\n  from here each cut ends something for good\n";
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
    fmt::format("plan for {}{}{}; +- holds nine cases of ten\n\n", sheet.file.label,
                sheet.pair.empty() ? "" : ", " + sheet.pair, sheet.part.empty() ? "" : ", " + sheet.part) +
    teardown_text(sheet);
  const auto   dimension = plan.question.dimension;
  const double half = 0.5 * (plan.now.high - plan.now.low);
  text += fmt::format("\nnext best readings for: {} of this rig, now {} +-{}\n", plan.question.title,
                      fine_text(plan.now.value, dimension), fine_text(half, dimension));
  int n = 0;
  for (const auto &one : plan.ranked)
    if (one.worth)
      text += fmt::format("  {:>2}  {:<46} band from +-{} to +-{}\n        by: {}; needs: {}{}{}\n", ++n,
                          one.name, fine_text(half, dimension), fine_text(one.half_band, dimension),
                          one.instrument, one.needs, one.note.empty() ? "" : "; ", one.note);
  text += n > 0 ? "  Each alone, and as far as the model holds; a reading of the number itself needs no "
                  "model. Put the one you "
                  "took on\n  the sheet and ask again: the order of the others changes.\n"
                : "  None of the readings known here narrows it by a twentieth.\n";
  if (std::any_of(plan.ranked.begin(), plan.ranked.end(), [](const auto &one) { return !one.worth; }) ||
      !plan.left_out.empty())
    text += "\nnot worth doing for this question\n";
  for (const auto &one : plan.ranked)
    if (!one.worth)
      text += fmt::format("      {:<46} band from +-{} to +-{}; needs: {}\n", one.name,
                          fine_text(half, dimension), fine_text(one.half_band, dimension), one.needs);
  for (const auto &sentence : plan.left_out)
    text += "      " + sentence + "\n";
  if (!plan.doubts.empty())
    text += "\n";
  for (const auto &sentence : plan.doubts)
    text += "  " + sentence + "\n";
  return text;
}
} // namespace solemech::tools
