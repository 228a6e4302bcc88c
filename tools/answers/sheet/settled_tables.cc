// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/settled_tables.h"

#include "tools/language/number_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
std::string agreement_sentence(const std::vector<ComparedRow> &readings)
{
  const auto n_with = [&](const char *verdict) {
    return std::ranges::count_if(readings,
                                 [&](const ComparedRow &row) { return row.verdict.starts_with(verdict); });
  };
  const auto agree = n_with("agree"), against = n_with("disagree");
  return fmt::format(
    "{} of {} readings agree with the prediction from the others, {} disagree{}. ± is a 90 % band.", agree,
    readings.size(), against == 0 ? "none" : std::to_string(against),
    agree + against < static_cast<std::ptrdiff_t>(readings.size()) ? "; the rest cannot be judged" : "");
}

std::vector<report::TableBlock> settled_tables(const Sheet &sheet, const SettledSheet &answer,
                                               const std::string &part, Numbers which)
{
  const auto before = part.empty() ? std::string() : capital(part) + ": ";
  const auto headed = [&](std::string heading) {
    if (!before.empty())
      heading.front() = static_cast<char>(std::tolower(static_cast<unsigned char>(heading.front())));
    return before + heading;
  };
  std::vector<report::TableBlock> tables;
  if (const auto readings = reading_rows_of(answer); !readings.empty())
  {
    auto &compared = tables.emplace_back(
      report::TableBlock{headed("Your readings against the model"),
                         agreement_sentence(readings),
                         {"reading", "measured", "predicted from the others", "fitted to all", "verdict"},
                         {}});
    for (const auto &row : readings)
      compared.rows.push_back({row.name, row.measured, row.without_it, row.settled, row.verdict});
  }
  auto &settled = tables.emplace_back(
    report::TableBlock{headed("What they settle"),
                       "What is known about the stack with your readings, and what was known without them.",
                       {"number", "with your readings", "without", ""},
                       {}});
  for (const auto &row : settled_rows(sheet, answer, which))
    settled.rows.push_back({row.name, row.now, row.before, row.remark});
  if (const auto fits = fit_rows(answer); !fits.empty())
  {
    auto &block = tables.emplace_back(report::TableBlock{
      headed("Which library material it could be"),
      "Misfit in units of ±; 1 or less matches. A match does not prove which material it is.",
      {"layer", "material", "misfit", ""},
      {}});
    for (const auto &fit : fits)
      block.rows.push_back({fit.layer, fit.material, fit.misfit, fit.word});
  }
  return tables;
}
} // namespace solemech::tools
