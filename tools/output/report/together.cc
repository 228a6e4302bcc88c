// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/together.h"

#include "solver/results/catalogue.h"
#include "solver/results/uncertainty.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/story.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/facts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
using solver::catalogue;

constexpr std::size_t most_named = 4; ///< runs whose values stand one by one

bool all_have(const std::vector<const Run *> &runs, const solver::ReadingKind &kind)
{
  return !runs.empty() &&
         std::all_of(runs.begin(), runs.end(), [&](const Run *run) { return run->result.find(kind); });
}

std::vector<double> values_of(const std::vector<const Run *> &runs, const solver::ReadingKind &kind)
{
  std::vector<double> values;
  for (const auto *run : runs)
    values.push_back(run->result.find(kind)->value);
  return values;
}

/// True when the values differ by no more than what is uncertain of the difference.
bool same(const Run &a, const Run &b, const solver::ReadingKind &kind)
{
  const auto  &x = *a.result.find(kind), &y = *b.result.find(kind);
  const double band = solver::uncertainty_of_difference(x, y);
  return std::abs(x.value - y.value) <= std::max(band, 1e-9 * std::max(std::abs(x.value), std::abs(y.value)));
}

/// "262 / 325 mm": the unit once when all share it.
std::string joined(const std::vector<std::string> &texts, const char *between)
{
  const auto unit_of = [](const std::string &text) {
    return text.substr(std::min(text.find(' '), text.size()));
  };
  const bool shared = std::all_of(
    texts.begin(), texts.end(), [&](const std::string &text) { return unit_of(text) == unit_of(texts[0]); });
  std::string result;
  for (std::size_t i = 0; i < texts.size(); ++i)
    result += (i ? between : "") +
              (shared && i + 1 < texts.size() ? texts[i].substr(0, texts[i].find(' ')) : texts[i]);
  return result;
}

/// Forces in one unit, that of the greatest.
std::vector<std::string> force_texts(const std::vector<double> &values)
{
  const double             most = *std::max_element(values.begin(), values.end());
  std::vector<std::string> texts;
  for (const double value : values)
    texts.push_back(most >= 999.5 ? fmt::format("{:.2f} kN", value / 1e3) : force_text(value));
  return texts;
}

std::vector<std::string> texts_of(const std::vector<double> &values, std::string (*text)(double))
{
  std::vector<std::string> texts;
  for (const double value : values)
    texts.push_back(text(value));
  return texts;
}

std::string one_decimal(double value)
{
  return fmt::format("{:.1f}", value);
}

std::string two_decimals(double value)
{
  return fmt::format("{:.2f}", value);
}

std::string whole_percent(double share)
{
  return fmt::format("{:.0f} %", 100 * share);
}

std::string steps(double value)
{
  return rounded_count(value) + " steps";
}

/// How a sentence writes the value of a main reading.
std::string (*words_for(const solver::ReadingKind &kind))(double)
{
  return kind.shown.unit == "%"          ? share_words
         : kind.unit == "N"              ? force_text
         : kind.unit == "points"         ? one_decimal
         : kind.shown.unit == "thousand" ? steps
         : kind.unit == "m"              ? static_cast<std::string (*)(double)>(rigs::length)
                                         : two_decimals;
}

/// What a sentence calls the runs.
std::vector<std::string> names_of(const std::vector<const Run *> &runs)
{
  const auto titles = rigs::titles_apart(runs);
  return titles.empty() ? rigs::short_labels(runs) : titles;
}

/// Greatest and least of several runs in one reading, or that there is no difference.
std::string ranking(const std::vector<const Run *> &runs, const solver::ReadingKind &kind)
{
  const auto text = words_for(kind);
  const auto what = kind.main.noun, verb = kind.main.verb;
  const auto values = values_of(runs, kind);
  const auto labels = names_of(runs);
  const auto most = static_cast<std::size_t>(std::max_element(values.begin(), values.end()) - values.begin());
  const auto least =
    static_cast<std::size_t>(std::min_element(values.begin(), values.end()) - values.begin());
  if (same(*runs[most], *runs[least], kind) || text(values[most]) == text(values[least]))
    return fmt::format("no clear difference in {}, {}", what, text(values[most]));
  if (runs.size() == 2)
    return fmt::format("{} {} than {}, {} against {}", labels[most], verb, labels[least], text(values[most]),
                       text(values[least]));
  // The runner-up may lie within the errors.
  std::vector<std::string> leaders;
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (i != most && same(*runs[most], *runs[i], kind))
      leaders.push_back(labels[i]);
  return leaders.empty()
           ? fmt::format("{} {} than all others, {}; at the other end is {} with {}", labels[most], verb,
                         text(values[most]), labels[least], text(values[least]))
           : fmt::format("{} {} than {}, {} against {}; {} cannot be separated from it", labels[most], verb,
                         labels[least], text(values[most]), text(values[least]), fmt::join(leaders, ", "));
}

std::string newton_metres(double value)
{
  return fmt::format("{:.1f} N·m", value);
}

std::string kilopascal(double value)
{
  return fmt::format("{:.0f} kPa", 1e-3 * value);
}

/// All values, or the least and the greatest of many.
std::vector<double> shown(std::vector<double> values)
{
  if (values.size() <= most_named)
    return values;
  const auto [least, most] = std::minmax_element(values.begin(), values.end());
  return {*least, *most};
}
} // namespace

std::string together_sentence(const std::vector<const Run *> &runs)
{
  if (runs.empty())
    return "";
  if (runs.size() == 1)
    return sentence_of(*runs.front());
  std::vector<std::string> texts;
  for (const auto *kind : solver::in_order([](const solver::ReadingKind &each) { return each.main.charted; }))
    if (!kind->main.verb.empty() && all_have(runs, *kind) &&
        !(kind->name == catalogue.loop_return && all_have(runs, catalogue.rebound_by_height)))
      texts.push_back(ranking(runs, *kind));
  // A title and what is left of the labels of a series are words; a whole label stays as it is typed.
  const bool are_words = names_of(runs)[0] != runs[0]->label;
  if (texts.empty())
    return "Not every run gave readings. Those that did are shown below.";
  std::string text;
  for (auto &one : texts)
    text += (text.empty() ? "" : " ") + (one.starts_with("no ") || are_words ? capital(one) : one) + ".";
  return text;
}

std::vector<rigs::Headline> together_headline(const std::vector<const Run *> &runs)
{
  if (runs.empty())
    return {};
  if (runs.size() == 1)
    return headline_of(*runs.front());
  std::vector<rigs::Headline> headline;
  const bool                  few = runs.size() <= most_named;
  const char                 *between = few ? " / " : " to ";
  const std::string           note = few ? fmt::format("{}", fmt::join(rigs::short_labels(runs), " / "))
                                         : fmt::format("over {} runs", runs.size());
  const auto put = [&](const char *name, std::vector<std::string> texts, const std::string &told) {
    auto value = joined(texts, between);
    headline.push_back({name, std::move(value), told, few ? std::move(texts) : std::vector<std::string>()});
  };
  const auto add = [&](const solver::ReadingKind &kind, const char *name, std::string (*text)(double)) {
    if (all_have(runs, kind))
      put(name, texts_of(shown(values_of(runs, kind)), text), note);
  };
  if (few && all_have(runs, catalogue.rebound_height) && all_have(runs, catalogue.rebound_by_height))
    put("rebound", texts_of(values_of(runs, catalogue.rebound_height), rigs::length),
        joined(texts_of(values_of(runs, catalogue.rebound_by_height), share_words), between) +
          " of the drop height");
  else if (all_have(runs, catalogue.rebound_by_height))
    add(catalogue.rebound_by_height, "rebound", share_words);
  else
    add(catalogue.loop_return, "energy return", share_words);
  if (all_have(runs, catalogue.peak_force))
    put("peak force", force_texts(shown(values_of(runs, catalogue.peak_force))), note);
  add(catalogue.hardness, "hardness", one_decimal);
  add(catalogue.tip_depth, "depth of the tip", rigs::length);
  add(catalogue.life_steps, "life in steps", rounded_count);
  if (all_have(runs, catalogue.ground_depth))
  {
    add(catalogue.ground_depth, "depth", rigs::length);
    add(catalogue.face_rise, "face warms by", [](double kelvin) { return fmt::format("{:.0f} K", kelvin); });
    add(catalogue.loss_over_reference, "loss vs the reference rubber",
        [](double ratio) { return fmt::format("{:.2f} ×", ratio); });
  }
  add(catalogue.effective_grip, "grip", two_decimals);
  add(catalogue.grip_side_cut, "grip in a side cut", two_decimals);
  add(catalogue.pivot_moment, "pivot", newton_metres);
  add(catalogue.contact_share, "contact", whole_percent);
  add(catalogue.edge_pressure, "pressure at the edge", kilopascal);
  add(catalogue.greatest_compression, "compression", rigs::length);
  return headline;
}
} // namespace solemech::tools::report
