// SPDX-License-Identifier: Apache-2.0
#include "tools/language/number_text.h"

#include <fmt/format.h>

#include <cctype>
#include <cmath>
#include <stdexcept>

namespace solemech::tools
{
Lengths lengths_from(const std::string &text)
{
  for (const auto lengths : {Lengths::millimetre, Lengths::centimetre, Lengths::inch})
    if (text == length_unit(lengths))
      return lengths;
  throw std::invalid_argument("lengths are printed in mm, cm or in, not in '" + text + "'");
}

const char *length_unit(Lengths lengths)
{
  return lengths == Lengths::millimetre ? "mm" : lengths == Lengths::centimetre ? "cm" : "in";
}

double length_factor(Lengths lengths)
{
  return lengths == Lengths::millimetre ? 1e3 : lengths == Lengths::centimetre ? 1e2 : 1 / 0.0254;
}

std::string length_text(double metres, Lengths lengths, bool with_unit)
{
  const double value = metres * length_factor(lengths);
  const double size = std::abs(metres);
  const int    decimals =
    lengths == Lengths::inch ? 2
       : lengths == Lengths::centimetre
         ? (size >= 0.1 ? 1 : 2)
         : (size >= 0.0995 || (size > 0.02 && std::abs(value - std::round(value)) < 1e-6) ? 0 : 1);
  return fmt::format("{:.{}f}", value, decimals) + (with_unit ? std::string(" ") + length_unit(lengths) : "");
}

std::string short_length(double metres)
{
  std::string number = fmt::format("{:.2f}", metres * 1e3);
  number.erase(number.find_last_not_of('0') + 1);
  if (number.ends_with('.'))
    number.pop_back();
  return number + " mm";
}

std::string signed_length_text(double metres, Lengths lengths)
{
  return (metres < 0 ? "-" : "+") + length_text(std::abs(metres), lengths);
}

std::string digits_text(double value)
{
  const double size = std::abs(value);
  return fixed_text(value, size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2);
}

std::string time_text(double seconds)
{
  constexpr double minute = 60, hour = 3600, day = 86400;
  const double     size = std::abs(seconds);
  if (size < 0.9995)
    return fmt::format("{:.{}f} ms", 1e3 * seconds, size < 0.09995 ? 1 : 0);
  if (size < 2 * minute)
    return fmt::format("{:.3g} s", seconds);
  if (size < 2 * hour)
    return fmt::format("{:.3g} min", seconds / minute);
  return size < 3 * day ? fmt::format("{:.3g} h", seconds / hour) : fmt::format("{:.3g} days", seconds / day);
}

std::string force_text(double newtons)
{
  return std::abs(newtons) >= 999.5 ? fmt::format("{:.2f} kN", newtons / 1e3) : fixed_text(newtons, 0) + " N";
}

std::string percent_text(double share, bool decimals)
{
  return fixed_text(100 * share, decimals ? 1 : 0) + " %";
}

std::string listed(const std::vector<std::string> &texts)
{
  std::string result;
  for (std::size_t i = 0; i < texts.size(); ++i)
    result += (i == 0 ? "" : i + 1 == texts.size() ? " and " : ", ") + texts[i];
  return result;
}

std::string fixed_text(double value, int digits)
{
  const std::string text = fmt::format("{:.{}f}", value, digits);
  return text.starts_with('-') && text.find_first_of("123456789") == std::string::npos ? text.substr(1)
                                                                                       : text;
}

std::string rounded_count(double number)
{
  const double power = number > 0 ? std::pow(10.0, std::floor(std::log10(number)) - 1) : 1.0;
  const double rounded = std::round(number / power) * power;
  if (rounded >= 1e6)
    return fmt::format("{:g} million", rounded / 1e6);
  return rounded >= 1e4 ? fmt::format("{:g} thousand", rounded / 1e3) : fmt::format("{:g}", rounded);
}

std::string energy_text(double joules)
{
  const double size = std::abs(joules);
  if (size >= 0.0995)
    return fixed_text(joules, size < 9.995 ? 2 : size < 99.95 ? 1 : 0) + " J";
  return fixed_text(1e3 * joules, size < 0.00995 ? 1 : 0) + " mJ";
}

std::string share_words(double share)
{
  if (std::abs(share) < 5e-5)
    return "nothing";
  if (share > 0 && share < 0.01)
    return "less than 1 %";
  return fmt::format("{:.0f} %", 100 * share);
}

std::string capital(std::string text)
{
  if (!text.empty())
    text[0] = static_cast<char>(std::toupper(static_cast<unsigned char>(text[0])));
  return text;
}
} // namespace solemech::tools
