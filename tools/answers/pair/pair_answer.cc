// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/pair/pair_answer.h"

#include "tools/answers/compare/compare_files.h"
#include "tools/answers/compare/compare_text.h"
#include "tools/answers/compare/comparison_page.h"
#include "tools/answers/sheet/settled_case.h"
#include "tools/answers/sheet/settled_tables.h"
#include "tools/output/results/block_json.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// The rod with both sheets' word on it; a height of its own is of one part.
std::vector<SettledRow> rod_rows(const PairAnswer &answer)
{
  std::vector<SettledRow> rows;
  for (std::size_t part = 0; part < answer.pair.parts.size(); ++part)
    for (auto &row : settled_rows(answer.pair.parts[part], answer.settled.sheets[part], Numbers::of_rod))
      if (std::ranges::none_of(
            rows, [&](const SettledRow &one) { return one.name == row.name && one.now == row.now; }))
        rows.push_back(std::move(row));
  return rows;
}

/// Everything that is to be said beside the numbers, each once; of one part with its name.
std::vector<std::string> remarks_of(const PairAnswer &answer)
{
  std::vector<std::string> remarks;
  const auto               has = [](const std::vector<std::string> &all, const std::string &remark) {
    return std::ranges::find(all, remark) != all.end();
  };
  const auto add = [&](const std::string &remark) {
    if (!has(remarks, remark))
      remarks.push_back(remark);
  };
  const auto add_of_parts = [&](const std::vector<std::string> &heel,
                                const std::vector<std::string> &forefoot) {
    for (const auto &remark : heel)
      add((has(forefoot, remark) ? "heel and forefoot: " : "heel: ") + remark);
    for (const auto &remark : forefoot)
      if (!has(heel, remark))
        add("forefoot: " + remark);
  };
  const auto &heel = answer.pair.heel(), &forefoot = answer.pair.forefoot();
  for (const auto &note : answer.pair.notes)
    add(note);
  add_of_parts(questions_to_person(heel), questions_to_person(forefoot));
  for (const auto &remark : fit_remarks(answer.settled.settled))
    add(remark);
  add_of_parts(sheet_remarks(heel), sheet_remarks(forefoot));
  return remarks;
}

std::string part_of_text(const Sheet &sheet, const SettledSheet &settled)
{
  const bool  predicted = is_prediction(sheet);
  std::string text = readings_table(reading_rows_of(settled), sheet.part + ", your readings");
  text += fmt::format("\n  {}: {}\n", sheet.part,
                      predicted ? "predicted, no reading" : "settled with the readings");
  return text + numbers_text(settled_rows(sheet, settled, Numbers::of_stack), predicted) +
         fits_text(settled) + "\n";
}
} // namespace

bool PairAnswer::is_from_one_height() const
{
  return rigs::fall_of(pair.heel().setup)->height == rigs::fall_of(pair.forefoot().setup)->height;
}

void take_from_runs(const Pair &pair, const Explanation &explanation, SettledTogether &settled)
{
  take_from_run(explanation.a, settled.sheets[0]);
  auto &forefoot = settled.sheets[1];
  if (PairAnswer{pair, settled, explanation}.is_from_one_height())
  {
    take_from_run(explanation.b, forefoot);
    return;
  }
  const double height = rigs::fall_of(pair.forefoot().setup)->height;
  for (std::size_t i = 0; i < forefoot.n_readings; ++i)
    if (const auto &probe = forefoot.probes[i]; probe.bench == 0 && !probe.direct && probe.part.empty())
      forefoot.settled.observations[i].name += fmt::format(", {:.0f} mm", 1e3 * height);
}

std::string pair_text(const PairAnswer &answer, const std::vector<Run> &runs, const SummaryOptions &options)
{
  const auto &pair = answer.pair;
  std::string text = fmt::format("{}: heel and forefoot on one rod ({}); ± is a 90 % band\n\n", pair.label,
                                 rig_text(answer.explanation.plan.a, options.lengths));
  text += comparison_headline(answer.compared(), options) + "\n";
  for (std::size_t part = 0; part < pair.parts.size(); ++part)
    text += part_of_text(pair.parts[part], answer.settled.sheets[part]);
  if (const auto rows = rod_rows(answer); !rows.empty())
    text += "  the rod, one for both\n" + numbers_text(rows, false) + "\n";
  if (std::ranges::any_of(pair.parts, [](const Sheet &sheet) { return !sheet.readings.empty(); }))
    text += verdict_words;
  text += comparison_text({answer.compared()}, options, false) + warnings_text(runs, options) + "\n";
  for (const auto &remark : remarks_of(answer))
    text += "  " + wrapped(remark, static_cast<std::size_t>(std::max(options.width, 60)) - 2, "    ") + "\n";
  return text;
}

std::string pair_json(const PairAnswer &answer, const std::map<std::string, std::string> &versions)
{
  Json out{{"schema", 1}, {"program", "solemech"}, {"versions", versions}};
  out["pair"] = answer.pair.label;
  if (!answer.pair.is_one_file()) // from where the program runs, as the book asks for them
    for (const auto &sheet : answer.pair.parts)
      out["sheets"][sheet.part] = std::filesystem::proximate(sheet.path).generic_string();
  out["notes"] = answer.pair.notes;
  out["converged"] = answer.settled.settled.converged;
  for (std::size_t part = 0; part < answer.pair.parts.size(); ++part)
    out[answer.pair.parts[part].part] =
      settled_document(answer.pair.parts[part], answer.settled.sheets[part]);
  out["comparison"] = comparison_document(answer.compared());
  return text_of(out, 2) + "\n";
}

report::Page pair_page(const PairAnswer &answer, const RunRecord &record)
{
  auto page = comparison_page(record, {answer.compared()});
  page.title = answer.pair.label + ", heel and forefoot";
  for (std::size_t part = 0; part < answer.pair.parts.size(); ++part)
    for (auto &table : settled_tables(answer.pair.parts[part], answer.settled.sheets[part],
                                      answer.pair.parts[part].part, Numbers::of_stack))
      page.tables.push_back(std::move(table));
  if (const auto rows = rod_rows(answer); !rows.empty())
  {
    auto &rod = page.tables.emplace_back(
      report::TableBlock{"The rod",
                         "One rod for both parts: the readings of both say what it is.",
                         {"number", "with your readings", "without", ""},
                         {}});
    for (const auto &row : rows)
      rod.rows.push_back({row.name, row.now, row.before, row.remark});
  }
  for (const auto &remark : remarks_of(answer))
    page.story.push_back(remark);
  return page;
}
} // namespace solemech::tools
