// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/view.h"

#include "solver/results/uncertainty.h"
#include "tools/answers/compare/ledger_difference.h"
#include "tools/answers/compare/reading_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr const char *cannot_tell = "cannot tell", *too_small = "too small to be taken as real";

std::string verdict_on(const std::string &reading, double from, double to, double band, bool same)
{
  const ReadingWords words = reading_words(reading);
  if (same)
    return "no difference";
  if (std::abs(to - from) <= band)
    return cannot_tell;
  if (is_within_doubt(reading, from, to))
    return too_small;
  return std::string(to > from ? words.more : words.less);
}

/// The band of a difference: of the readings that are split, theirs; else the sum of the two errors and what
/// the doubts do.
double band_of(const Explanation &explanation, const std::string &reading)
{
  for (const ReadingSplit &split : explanation.splits)
    if (split.name == reading)
      return split.total.band;
  return solver::uncertainty_of_difference(*explanation.a.find(reading), *explanation.b.find(reading));
}

std::string share_verdict(const Explanation &explanation, const ReadingSplit &split, std::size_t change)
{
  const Banded &share = split.shares[change];
  if (share.value == 0)
    return "nothing";
  if (!share.is_told())
    return cannot_tell;
  if (const Together *pair = entangled(split, change))
    return "together with " +
           explanation.plan.changes[pair->first == change ? pair->second : pair->first].name;
  if (is_small_share(split, change))
    return too_small;
  const ReadingWords words = reading_words(split.name);
  return std::string(share.value > 0 ? words.more : words.less);
}

report::ShareTable share_table(const Explanation &explanation, const ReadingSplit &split)
{
  const ReadingWords words = reading_words(split.name);
  report::ShareTable table;
  table.reading = split.name;
  table.label = words.label;
  table.unit = words.difference;
  table.digits = words.digits;
  table.total = split.total.value * words.scale;
  table.band = split.total.band * words.scale;
  for (std::size_t i = 0; i < split.shares.size(); ++i)
  {
    const Banded &share = split.shares[i];
    table.rows.push_back({explanation.plan.changes[i].name, share.value * words.scale,
                          share.band * words.scale, share_verdict(explanation, split, i)});
  }
  for (const Together &pair : split.interactions)
    table.interactions.push_back(
      {{explanation.plan.changes[pair.first].name, explanation.plan.changes[pair.second].name},
       pair.value * words.scale,
       pair.band * words.scale});
  table.sentence = share_sentence(explanation, split);
  return table;
}
std::string missing_mixtures(const Explanation &explanation)
{
  if (explanation.possible_orders)
    return fmt::format("Orders through a mixture that cannot be built or run are left out; {:.0f} % of the "
                       "orders count.",
                       100 * *explanation.possible_orders);
  if (explanation.n_sampled_orders > 0)
    return "Orders through a mixture that cannot be built or run are left out.";
  return "A mixture that cannot be run is left out; what the shares lack without it is spread evenly over "
         "them, and their bands include that.";
}
} // namespace

std::string runs_text(const Explanation &explanation)
{
  const std::size_t n_runs = explanation.n_calculated + explanation.n_from_store;
  std::string       text = fmt::format("{} run{}", n_runs, n_runs == 1 ? "" : "s");
  if (explanation.n_from_store > 0)
    text += fmt::format(", {} of them from before", explanation.n_from_store);
  return text;
}

report::Comparison comparison_view(const ComparedPair &pair, std::size_t from, std::size_t to)
{
  const Explanation &explanation = pair.explanation;
  const bool         same = explanation.plan.changes.empty();
  report::Comparison view;
  view.from = from;
  view.to = to;
  view.sentence = main_sentence(pair);
  view.sentences = further_sentences(pair);
  for (const StackChange &change : explanation.plan.changes)
    for (const ChangeDetail &detail : change.details)
      view.differences.push_back({detail.what, detail.from, detail.to});
  for (const auto *kind : compared_readings()) // those that both runs have
  {
    const std::string name = *kind;
    const auto       *a = explanation.a.find(name), *b = explanation.b.find(name);
    if (!a || !b)
      continue;
    const ReadingWords words = reading_words(name);
    const double       band = same ? 0 : band_of(explanation, name);
    view.readings.push_back({name, std::string(words.label), std::string(words.unit), words.digits,
                             a->value * words.scale, b->value * words.scale, band * words.scale,
                             verdict_on(name, a->value, b->value, band, same)});
  }
  for (const ReadingSplit &split : explanation.splits)
    if (!split.shares.empty())
      view.shares.push_back(share_table(explanation, split));
  for (const PartDifference &part : ledger_difference(explanation.plan, explanation.a, explanation.b))
    view.parts.push_back({part.name, 100 * part.from, 100 * part.to});
  for (const ImpossibleMixture &mixture : explanation.impossible)
    view.impossible.push_back(mixture.name + ": " + mixture.reason);
  view.runs = runs_text(explanation);
  view.rule = closing_rule(explanation.plan);
  if (explanation.n_sampled_orders > 0)
    view.rule += fmt::format("{}With {} changes, {} orders are sampled; the bands include their scatter.",
                             view.rule.empty() ? "" : " ", explanation.plan.changes.size(),
                             explanation.n_sampled_orders);
  if (!explanation.one_rod.empty())
    view.rule +=
      fmt::format("{}Both were read on the same rod: {}.", view.rule.empty() ? "" : " ", explanation.one_rod);
  if (explanation.has_doubts)
    view.rule += fmt::format("{}{}", view.rule.empty() ? "" : " ",
                             explanation.no_doubt_bands.empty()
                               ? "The bands (90 %) include what the readings left open in a settled stack, "
                                 "and the error of mesh and time step."
                               : fmt::format("The bands include only the error of mesh and time step: {}.",
                                             explanation.no_doubt_bands));
  if (explanation.shares_without_doubts)
    view.rule += " The bands of the shares leave out an uncertainty that makes the two differ in something "
                 "else as well.";
  if (!explanation.impossible.empty() && explanation.no_shares.empty())
    view.rule += (view.rule.empty() ? "" : " ") + missing_mixtures(explanation);
  return view;
}
} // namespace solemech::tools
