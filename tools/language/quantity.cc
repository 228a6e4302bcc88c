// SPDX-License-Identifier: Apache-2.0
// By hand: a table of units into SI. Most of the work is to say what is wrong with a value and what would be
// right, which no unit library does.
#include "tools/language/quantity.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <map>
#include <numbers>
#include <optional>

namespace solemech::materials
{
namespace
{
using D = Dimension;

struct Words
{
  std::string_view name, example, display_unit;
};

const std::map<Dimension, Words> &words()
{
  static const std::map<Dimension, Words> table = {
    {D::length, {"length", "12 mm", "mm"}},
    {D::volume, {"volume", "30 cm3", "cm3"}},
    {D::mass, {"mass", "1.20 kg", "kg"}},
    {D::time, {"time", "20 ms", "s"}},
    {D::temperature, {"temperature", "23 °C", "°C"}},
    {D::force, {"force", "2000 N", "N"}},
    {D::energy, {"energy", "5 J", "J"}},
    {D::pressure, {"pressure or modulus", "140 kPa", "kPa"}},
    {D::density, {"density", "170 kg/m3", "kg/m3"}},
    {D::stiffness, {"stiffness", "20 N/mm", "N/mm"}},
    {D::stiffness_per_area, {"stiffness per area", "5 MPa/m", "MPa/m"}},
    {D::damping, {"damping", "200 N s/m", "N s/m"}},
    {D::acceleration, {"acceleration", "9.81 m/s2", "m/s2"}},
    {D::speed, {"speed", "2.8 m/s", "m/s"}},
    {D::molar_energy, {"activation energy", "40 kJ/mol", "kJ/mol"}},
    {D::per_kelvin, {"change per kelvin", "-0.8 %/K", "%/K"}},
    {D::conductivity, {"thermal conductivity", "0.25 W/(m K)", "W/(m K)"}},
    {D::specific_heat, {"specific heat", "1900 J/(kg K)", "J/(kg K)"}},
    {D::moment, {"moment", "15 N m", "N m"}},
    {D::wear, {"wear coefficient", "0.25 mm3/(N m)", "mm3/(N m)"}},
    {D::turning, {"turning speed", "20000 rpm", "rpm"}},
    {D::angle, {"angle", "30 deg", "deg"}},
    {D::share, {"share", "3 %", "%"}},
    {D::number, {"plain number", "6", ""}},
    {D::count, {"whole number", "3", ""}},
    {D::hardness, {"hardness", "60 ShoreA", ""}},
    {D::text, {"text", "...", ""}},
    {D::choice, {"choice", "", ""}},
    {D::flag, {"true or false", "true", ""}},
    {D::file, {"file name", "history.csv", ""}},
    {D::list, {"list", "[\"2 J\", \"4 J\"]", ""}},
    {D::block, {"block", "", ""}},
    {D::blocks, {"blocks", "", ""}},
  };
  return table;
}

std::string_view trimmed(std::string_view text)
{
  while (!text.empty() && std::isspace(static_cast<unsigned char>(text.front())))
    text.remove_prefix(1);
  while (!text.empty() && std::isspace(static_cast<unsigned char>(text.back())))
    text.remove_suffix(1);
  return text;
}

bool is_letter(char c)
{
  return std::isalpha(static_cast<unsigned char>(c)) != 0;
}

/// Splits "12.5 mm" into its number and the rest. Throws when there is no plain finite number in front.
double leading_number(std::string_view text, std::string_view &rest, Dimension dimension)
{
  const std::string shown(text);
  std::string_view  body = text;
  if (!body.empty() && body.front() == '+')
    body.remove_prefix(1);
  if (body.empty())
    throw InvalidQuantity("is empty",
                          fmt::format("Write a value such as \"{}\"", dimension_example(dimension)));
  const auto digits = body.front() == '-' ? body.substr(1) : body;
  if (digits.empty() || is_letter(digits.front()))
  {
    std::string lower(digits.substr(0, 3));
    std::transform(lower.begin(), lower.end(), lower.begin(),
                   [](unsigned char c) { return std::tolower(c); });
    if (lower == "nan" || lower == "inf")
      throw InvalidQuantity(fmt::format("\"{}\" is not a finite number", shown),
                            fmt::format("Write a value such as \"{}\"", dimension_example(dimension)));
  }
  double     value = 0;
  const auto result = std::from_chars(body.data(), body.data() + body.size(), value);
  if (result.ec == std::errc::result_out_of_range || (result.ec == std::errc() && !std::isfinite(value)))
    throw InvalidQuantity(fmt::format("\"{}\" is too large or too small", shown), "Check the power of ten");
  if (result.ec != std::errc())
    throw InvalidQuantity(fmt::format("\"{}\" does not start with a number", shown),
                          fmt::format("Write a value such as \"{}\"", dimension_example(dimension)));
  rest = body.substr(static_cast<std::size_t>(result.ptr - body.data()));
  if (rest.size() > 1 && rest.front() == ',' && std::isdigit(static_cast<unsigned char>(rest[1])))
  {
    std::string dotted(text);
    dotted[dotted.find(',')] = '.';
    throw InvalidQuantity(fmt::format("\"{}\" has a decimal comma", shown),
                          fmt::format("Use a decimal point: \"{}\"", dotted));
  }
  rest = trimmed(rest);
  return value;
}

std::optional<Unit> find_unit(std::string_view name, Dimension dimension)
{
  std::optional<Unit> other;
  for (const auto &unit : units())
    if (unit.name == name)
    {
      if (unit.dimension == dimension)
        return unit;
      if (!other)
        other = unit;
    }
  return other;
}

/// A unit with its exponents as plain digits.
std::string spelled(std::string_view unit)
{
  std::string name(unit);
  for (const auto &[raised, plain] : {std::pair{std::string_view("²"), "2"}, {std::string_view("³"), "3"}})
    for (std::size_t at; (at = name.find(raised)) != std::string::npos;)
      name.replace(at, raised.size(), plain);
  return name;
}
} // namespace

const std::vector<Unit> &units()
{
  // Exact factors: inch, pound, ounce (NIST SP 811); psi = lbf/in2 with g_n = 9.80665 m/s2.
  constexpr double               inch = 0.0254, pound = 0.45359237, standard_gravity = 9.80665;
  static const std::vector<Unit> table = {
    {"mm", D::length, 1e-3},
    {"cm", D::length, 1e-2},
    {"m", D::length, 1},
    {"in", D::length, inch},
    {"um", D::length, 1e-6},
    {"µm", D::length, 1e-6},
    {"μm", D::length, 1e-6},
    {"cm3", D::volume, 1e-6},
    {"ml", D::volume, 1e-6},
    {"mm3", D::volume, 1e-9},
    {"l", D::volume, 1e-3},
    {"m3", D::volume, 1},
    {"kg", D::mass, 1},
    {"g", D::mass, 1e-3},
    {"mg", D::mass, 1e-6},
    {"lb", D::mass, pound},
    {"oz", D::mass, pound / 16},
    {"ms", D::time, 1e-3},
    {"s", D::time, 1},
    {"min", D::time, 60},
    {"h", D::time, 3600},
    {"us", D::time, 1e-6},
    {"µs", D::time, 1e-6},
    {"°C", D::temperature, 1, 273.15},
    {"C", D::temperature, 1, 273.15},
    {"K", D::temperature, 1},
    {"°F", D::temperature, 5. / 9., 459.67 * 5. / 9.},
    {"F", D::temperature, 5. / 9., 459.67 * 5. / 9.},
    {"N", D::force, 1},
    {"kN", D::force, 1e3},
    {"lbf", D::force, pound * standard_gravity},
    {"J", D::energy, 1},
    {"mJ", D::energy, 1e-3},
    {"kJ", D::energy, 1e3},
    {"kPa", D::pressure, 1e3},
    {"MPa", D::pressure, 1e6},
    {"Pa", D::pressure, 1},
    {"GPa", D::pressure, 1e9},
    {"bar", D::pressure, 1e5},
    {"mbar", D::pressure, 1e2},
    {"hPa", D::pressure, 1e2},
    {"N/mm2", D::pressure, 1e6},
    {"psi", D::pressure, pound * standard_gravity / (inch * inch)},
    {"kg/m3", D::density, 1},
    {"g/cm3", D::density, 1e3},
    {"g/l", D::density, 1},
    {"N/mm", D::stiffness, 1e3},
    {"N/m", D::stiffness, 1},
    {"kN/m", D::stiffness, 1e3},
    {"MPa/m", D::stiffness_per_area, 1e6},
    {"kPa/mm", D::stiffness_per_area, 1e6},
    {"N/mm3", D::stiffness_per_area, 1e9},
    {"Pa/m", D::stiffness_per_area, 1},
    {"N/m3", D::stiffness_per_area, 1},
    {"N s/m", D::damping, 1},
    {"Ns/m", D::damping, 1},
    {"kg/s", D::damping, 1},
    {"m/s2", D::acceleration, 1},
    {"m/s", D::speed, 1},
    {"mm/s", D::speed, 1e-3},
    {"kJ/mol", D::molar_energy, 1e3},
    {"J/mol", D::molar_energy, 1},
    {"%/K", D::per_kelvin, 1e-2},
    {"1/K", D::per_kelvin, 1},
    {"W/(m K)", D::conductivity, 1},
    {"J/(kg K)", D::specific_heat, 1},
    {"kJ/(kg K)", D::specific_heat, 1e3},
    {"N m", D::moment, 1},
    {"mm3/(N m)", D::wear, 1e-9},
    {"mm3/J", D::wear, 1e-9},
    {"rpm", D::turning, 1.0 / 60},
    {"1/min", D::turning, 1.0 / 60},
    {"1/s", D::turning, 1},
    {"deg", D::angle, std::numbers::pi / 180},
    {"°", D::angle, std::numbers::pi / 180},
    {"rad", D::angle, 1},
    {"%", D::share, 1e-2},
  };
  return table;
}

double parse_quantity(std::string_view text, Dimension dimension)
{
  text = trimmed(text);
  std::string_view rest;
  const double     value = leading_number(text, rest, dimension);
  const bool       unitless = dimension == D::number || dimension == D::count || dimension == D::share;
  if (rest.empty())
  {
    if (unitless)
      return value;
    const auto unit = words().at(dimension).display_unit;
    throw InvalidQuantity(
      fmt::format("\"{}\" has no unit", text),
      fmt::format("Write \"{} {}\", for example (known: {})", text, unit, unit_list(dimension)));
  }
  const std::string name = spelled(rest);
  const auto        unit = find_unit(name, dimension);
  if (unit && unit->dimension == dimension)
  {
    const double si = unit->factor * value + unit->offset;
    if (!std::isfinite(si))
      throw InvalidQuantity(fmt::format("\"{}\" is too large", text), "Check the power of ten");
    return si;
  }
  for (const char *sign : {"+-", "±", "+/-"})
    if (name.find(sign) != std::string::npos)
      throw InvalidQuantity(
        fmt::format("\"{}\" has a ±, which is not allowed here", text),
        fmt::format("Remove {} and what follows it. In a bench sheet a ± may follow a thickness, a gauge "
                    "pressure, the mass, height and guide loss under [drop], and readings",
                    sign));
  if (dimension == D::number || dimension == D::count)
    throw InvalidQuantity(
      fmt::format("\"{}\" has a unit, but a {} is needed", text, dimension_name(dimension)),
      "Leave the unit out");
  if (unit)
    throw InvalidQuantity(fmt::format("\"{}\" is a {}, but a {} is needed", text,
                                      dimension_name(unit->dimension), dimension_name(dimension)),
                          fmt::format("Use one of {}", unit_list(dimension)));
  std::vector<std::string> fitting, all;
  for (const auto &known : units())
  {
    all.emplace_back(known.name);
    if (known.dimension == dimension)
      fitting.emplace_back(known.name);
  }
  auto near = nearest_name(name, fitting);
  if (near.empty())
    near = nearest_name(name, all);
  throw InvalidQuantity(fmt::format("unknown unit \"{}\"", name),
                        near.empty() ? fmt::format("Use one of {}", unit_list(dimension))
                                     : fmt::format("Did you mean \"{}\"?", near));
}

namespace
{
/// Scales of gauges that the program does not press. By their letters they look like slips of others, which
/// they are not: another tip or spring, and no formula from one to the other is known here.
bool is_other_scale(std::string_view scale)
{
  static const std::vector<std::string_view> others = {"ShoreB",  "ShoreC",   "ShoreE", "ShoreM", "ShoreO",
                                                       "ShoreDO", "ShoreOOO", "AskerA", "AskerE", "AskerF",
                                                       "AskerFP", "AskerD",   "IRHD"};
  return std::find(others.begin(), others.end(), scale) != others.end();
}
} // namespace

GaugeReading parse_hardness(std::string_view text)
{
  text = trimmed(text);
  std::string_view rest;
  GaugeReading     hardness;
  hardness.value = leading_number(text, rest, D::hardness);
  for (const char c : rest)
    if (c != ' ')
      hardness.scale += c;
  static const std::vector<std::string> scales = {"ShoreA", "ShoreD", "ShoreOO", "AskerC"};
  if (hardness.scale == "Shore00")
    hardness.scale = "ShoreOO";
  if (hardness.scale.empty())
    throw InvalidQuantity(
      fmt::format("\"{}\" does not name its hardness scale", text),
      fmt::format("Write \"{} ShoreA\", for example (known: ShoreA, ShoreD, ShoreOO, AskerC)", text));
  if (std::find(scales.begin(), scales.end(), hardness.scale) == scales.end())
  {
    if (is_other_scale(hardness.scale))
      throw InvalidQuantity(
        fmt::format("the model has no gauge \"{}\", and no conversion of its readings is known", rest),
        "Read the piece with one of ShoreA, ShoreD, ShoreOO, AskerC, and write that");
    const auto near = nearest_name(hardness.scale, scales);
    throw InvalidQuantity(fmt::format("unknown hardness scale \"{}\"", rest),
                          near.empty() ? "Use one of ShoreA, ShoreD, ShoreOO, AskerC"
                                       : fmt::format("Did you mean \"{}\"?", near));
  }
  if (hardness.value < 0 || hardness.value > 100)
    throw InvalidQuantity(fmt::format("\"{}\" is off the scale", text), "Gauge readings run from 0 to 100");
  return hardness;
}

std::string quantity_text(double si_value, Dimension dimension, std::string_view wanted)
{
  const auto unit_name = wanted.empty() ? words().at(dimension).display_unit : wanted;
  if (unit_name.empty())
    return fmt::format("{:.6g}", si_value);
  const auto unit = find_unit(unit_name, dimension);
  return fmt::format("{:.6g} {}", (si_value - unit->offset) / unit->factor, unit_name);
}

std::string_view written_unit(std::string_view text, Dimension dimension)
{
  const auto begin = text.find_first_not_of("+-.0123456789eE \t");
  if (begin == std::string_view::npos)
    return {};
  const auto unit = find_unit(spelled(trimmed(text.substr(begin))), dimension);
  return unit && unit->dimension == dimension ? unit->name : std::string_view();
}

std::string_view dimension_name(Dimension dimension)
{
  return words().at(dimension).name;
}

std::string_view dimension_example(Dimension dimension)
{
  return words().at(dimension).example;
}

std::string unit_list(Dimension dimension)
{
  std::string list;
  for (const auto &unit : units())
    if (unit.dimension == dimension)
      list += (list.empty() ? "" : ", ") + std::string(unit.name);
  return list;
}
} // namespace solemech::materials
