// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/doubted.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
using materials::Dimension;
using materials::InvalidQuantity;

namespace
{
std::string trimmed(const std::string &text)
{
  const auto first = text.find_first_not_of(" \t"), last = text.find_last_not_of(" \t");
  return first == std::string::npos ? std::string() : text.substr(first, last - first + 1);
}

bool is_bare_number(const std::string &text)
{
  return text.find_first_not_of("0123456789.eE+-") == std::string::npos;
}

double half_band_of(const DoubtedText &parts, double value, Dimension dimension)
{
  if (dimension == Dimension::hardness)
  {
    if (is_bare_number(parts.doubt))
      return materials::parse_quantity(parts.doubt, Dimension::number);
    return materials::parse_hardness(parts.doubt).value;
  }
  if (dimension != Dimension::share && parts.doubt.ends_with('%'))
    return std::abs(value) * materials::parse_quantity(parts.doubt, Dimension::share);
  if (!is_bare_number(parts.doubt))
    return materials::parse_quantity(parts.doubt, dimension);
  std::string unit(materials::written_unit(parts.value, dimension));
  if (unit.empty() && parts.value.ends_with('%'))
    unit = "%";
  return materials::parse_quantity(unit.empty() ? parts.doubt : parts.doubt + " " + unit, dimension);
}
} // namespace

DoubtedText split_doubted(const std::string &text)
{
  for (const std::string sign : {"+-", "±", "+/-"})
    if (const auto at = text.find(sign); at != std::string::npos)
      return {trimmed(text.substr(0, at)), trimmed(text.substr(at + sign.size()))};
  return {trimmed(text), ""};
}

Doubted parse_doubted(const std::string &text, Dimension dimension)
{
  const DoubtedText parts = split_doubted(text);
  Doubted           out;
  if (dimension == Dimension::hardness)
  {
    const auto reading = materials::parse_hardness(parts.value);
    out.value = reading.value;
    out.scale = reading.scale;
  }
  else
    out.value = materials::parse_quantity(parts.value, dimension);
  const bool has_sign = parts.value.size() < trimmed(text).size();
  if (!has_sign)
    return out;
  if (parts.doubt.empty())
    throw InvalidQuantity("there is no number after +-", "Write \"16.0 mm +- 0.5\", for example");
  out.half_band = half_band_of(parts, out.value, dimension);
  if (!(out.half_band > 0))
    throw InvalidQuantity("the ± must be above zero",
                          "Give a positive number, or leave it out to use the default of the instrument");
  if (out.half_band >= std::abs(out.value))
    throw InvalidQuantity(
      fmt::format("the ± of {} is not smaller than the value {}", parts.doubt, parts.value),
      "Leave the value out: a default band is then assumed");
  return out;
}
} // namespace solemech::tools
