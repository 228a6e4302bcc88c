// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/plain_text.h"

#include <fmt/format.h>
#include <utf8.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr const char *replacement = "\xEF\xBF\xBD"; // U+FFFD
}

std::string readable(const std::string &text)
{
  std::string plain;
  for (const char c : text)
  {
    const auto byte = static_cast<unsigned char>(c);
    if ((byte < 0x20 && c != '\n' && c != '\t') || byte == 0x7F)
      plain += replacement;
    else
      plain += c;
  }
  return utf8::replace_invalid(plain);
}

double rounded(double value, int digits)
{
  if (value == 0 || !std::isfinite(value))
    return value;
  return std::stod(fmt::format("{:.{}e}", value, digits - 1));
}

std::vector<double> rounded(const std::vector<double> &values, double factor, int digits)
{
  double greatest = 0;
  for (const double value : values)
    greatest = std::max(greatest, std::abs(value * factor));
  std::vector<double> result;
  result.reserve(values.size());
  if (greatest == 0 || !std::isfinite(greatest))
  {
    for (const double value : values)
      result.push_back(value * factor);
    return result;
  }
  const int decimals = digits - 1 - static_cast<int>(std::floor(std::log10(greatest)));
  // Division by a power of ten is exact to the last bit, so that short decimals stay short.
  const double power = std::pow(10.0, std::abs(decimals));
  for (const double value : values)
  {
    const double x = value * factor;
    result.push_back(decimals >= 0 ? std::round(x * power) / power : std::round(x / power) * power);
  }
  return result;
}
} // namespace solemech::tools::report
