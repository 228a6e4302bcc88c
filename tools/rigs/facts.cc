// SPDX-License-Identifier: Apache-2.0
#include "tools/rigs/facts.h"

#include "solver/results/catalogue.h"
#include "tools/language/number_text.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <set>
#include <sstream>

namespace solemech::tools::rigs
{
std::optional<double> value_of(const Run &run, const std::string &name)
{
  const auto *reading = run.result.find(name);
  return reading ? std::optional(reading->value) : std::nullopt;
}

double number(const Run &run, const std::string &name)
{
  return value_of(run, name).value_or(0);
}

std::string warning_on(const Run &run, const std::string &reading)
{
  for (const auto &warning : run.result.warnings)
    if (warning.reading == reading)
      return " " + capital(warning.text) + ".";
  return "";
}

const std::vector<double> *any_curve(const Run &run, const std::string &name)
{
  for (const auto &curve : run.result.curves)
    if (curve.name == name)
      return &curve.values;
  return nullptr;
}

const std::vector<double> *curve_of(const Run &run, const std::string &name)
{
  for (const auto &curve : run.result.curves)
    if (curve.name == name && !curve.values.empty() && curve.values.size() == run.result.time.size())
      return &curve.values;
  return nullptr;
}

const std::vector<double> *compression_curve(const Run &run)
{
  return curve_of(run, "tup_displacement");
}

double greatest_in(const std::vector<double> *curve)
{
  return curve ? *std::max_element(curve->begin(), curve->end()) : 0.0;
}

double greatest_compression(const Run &run)
{
  return value_of(run, solver::catalogue.greatest_compression).value_or(greatest_in(compression_curve(run)));
}

double peak_force(const Run &run)
{
  return value_of(run, solver::catalogue.peak_force).value_or(greatest_in(curve_of(run, "force")));
}

std::string length(double metres)
{
  return length_text(metres, Lengths::millimetre);
}

std::string of_stack(const Run &run, double way)
{
  const double height = stack_height(run.setup.layers);
  return height > 0 ? fmt::format("{} of {}", length(way), length(height)) : length(way);
}

std::vector<std::string> short_labels(const std::vector<const Run *> &runs)
{
  std::vector<std::string> labels;
  for (const auto *run : runs)
    labels.push_back(run->label);
  if (labels.size() < 2)
    return labels;
  std::size_t common = labels[0].size();
  for (const auto &label : labels)
    common =
      std::min(common, static_cast<std::size_t>(
                         std::mismatch(label.begin(), label.end(), labels[0].begin(), labels[0].end()).first -
                         label.begin()));
  const auto dash = labels[0].rfind('-', common == 0 ? 0 : common - 1);
  if (dash == std::string::npos || dash + 1 > common)
    return labels;
  for (const auto &label : labels)
    if (label.size() <= dash + 1)
      return labels;
  for (auto &label : labels)
    label.erase(0, dash + 1);
  return labels;
}

std::string title_of(const Run &run)
{
  return run.setup.title.empty() ? run.label : run.setup.title;
}

std::vector<std::string> titles_apart(const std::vector<const Run *> &runs)
{
  std::vector<std::vector<std::string>> words;
  for (const auto *run : runs)
  {
    std::istringstream title(run->setup.title);
    words.emplace_back(std::istream_iterator<std::string>(title), std::istream_iterator<std::string>());
  }
  const auto all_end_with = [&](const std::string &last) {
    return std::ranges::all_of(words,
                               [&](const auto &title) { return title.size() > 1 && title.back() == last; });
  };
  if (words.size() < 2 || std::ranges::any_of(words, &std::vector<std::string>::empty))
    return {};
  for (std::string last = words[0].back(); all_end_with(last); last = words[0].back())
    for (auto &title : words)
      title.pop_back();
  std::vector<std::string> titles;
  for (const auto &title : words)
    titles.push_back(fmt::format("{}", fmt::join(title, " ")));
  const std::set<std::string> different(titles.begin(), titles.end());
  return different.size() == titles.size() ? titles : std::vector<std::string>();
}

std::vector<double> scaled(std::vector<double> values, double factor)
{
  for (double &value : values)
    value *= factor;
  return values;
}
} // namespace solemech::tools::rigs
