// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/together.h"

#include "solver/results/uncertainty.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/report/story.h"
#include "tools/output/results/readings_table.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr std::size_t most_named = 4; ///< runs whose values stand one by one

bool all_have(const std::vector<const Run *> &runs, const char *name)
{
  return !runs.empty() &&
         std::all_of(runs.begin(), runs.end(), [&](const Run *run) { return run->result.find(name); });
}

std::vector<double> values_of(const std::vector<const Run *> &runs, const char *name)
{
  std::vector<double> values;
  for (const auto *run : runs)
    values.push_back(run->result.find(name)->value);
  return values;
}

/// True when the values differ by no more than what is uncertain of the difference.
bool same(const Run &a, const Run &b, const char *name)
{
  const auto  &x = *a.result.find(name), &y = *b.result.find(name);
  const double band = solver::uncertainty_of_difference(x, y);
  return std::abs(x.value - y.value) <= std::max(band, 1e-9 * std::max(std::abs(x.value), std::abs(y.value)));
}

/// Greatest and least of several runs in one reading, or that there is no difference.
std::string ranking(const std::vector<const Run *> &runs, const char *name, const std::string &what,
                    const std::string &verb, std::string (*text)(double))
{
  const auto values = values_of(runs, name);
  const auto labels = short_labels(runs);
  const auto most = static_cast<std::size_t>(std::max_element(values.begin(), values.end()) - values.begin());
  const auto least =
    static_cast<std::size_t>(std::min_element(values.begin(), values.end()) - values.begin());
  if (same(*runs[most], *runs[least], name) || text(values[most]) == text(values[least]))
    return fmt::format("no difference in {} that the numbers can tell, {}", what, text(values[most]));
  if (runs.size() == 2)
    return fmt::format("{} {} than {}, {} against {}", labels[most], verb, labels[least], text(values[most]),
                       text(values[least]));
  // The runner-up may lie within the errors.
  std::vector<std::string> leaders;
  for (std::size_t i = 0; i < runs.size(); ++i)
    if (i != most && same(*runs[most], *runs[i], name))
      leaders.push_back(labels[i]);
  return leaders.empty()
           ? fmt::format("{} {} than all others, {}; at the other end stands {} with {}", labels[most], verb,
                         text(values[most]), labels[least], text(values[least]))
           : fmt::format("{} {} than {}, {} against {}; {} cannot be told from it", labels[most], verb,
                         labels[least], text(values[most]), text(values[least]), fmt::join(leaders, ", "));
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
  if (all_have(runs, "rebound_by_height"))
    texts.push_back(ranking(runs, "rebound_by_height", "rebound", "rebounds higher", share_words));
  else if (all_have(runs, "loop_return"))
    texts.push_back(ranking(runs, "loop_return", "energy return", "gives more back", share_words));
  if (all_have(runs, "peak_force"))
    texts.push_back(ranking(runs, "peak_force", "peak force", "hits harder", force_text));
  if (all_have(runs, "hardness"))
    texts.push_back(ranking(runs, "hardness", "hardness", "reads harder", one_decimal));
  if (all_have(runs, "life_steps"))
    texts.push_back(ranking(runs, "life_steps", "life", "lasts longer", steps));
  if (all_have(runs, "ground_depth"))
    texts.push_back(ranking(runs, "ground_depth", "depth", "is ground deeper", length));
  if (all_have(runs, "effective_grip"))
    texts.push_back(ranking(runs, "effective_grip", "grip", "grips more", two_decimals));
  // What is left of the labels of a series is a word; a whole label is a name and stays as it is typed.
  const bool are_words = short_labels(runs)[0] != runs[0]->label;
  if (texts.empty())
    return "Not every run gave readings; what there is stands below.";
  std::string text;
  for (auto &one : texts)
    text += (text.empty() ? "" : " ") + (one.starts_with("no ") || are_words ? capital(one) : one) + ".";
  return text;
}

std::vector<Headline> together_headline(const std::vector<const Run *> &runs)
{
  if (runs.empty())
    return {};
  if (runs.size() == 1)
    return headline_of(*runs.front());
  std::vector<Headline> headline;
  const bool            few = runs.size() <= most_named;
  const char           *between = few ? " / " : " to ";
  const std::string     note =
    few ? fmt::format("{}", fmt::join(short_labels(runs), " / ")) : fmt::format("over {} runs", runs.size());
  const auto add = [&](const char *name, const std::string &label, const std::string &value) {
    if (all_have(runs, name))
      headline.push_back({label, value, note});
  };
  if (few && all_have(runs, "rebound_height") && all_have(runs, "rebound_by_height"))
    headline.push_back(
      {"rebound", joined(texts_of(values_of(runs, "rebound_height"), length), between),
       joined(texts_of(values_of(runs, "rebound_by_height"), share_words), between) + " of the drop height"});
  else if (all_have(runs, "rebound_by_height"))
    add("rebound_by_height", "rebound",
        joined(texts_of(shown(values_of(runs, "rebound_by_height")), share_words), between));
  else if (all_have(runs, "loop_return"))
    add("loop_return", "energy return",
        joined(texts_of(shown(values_of(runs, "loop_return")), share_words), between));
  if (all_have(runs, "peak_force"))
    add("peak_force", "peak force", joined(force_texts(shown(values_of(runs, "peak_force"))), between));
  if (all_have(runs, "hardness"))
    add("hardness", "hardness", joined(texts_of(shown(values_of(runs, "hardness")), one_decimal), between));
  if (all_have(runs, "tip_depth"))
    add("tip_depth", "depth of the tip", joined(texts_of(shown(values_of(runs, "tip_depth")), length), between));
  if (all_have(runs, "life_steps"))
    add("life_steps", "life in steps", joined(texts_of(shown(values_of(runs, "life_steps")), rounded_count), between));
  if (all_have(runs, "ground_depth"))
  {
    add("ground_depth", "depth", joined(texts_of(shown(values_of(runs, "ground_depth")), length), between));
    const auto warmer = [](double kelvin) { return fmt::format("{:.0f} K", kelvin); };
    if (all_have(runs, "face_rise"))
      add("face_rise", "face warms by", joined(texts_of(shown(values_of(runs, "face_rise")), warmer), between));
    const auto times = [](double ratio) { return fmt::format("{:.2f} ×", ratio); };
    add("loss_over_reference", "taken over the reference's", joined(texts_of(shown(values_of(runs, "loss_over_reference")), times), between));
  }
  if (all_have(runs, "effective_grip"))
    add("effective_grip", "grip", joined(texts_of(shown(values_of(runs, "effective_grip")), two_decimals), between));
  if (all_have(runs, "grip_side_cut"))
    add("grip_side_cut", "grip in a side cut",
        joined(texts_of(shown(values_of(runs, "grip_side_cut")), two_decimals), between));
  if (all_have(runs, "pivot_moment"))
    add("pivot_moment", "pivot", joined(texts_of(shown(values_of(runs, "pivot_moment")), newton_metres), between));
  if (all_have(runs, "contact_share"))
    add("contact_share", "contact", joined(texts_of(shown(values_of(runs, "contact_share")), whole_percent), between));
  if (all_have(runs, "edge_pressure"))
    add("edge_pressure", "pressure at the edge", joined(texts_of(shown(values_of(runs, "edge_pressure")), kilopascal), between));
  if (all_have(runs, "greatest_compression"))
    add("greatest_compression", "compression",
        joined(texts_of(shown(values_of(runs, "greatest_compression")), length), between));
  return headline;
}
} // namespace solemech::tools::report
