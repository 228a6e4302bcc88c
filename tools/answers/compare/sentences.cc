// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/sentences.h"

#include "solver/results/catalogue.h"
#include "tools/answers/compare/ledger_difference.h"
#include "tools/answers/compare/reading_words.h"
#include "tools/language/number_text.h"
#include "tools/output/results/knee.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace solemech::tools
{
namespace
{
const ReadingSplit *find(const Explanation &explanation, const std::string &reading)
{
  for (const ReadingSplit &split : explanation.splits)
    if (split.name == reading)
      return &split;
  return nullptr;
}

const ReadingSplit *main_split(const Explanation &explanation)
{
  return find(explanation, main_reading(explanation.a, explanation.b));
}

bool is_return(const ReadingSplit &split)
{
  return split.name == solver::catalogue.rebound_by_height || split.name == solver::catalogue.loop_return;
}

/// "15.9 points", without sign.
std::string amount(const ReadingSplit &split)
{
  const ReadingWords words = reading_words(split.name);
  return fmt::format("{:.{}f} {}", std::abs(split.total.value) * words.scale, words.digits, words.difference);
}

/// "63 mm (15.9 points of return)" of a drop, "4.2 points of return" of a press.
std::string rebound_amount(const Explanation &explanation, const ReadingSplit &split)
{
  const auto *from = explanation.a.find(solver::catalogue.rebound_height),
             *to = explanation.b.find(solver::catalogue.rebound_height);
  const std::string points = amount(split) + " of return";
  if (split.name != solver::catalogue.rebound_by_height || !from || !to)
    return points;
  // Heights of different falls say nothing against each other.
  const auto *fall_a = rigs::fall_of(explanation.plan.a), *fall_b = rigs::fall_of(explanation.plan.b);
  if (!fall_a || !fall_b || fall_a->height != fall_b->height)
    return points;
  return fmt::format("{} ({})", length_text(std::abs(to->value - from->value), Lengths::millimetre), points);
}

/// "+14.1" in the unit of differences.
std::string signed_number(const std::string &reading, double value)
{
  const ReadingWords words = reading_words(reading);
  return fmt::format("{:+.{}f}", value * words.scale, words.digits);
}

std::string quoted(const StackChange &change)
{
  return "\"" + change.name + "\"";
}
} // namespace

std::string difference_text(const std::string &reading, double value)
{
  const std::string unit(reading_words(reading).difference);
  return signed_number(reading, value) + (unit.empty() ? "" : " " + unit);
}

namespace
{
/// What the two are called within a sentence.
ComparedPair within_sentence(const ComparedPair &pair)
{
  return pair.are_parts ? ComparedPair{pair.explanation, "the " + pair.a, "the " + pair.b} : pair;
}

/// A sentence on parts of a shoe begins with a word, any other with the label of a file, which stays.
std::string begun(std::string sentence, const ComparedPair &pair)
{
  return pair.are_parts ? capital(std::move(sentence)) : sentence;
}

std::string difference_sentence(const ComparedPair &pair)
{
  const Explanation &explanation = pair.explanation;
  if (explanation.plan.changes.empty())
    return fmt::format("{} and {} are the same stack on the same rig: no difference.", pair.a, pair.b);
  const ReadingSplit *split = main_split(explanation);
  if (!split)
    return fmt::format("{} and {} give different kinds of readings: no single number compares them.", pair.a,
                       pair.b);
  const bool drop = split->name == solver::catalogue.rebound_by_height;
  if (!split->total.is_told())
    return fmt::format("The numbers cannot separate these two by their {}: {} and {} differ by less than the "
                       "error of the numbers.",
                       reading_words(split->name).label, pair.a, pair.b);
  const bool more = split->total.value > 0;
  if (split->name == solver::catalogue.hardness)
    return fmt::format("{} reads {} than {}: {:.1f} against {:.1f} points.", pair.b,
                       more ? "harder" : "softer", pair.a, split->to, split->from);
  if (split->name == solver::catalogue.effective_grip && is_within_doubt(split->name, split->from, split->to))
    return fmt::format("{} and {} grip alike: {:.2f} and {:.2f}.", pair.b, pair.a, split->to, split->from);
  if (split->name == solver::catalogue.effective_grip)
    return fmt::format("{} grips {} than {}: {:.2f} against {:.2f}.", pair.b, more ? "more" : "less", pair.a,
                       split->to, split->from);
  if (split->name == solver::catalogue.compression_set)
    return fmt::format("{} keeps {} {} of the squeeze than {}: {:.1f} % against {:.1f} %.", pair.b,
                       amount(*split), more ? "more" : "less", pair.a, 100 * split->to, 100 * split->from);
  return drop ? fmt::format("{} throws the weight back {} {} than {}.", pair.b,
                            rebound_amount(explanation, *split), more ? "higher" : "lower", pair.a)
              : fmt::format("{} gives back {} {} than {}.", pair.b, rebound_amount(explanation, *split),
                            more ? "more" : "less", pair.a);
}

std::vector<std::string> warning_sentences(const ComparedPair &pair)
{
  const Explanation       &explanation = pair.explanation;
  std::vector<std::string> sentences;
  if (explanation.plan.changes.empty())
    return sentences;
  const ReadingSplit *returned = main_split(explanation),
                     *force = find(explanation, solver::catalogue.peak_force);
  if (returned && is_return(*returned) && returned->total.is_told() &&
      is_within_doubt(returned->name, returned->from, returned->to))
    sentences.push_back(
      "Do not take a difference below 2 points of return as real, unless you know the inputs that well.");
  if (force && force->total.is_told() && force->from != 0)
  {
    const bool   harder = force->total.value > 0;
    const double share = std::abs(force->total.value) / force->from;
    if (is_within_doubt(force->name, force->from, force->to))
      sentences.push_back("The peak forces differ by less than 3 %: do not take that as real, unless you "
                          "know the inputs that well.");
    else
    {
      const bool against = returned && is_return(*returned) && returned->total.is_told() &&
                           (returned->total.value > 0) == harder;
      const bool held = returned && returned->name == solver::catalogue.compression_set;
      sentences.push_back(fmt::format("{}{} {} {} by {:.0f} %: {} against {}.",
                                      against && harder ? "But " : "", pair.b, held ? "pushes back" : "hits",
                                      harder ? "harder" : "softer", 100 * share, force_text(force->to),
                                      force_text(force->from)));
    }
  }
  for (const auto &[result, label] : {std::pair{&explanation.a, &pair.a}, std::pair{&explanation.b, &pair.b}})
    if (const auto *margin = result->find(solver::catalogue.bottoming_margin); margin && margin->value < 0.15)
      sentences.push_back(*label + " " + bottoming_consequence(*result, margin->value));
  return sentences;
}
} // namespace

std::string main_sentence(const ComparedPair &pair)
{
  return begun(difference_sentence(within_sentence(pair)), pair);
}

std::vector<std::string> further_sentences(const ComparedPair &pair)
{
  auto sentences = warning_sentences(within_sentence(pair));
  for (auto &sentence : sentences)
    sentence = begun(sentence, pair);
  return sentences;
}

std::string share_sentence(const Explanation &explanation, const ReadingSplit &split)
{
  const auto &changes = explanation.plan.changes;
  if (changes.empty())
    return "No difference.";
  const std::string total = difference_text(split.name, split.total.value);
  if (split.shares.empty())
    return fmt::format("{} in all. The shares cannot be determined: {}.", total, explanation.no_shares);
  if (!split.total.is_told())
    return "The numbers cannot separate these two.";
  if (is_within_doubt(split.name, split.from, split.to))
    return fmt::format("{} in all, too small to be taken as real.", total);
  if (changes.size() == 1)
    return fmt::format("All of {} comes from {}, the only change.", total, quoted(changes[0]));

  std::vector<std::size_t> order(changes.size());
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t j) {
    return std::abs(split.shares[i].value) > std::abs(split.shares[j].value);
  });
  const std::size_t first = order[0];
  if (!split.shares[first].is_told())
    return fmt::format("{} in all, but every single share is smaller than the error of the numbers.", total);
  if (is_small_share(split, first))
    return fmt::format("{} in all, from changes that are each too small to be taken as real.", total);
  if (const Together *pair = entangled(split, first))
  {
    const std::size_t other = pair->first == first ? pair->second : pair->first;
    return fmt::format("{} in all. {} and {} act on each other: together they do {} {} than the sum of their "
                       "separate effects, so neither alone is the cause.",
                       total, quoted(changes[first]), quoted(changes[other]),
                       difference_text(split.name, std::abs(pair->value)).substr(1),
                       pair->value < 0 ? "less" : "more");
  }
  std::string text =
    fmt::format("Of {}, {} come from {}", total, signed_number(split.name, split.shares[first].value),
                quoted(changes[first]));
  // A second one is named when it is at least a quarter of the first.
  if (const std::size_t second = order[1];
      split.shares[second].is_told() && !entangled(split, second) && !is_small_share(split, second) &&
      std::abs(split.shares[second].value) > 0.25 * std::abs(split.shares[first].value))
    text += fmt::format(", {} with {}", signed_number(split.name, split.shares[second].value),
                        quoted(changes[second]));
  return text + ".";
}

namespace
{
/// True when no reading that is split shows the change by as much as can be read as real.
bool hardly_reads(const Explanation &explanation, std::size_t number)
{
  return std::all_of(explanation.splits.begin(), explanation.splits.end(), [&](const ReadingSplit &split) {
    return split.shares.empty() || real_difference(split.name, split.from, split.to) == 0 ||
           is_small_share(split, number);
  });
}
} // namespace

std::string change_remark(const Explanation &explanation, std::size_t number)
{
  const StackChange &change = explanation.plan.changes[number];
  const bool         is_drop = rigs::fall_of(explanation.plan.a) != nullptr;
  const auto         touches_plate = [&](std::size_t slot) {
    const auto &[a, b] = explanation.plan.slots[slot].layers;
    return (a && role_of(explanation.plan.a.layers[*a]) == Role::plate) ||
           (b && role_of(explanation.plan.b.layers[*b]) == Role::plate);
  };
  if (is_drop && std::any_of(change.slots.begin(), change.slots.end(), touches_plate))
    return hardly_reads(explanation, number)
             ? "this drop hardly shows it: a plate works in bending, which a drop does not read"
             : "not the whole effect of a plate: a drop does not read bending";
  if (change.kind != ChangeKind::layer && change.kind != ChangeKind::material &&
      change.kind != ChangeKind::air)
    return "";

  // What the layers of this change lose, from the energy accounts of the two ends.
  if (change.slots.size() != 1)
    return "";
  ChangePlan only = explanation.plan;
  only.slots = {explanation.plan.slots[change.slots[0]]};
  const auto rows = ledger_difference(only, explanation.a, explanation.b);
  const auto &[a, b] = only.slots[0].layers;
  if (rows.empty())
    return "";
  const std::string name = a ? only.a.layers[*a].name : only.b.layers[*b].name;
  for (const auto &row : rows)
    if (row.name == name || row.name.starts_with(name + " -> "))
      return a && b
               ? fmt::format("loses {:.1f} % of the energy instead of {:.1f} %", 100 * row.to, 100 * row.from)
               : fmt::format("{} {:.1f} % of the energy", a ? "lost" : "loses",
                             100 * (a ? row.from : row.to));
  return "";
}
} // namespace solemech::tools
