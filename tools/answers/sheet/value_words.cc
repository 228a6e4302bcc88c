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
    return {1e3, "ms", 1};
  case D::force:
    return {1, "N", 0};
  case D::share:
    return {100, "%", 0};
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

} // namespace

std::string band_text(const settle::Band &band, D dimension, const std::string &unit)
{
  const auto how = printed(dimension, band.value);
  const auto half = 0.5 * (band.high - band.low) * how.factor;
  const auto shown = !unit.empty() ? unit : how.unit;
  return fmt::format("{:.{}f}{}{} ±{:.{}f}", band.value * how.factor, how.decimals, shown.empty() ? "" : " ",
                     shown, half, how.decimals == 0 && half < 1 ? 1 : how.decimals);
}

std::string value_text(double value, D dimension, const std::string &unit)
{
  const auto        how = printed(dimension, value);
  const std::string shown = !unit.empty() ? unit : how.unit;
  return fmt::format("{:.{}f}{}{}", value * how.factor, how.decimals, shown.empty() ? "" : " ", shown);
}

std::string fine_text(double value, D dimension)
{
  const auto how = printed(dimension, value);
  return fmt::format("{:.{}f} {}", value * how.factor, dimension == D::force ? 0 : how.decimals + 1,
                     how.unit);
}
} // namespace solemech::tools
