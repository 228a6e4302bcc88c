// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/book/yardstick.h"

#include "tools/language/nearest_name.h"
#include "tools/language/sheet.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cmath>

namespace solemech::book
{
namespace
{
using materials::Dimension;

/// Value with the unit it was written in. A "+-" and what follows is doubt, not value.
struct Written
{
  double      value = 0;
  Dimension   dimension = Dimension::number;
  std::string scale;
};

std::optional<Written> written(std::string text)
{
  for (const char *mark : {"+-", "±"})
    text = text.substr(0, text.find(mark));
  while (!text.empty() && text.back() == ' ')
    text.pop_back();
  try
  {
    const auto gauge = materials::parse_hardness(text);
    return Written{gauge.value, Dimension::hardness, gauge.scale};
  }
  catch (const materials::InvalidQuantity &)
  {
  }
  for (const auto &unit : materials::units())
    if (text.ends_with(unit.name) && text.size() > unit.name.size())
      try
      {
        return Written{materials::parse_quantity(text, unit.dimension), unit.dimension, {}};
      }
      catch (const materials::InvalidQuantity &)
      {
      }
  // A bare number is a number: 94 g of deceleration is no 9400 %.
  for (const auto dimension : {Dimension::number, Dimension::share})
    try
    {
      return Written{materials::parse_quantity(text, dimension), dimension, {}};
    }
    catch (const materials::InvalidQuantity &)
    {
    }
  return std::nullopt;
}

std::string value_text(const Category &category, double value)
{
  if (category.dimension == Dimension::hardness)
    return fmt::format("{:.3g} {}", value, category.scale);
  if (category.dimension == Dimension::number)
    return fmt::format("{:.4g}", value);
  return materials::quantity_text(std::stod(fmt::format("{:.4g}", value)), category.dimension);
}

struct Reader
{
  std::string          file;
  materials::Problems &problems;

  void slip(const toml::source_region &where, const std::string &entry, const std::string &reason,
            const std::string &cure)
  {
    problems.add({file, int(where.begin.line), int(where.begin.column), entry, reason, cure});
  }

  void anchor(const toml::node &node, Category &category)
  {
    const auto *pair = node.as_array();
    const auto  value = pair && pair->size() == 2 ? pair->get(0)->value<std::string>() : std::nullopt;
    const auto  bare = pair && pair->size() == 2 ? pair->get(0)->value<double>() : std::nullopt;
    const auto  points = pair && pair->size() == 2 ? pair->get(1)->value<double>() : std::nullopt;
    const auto  cure = "Write a value with its unit and the points it earns: [\"200 mm\", 1]";
    if (!points || (!value && !bare) || !std::isfinite(*points))
      return slip(node.source(), "anchors", "an anchor needs a value and its points", cure);
    const auto reads = value ? written(*value) : Written{*bare, Dimension::number, {}};
    if (!reads || !std::isfinite(reads->value))
      return slip(node.source(), "anchors", fmt::format("\"{}\" is not a value", value ? *value : ""), cure);
    if (category.anchors.empty())
      category.dimension = reads->dimension, category.scale = reads->scale;
    else if (category.dimension != reads->dimension || category.scale != reads->scale)
      return slip(node.source(), "anchors", "the anchors are of different kinds",
                  "Use one unit or scale for all");
    category.anchors.emplace_back(reads->value, *points);
  }

  void category(const toml::table &table, Yardstick &yardstick)
  {
    Category category;
    category.name = table["name"].value_or(std::string());
    category.reading = table["reading"].value_or(std::string());
    category.weight = table["weight"].value_or(1.0);
    for (const auto &[key, node] : table)
      if (const std::vector<std::string> known{"name", "reading", "weight", "anchors"};
          std::find(known.begin(), known.end(), key.str()) == known.end())
        slip(node.source(), std::string(key.str()), "a category has no entry of this name",
             "It has name, reading, weight, anchors");
    if (category.name.empty() || category.reading.empty())
      slip(table.source(), "category", "name or reading is missing",
           "Give it a name and the reading that it uses");
    if (!(category.weight > 0) || !std::isfinite(category.weight))
      slip(table.source(), "weight", "must be a positive number", "Without it the weight is 1");
    const auto *anchors = table["anchors"].as_array();
    const auto  n_before = problems.n_noted();
    if (anchors)
      for (const auto &node : *anchors)
        anchor(node, category);
    if (problems.n_noted() > n_before)
      return;
    std::sort(category.anchors.begin(), category.anchors.end());
    const bool twice =
      std::adjacent_find(category.anchors.begin(), category.anchors.end(),
                         [](auto &a, auto &b) { return a.first == b.first; }) != category.anchors.end();
    if (category.anchors.size() < 2 || twice)
      slip(table.source(), "anchors", "a category needs at least two anchors at different values",
           "Write [[\"200 mm\", 1], [\"320 mm\", 10]], for example");
    yardstick.categories.push_back(category);
  }
};

double points_at(const Category &category, double value)
{
  const auto &anchors = category.anchors;
  if (value <= anchors.front().first)
    return anchors.front().second;
  for (std::size_t i = 1; i < anchors.size(); ++i)
    if (value <= anchors[i].first)
    {
      const auto &[low, low_points] = anchors[i - 1];
      const auto &[high, high_points] = anchors[i];
      return low_points + (high_points - low_points) * (value - low) / (high - low);
    }
  return anchors.back().second;
}

std::string reason_for(const Category &category, double value, double points, const std::string &from)
{
  const auto &anchors = category.anchors;
  std::string where;
  if (value < anchors.front().first || value > anchors.back().first)
  {
    const auto &end = value < anchors.front().first ? anchors.front() : anchors.back();
    where = fmt::format("lies beyond {}, which ends at {:.3g}", value_text(category, end.first), end.second);
  }
  else
    for (std::size_t i = 1; i < anchors.size(); ++i)
      if (value <= anchors[i].first)
      {
        where =
          fmt::format("lies between {} ({:.3g}) and {} ({:.3g})", value_text(category, anchors[i - 1].first),
                      anchors[i - 1].second, value_text(category, anchors[i].first), anchors[i].second);
        break;
      }
  return fmt::format("{} {}, {}, {}: {:.1f}", category.reading, value_text(category, value), from, where,
                     points);
}

/// SI unit as readings.csv has it.
bool fits(const Category &category, const std::string &unit)
{
  using D = Dimension;
  const auto d = category.dimension;
  return unit == "m"    ? d == D::length
         : unit == "N"  ? d == D::force
         : unit == "s"  ? d == D::time
         : unit == "Pa" ? d == D::pressure
         : unit == "J"  ? d == D::energy
                        : d == D::share || d == D::number;
}

/// A share may also be written as a bare number, up to 1.
bool is_measured_in(const Category &category, const Written &value)
{
  if (category.dimension == Dimension::share && value.dimension == Dimension::number)
    return std::abs(value.value) <= 1;
  return value.dimension == category.dimension && value.scale == category.scale;
}

/// Names of the readings that a category may mean: its own, else those of its kind under other conditions.
std::vector<std::string> meant(const Category &category, const Sheet &sheet)
{
  std::vector<std::string> others;
  for (const auto &reading : sheet.readings)
    if (reading.name == category.reading)
      return {category.reading};
    else if (reading.is_elsewhere && reading.name.starts_with(category.reading + " ") &&
             std::find(others.begin(), others.end(), reading.name) == others.end())
      others.push_back(reading.name);
  return others;
}

Points judge_one(const Category &category, const Sheet &sheet)
{
  Points     answer{category.name, false, 0, {}};
  double     sum = 0;
  int        n = 0;
  bool       other_kind = false;
  const auto names = meant(category, sheet);
  if (names.size() > 1)
  {
    answer.reason = fmt::format("{} was read under several conditions; choose one of them: {}",
                                category.reading, fmt::join(names, ", "));
    return answer;
  }
  for (const auto &reading : sheet.readings)
  {
    if (names.empty() || reading.name != names.front())
      continue;
    for (const auto &text : reading.values)
    {
      const auto value = written(text);
      if (value && is_measured_in(category, *value))
      {
        sum += value->value;
        ++n;
      }
      else
        other_kind = true;
    }
  }
  std::string from = n > 1 ? fmt::format("mean of {} measured", n) : "measured";
  if (n > 0 && names.front() != category.reading)
    from += names.front().substr(category.reading.size());
  if (n == 0 && sheet.result)
    for (const auto &reading : sheet.result->readings)
    {
      // "rebound" also names rebound_height or rebound_by_height, whichever has the unit of the anchors.
      auto words = reading.name;
      std::replace(words.begin(), words.end(), '_', ' ');
      if ((words == category.reading || reading.name == category.reading ||
           words.starts_with(category.reading + " ")) &&
          fits(category, reading.unit))
      {
        sum = reading.value;
        n = 1;
        from = sheet.result->same_sheet ? "of the model" : "of the model, from an older version of the sheet";
        break;
      }
    }
  if (n == 0)
  {
    answer.reason = other_kind
                      ? fmt::format("{} is in a different unit or scale from the anchors", category.reading)
                      : fmt::format("no reading of {}", category.reading);
    return answer;
  }
  const double value = sum / n;
  answer.known = true;
  answer.points = points_at(category, value);
  answer.reason = reason_for(category, value, answer.points, from);
  return answer;
}
} // namespace

Yardstick read_yardstick(const std::string &text, const std::string &file, materials::Problems &problems)
{
  const auto n_before = problems.n_noted();
  problems.add_source(file, text);
  const auto table = materials::parse_sheet(text, file, problems);
  Yardstick  yardstick;
  yardstick.title = table["title"].value_or(std::string());
  Reader reader{file, problems};
  if (const auto *list = table["category"].as_array())
    for (const auto &each : *list)
      if (const auto *category = each.as_table())
        reader.category(*category, yardstick);
  if (yardstick.categories.empty() && problems.n_noted() == n_before)
    problems.add({file, 0, 0, "category", "the yardstick has no category",
                  "Add [[category]] with name, reading and anchors"});
  return yardstick;
}

Judged judge(const Yardstick &yardstick, const Sheet &sheet)
{
  Judged judged;
  double sum = 0, weights = 0;
  for (const auto &category : yardstick.categories)
  {
    judged.categories.push_back(judge_one(category, sheet));
    if (judged.categories.back().known)
    {
      sum += category.weight * judged.categories.back().points;
      weights += category.weight;
    }
  }
  if (weights > 0)
    judged.total = sum / weights;
  return judged;
}
} // namespace solemech::book
