// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/comparison_page.h"

#include "tools/answers/compare/view.h"
#include "tools/language/number_text.h"
#include "tools/rigs/facts.h"

#include <algorithm>

namespace solemech::tools
{
report::Page comparison_page(const RunRecord &record, const std::vector<ComparedPair> &pairs)
{
  constexpr std::size_t n_shown_interactions = 4; // of a reading
  report::Page page = report::side_by_side_page({&record}, record.label, "What makes the difference");
  page.kind = report::PageKind::comparison;
  page.sentence.clear();
  const auto titles = rigs::titles_apart(page.runs);
  for (std::size_t i = 0; i < pairs.size(); ++i)
  {
    const bool         has_titles = !titles.empty() && !pairs[i].are_parts;
    const ComparedPair shown =
      has_titles ? ComparedPair{pairs[i].explanation, titles[0], titles[i + 1]} : pairs[i];
    auto &view = page.comparison.emplace_back(comparison_view(shown, 0, i + 1));
    if (has_titles)
    {
      view.sentence = capital(view.sentence);
      std::ranges::transform(view.sentences, view.sentences.begin(), capital);
    }
    // The greatest are enough to look at; the data files hold all of them.
    for (auto &table : view.shares)
      table.interactions.resize(std::min(table.interactions.size(), n_shown_interactions));
    page.sentence += (i > 0 ? " " : "") + view.sentence;
  }
  return page;
}
} // namespace solemech::tools
