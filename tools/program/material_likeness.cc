// SPDX-License-Identifier: Apache-2.0
#include "tools/program/material_likeness.h"

#include "tools/language/quantity.h"
#include "tools/program/material_facts.h"
#include "tools/program/options.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <sstream>

namespace solemech::tools
{
using namespace materials;

namespace
{
/// Words after a per cent sign.
struct ShareWord
{
  const char *word;
  Property    property;
};
constexpr std::array share_words{
  ShareWord{"ball", Property::ball_rebound}, ShareWord{"ball rebound", Property::ball_rebound},
  ShareWord{"rebound", Property::ball_rebound}, ShareWord{"pulse", Property::pulse_return},
  ShareWord{"pulse return", Property::pulse_return}};

constexpr const char *what_is_known =
  "Known are a hardness (\"55 AskerC\", ShoreA, ShoreD, ShoreOO), a density (\"200 kg/m3\", g/cm3), returns "
  "(\"48 % ball\", \"65 % pulse\") and a modulus (\"1.2 MPa\"), with commas between them";

[[noreturn]] void refuse(const std::string &item, const std::string &reason, const std::string &cure)
{
  throw UsageError(fmt::format("--like: \"{}\" {}. {}.", item, reason, cure));
}

std::string trimmed(const std::string &text)
{
  const auto begin = text.find_first_not_of(" \t");
  return begin == std::string::npos ? "" : text.substr(begin, text.find_last_not_of(" \t") - begin + 1);
}

Wanted read_share(const std::string &item, std::size_t sign)
{
  const auto word = trimmed(item.substr(sign + 1));
  if (word.empty())
    refuse(item, "does not say which return",
           "Write \"48 % ball\" for the ball rebound, \"65 % pulse\" for the "
           "return of the press pulse");
  std::vector<std::string> known;
  for (const auto &one : share_words)
  {
    if (word == one.word)
      return {one.property, parse_quantity(item.substr(0, sign + 1), Dimension::share), ""};
    known.emplace_back(one.word);
  }
  const auto near = nearest_name(word, known);
  refuse(item, fmt::format("has an unknown word, \"{}\"", word),
         near.empty() ? what_is_known : fmt::format("Did you mean \"{}\"? {}", near, what_is_known));
}

/// What stands after the number of an item.
std::string unit_of(const std::string &item)
{
  const auto begin = item.find_first_not_of("+-.0123456789 \t");
  return begin == std::string::npos ? "" : trimmed(item.substr(begin));
}

Wanted read_item(const std::string &item)
{
  if (const auto sign = item.find('%'); sign != std::string::npos)
    return read_share(item, sign);
  if (!written_unit(item, Dimension::density).empty())
    return {Property::density, parse_quantity(item, Dimension::density), ""};
  if (!written_unit(item, Dimension::pressure).empty())
    return {Property::modulus, parse_quantity(item, Dimension::pressure), ""};
  const auto unit = unit_of(item);
  if (unit.starts_with("Shore") || unit.starts_with("Asker") || unit.starts_with("IRHD"))
  {
    const auto reading = parse_hardness(item);
    return {Property::hardness, reading.value, reading.scale};
  }
  std::vector<std::string> known{"AskerC", "ShoreA", "ShoreD", "ShoreOO"};
  for (const auto &one : units())
    if (one.dimension == Dimension::density || one.dimension == Dimension::pressure)
      known.emplace_back(one.name);
  if (unit.empty())
    refuse(item, "has no unit", fmt::format("Write decimals with a point. {}", what_is_known));
  const auto near = nearest_name(unit, known);
  refuse(item, fmt::format("has an unknown unit, \"{}\"", unit),
         near.empty() ? what_is_known : fmt::format("Did you mean \"{}\"? {}", near, what_is_known));
}

std::string property_name(const Wanted &wanted)
{
  switch (wanted.property)
  {
  case Property::hardness:
    return "hardness in " + wanted.scale;
  case Property::density:
    return "density";
  case Property::modulus:
    return "modulus";
  case Property::ball_rebound:
    return "ball rebound";
  case Property::pulse_return:
    return "pulse return";
  }
  return {};
}

double difference(const Wanted &wanted, double value)
{
  using namespace likeness_scale;
  const auto by_ratio = [&](double ratio) { return std::log(value / wanted.value) / std::log(ratio); };
  switch (wanted.property)
  {
  case Property::hardness:
    return (value - wanted.value) / hardness;
  case Property::density:
    return by_ratio(density_ratio);
  case Property::modulus:
    return by_ratio(modulus_ratio);
  default:
    return (value - wanted.value) / share;
  }
}

/// "4 points harder": how far up or down, to what is printed; empty: not at all.
std::string apart_text(double difference, const std::string &unit, const char *above, const char *below)
{
  const double apart = std::abs(std::round(difference));
  return apart == 0 ? ""
                    : fmt::format("{:g} {} {}", apart, unit == "points" && apart == 1 ? "point" : unit,
                                  difference > 0 ? above : below);
}
} // namespace

std::vector<Wanted> read_wanted(const std::string &text)
{
  std::vector<Wanted> wanted;
  auto                separated = text;
  std::replace(separated.begin(), separated.end(), ';', ',');
  std::istringstream in(separated);
  for (std::string part; std::getline(in, part, ',');)
  {
    const auto item = trimmed(part);
    if (item.empty())
      continue;
    try
    {
      wanted.push_back(read_item(item));
    }
    catch (const InvalidQuantity &wrong)
    {
      throw UsageError(fmt::format("--like: {}. {}.", wrong.what(), wrong.cure));
    }
    const auto &now = wanted.back();
    if (!(now.value > 0))
      refuse(item, "is not above zero", what_is_known);
    if (std::any_of(wanted.begin(), wanted.end() - 1, [&](const Wanted &one) {
          return one.property == now.property && one.scale == now.scale;
        }))
      refuse(item, "says a second time what an item before it says", "Leave one of the two out");
  }
  if (wanted.empty())
    throw UsageError(fmt::format("--like: nothing to look for. {}.", what_is_known));
  return wanted;
}

std::string wanted_text(const Wanted &wanted)
{
  switch (wanted.property)
  {
  case Property::hardness:
    return fmt::format("{:g} {}", wanted.value, wanted.scale);
  case Property::density:
    return quantity_text(wanted.value, Dimension::density);
  case Property::modulus:
    return quantity_text(wanted.value, Dimension::pressure, "MPa");
  default:
    return fmt::format("{:.3g} % {}", 100 * wanted.value, property_name(wanted));
  }
}

std::optional<double> property_of(const Material &material, const Wanted &wanted)
{
  const auto read = [](double share) { return share < 0 ? std::nullopt : std::optional(share); };
  switch (wanted.property)
  {
  case Property::hardness:
    return gauge_points(material, wanted.scale);
  case Property::density:
    return material.density;
  case Property::modulus:
    return slow_modulus(material);
  case Property::ball_rebound:
    return read(material.readings.ball_rebound);
  default:
    return read(material.readings.pulse_return);
  }
}

std::string difference_text(const Material &material, const Wanted &wanted)
{
  const auto value = property_of(material, wanted);
  if (!value)
    return fmt::format("no {} known", property_name(wanted));
  const auto per_cent = [&] { return 100 * (*value / wanted.value - 1); };
  switch (wanted.property)
  {
  case Property::hardness:
    return apart_text(*value - wanted.value, "points", "harder", "softer");
  case Property::density:
    return apart_text(per_cent(), "%", "heavier", "lighter");
  case Property::modulus:
    return apart_text(per_cent(), "%", "stiffer", "less stiff");
  default:
    const auto words = apart_text(100 * (*value - wanted.value), "points", "higher", "lower");
    return words.empty() ? "" : fmt::format("{} {}", property_name(wanted), words);
  }
}

std::vector<Likeness> by_likeness(const std::vector<Material> &library, const std::vector<Wanted> &wanted)
{
  std::vector<Likeness> list;
  for (const Material &material : library)
  {
    Likeness one;
    one.material = &material;
    double squares = 0;
    for (const Wanted &number : wanted)
    {
      const auto   value = property_of(material, number);
      const double apart = value ? difference(number, *value) : likeness_scale::lacking;
      squares += apart * apart;
    }
    one.distance = std::sqrt(squares / static_cast<double>(wanted.size()));
    list.push_back(std::move(one));
  }
  std::stable_sort(list.begin(), list.end(),
                   [](const Likeness &a, const Likeness &b) { return a.distance < b.distance; });
  return list;
}
} // namespace solemech::tools
