// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/value_words.h"

#include <fmt/format.h>

#include <cmath>

namespace solemech::tools
{
namespace
{
using D = materials::Dimension;

struct Printed
{
  double      factor;
  const char *unit;
  int         decimals;
};

Printed printed(D dimension, double value)
{
  switch (dimension)
  {
  case D::length:
    return {1e3, "mm", std::abs(value) < 0.05 ? 1 : 0};
  case D::time:
    return std::abs(value) < 1 ? Printed{1e3, "ms", 1} : Printed{1, "s", 1};
  case D::force:
    return {1, "N", 0};
  case D::share:
    return {100, "%", std::abs(value) < 0.1 ? 1 : 0};
  case D::pressure:
    return {1e-3, "kPa", 0};
  case D::density:
    return {1, "kg/m3", 0};
  case D::mass:
    return {1, "kg", 3};
  default:
    return {1, "", std::abs(value) < 10 ? 2 : 1};
  }
}

/// Half a band with the decimals of its value.
std::string half_number(double half, const Printed &how)
{
  const double shown = half * how.factor;
  return fmt::format("{:.{}f}", shown, how.decimals == 0 && shown < 1 ? 1 : how.decimals);
}

std::string behind_number(const std::string &unit, const Printed &how)
{
  const std::string shown = !unit.empty() ? unit : how.unit;
  return shown.empty() ? "" : " " + shown;
}
} // namespace

std::string band_text(const settle::Band &band, D dimension, const std::string &unit)
{
  return value_text(band.value, dimension, unit) + " ±" +
         half_number(0.5 * (band.high - band.low), printed(dimension, band.value));
}

std::string half_text(double half, double value, D dimension, const std::string &unit)
{
  const auto how = printed(dimension, value);
  return half_number(half, how) + behind_number(unit, how);
}

std::string value_text(double value, D dimension, const std::string &unit)
{
  const auto how = printed(dimension, value);
  return fmt::format("{:.{}f}{}", value * how.factor, how.decimals, behind_number(unit, how));
}

std::string fine_text(double value, D dimension)
{
  const auto how = printed(dimension, value);
  return fmt::format("{:.{}f} {}", value * how.factor, dimension == D::force ? 0 : how.decimals + 1,
                     how.unit);
}
} // namespace solemech::tools
