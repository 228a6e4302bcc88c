// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/sheet/plausible.h"

#include "solver/results/catalogue.h"
#include "tools/answers/sheet/value_words.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <string_view>

namespace solemech::tools
{
namespace
{
using D = materials::Dimension;

using solver::Usual;

/// What soles show, wide open. Common practice, no source.
constexpr Usual soft_layer{1e-3, 80e-3}, rubber_layer{0.3e-3, 20e-3}, stiff_layer{0.2e-3, 12e-3};

/// Ratio to the middle one: hits of one stack do not differ so. Common practice, no source.
constexpr double far_from_the_others = 1.6;

Usual around(double value)
{
  return {value / far_from_the_others, value * far_from_the_others};
}

/// The power of ten or thousand that brings a value among the usual ones; 0: none does.
double usual_factor(double value, const Usual &usual)
{
  for (const double factor : {0.1, 10., 1e-3, 1e3, 0.01, 100.})
    if (usual.holds(factor * value))
      return factor;
  return 0;
}

std::string question(const std::string &name, double value, const Usual &usual, D dimension,
                     const std::string &unit)
{
  const double factor = usual_factor(value, usual);
  return fmt::format("{} of {} is unusual; {} to {} is expected.{}", name, value_text(value, dimension, unit),
                     value_text(usual.lowest, dimension, unit), value_text(usual.highest, dimension, unit),
                     factor > 0 ? fmt::format(" Is it {}?", value_text(factor * value, dimension, unit))
                                : " Is its unit right?");
}
} // namespace

std::vector<std::string> asked_of_stack(const solver::Case &setup)
{
  std::vector<std::string> asked;
  for (const auto &layer : setup.layers)
  {
    const bool  soft = layer.unit || std::holds_alternative<materials::FoamData>(layer.material.data);
    const auto &usual = soft                                                                 ? soft_layer
                        : std::holds_alternative<materials::RubberData>(layer.material.data) ? rubber_layer
                                                                                             : stiff_layer;
    if (!usual.holds(layer.thickness))
      asked.push_back(question(layer.name + " thickness", layer.thickness, usual, D::length, ""));
  }
  return asked;
}

std::string asked_of_reading(const std::string &name, const std::string &reading, double value, D dimension,
                             const std::string &unit)
{
  const auto *kind = solver::find_reading(reading);
  return !kind || kind->usual.holds(value) ? std::string()
                                           : question(name, value, kind->usual, dimension, unit);
}

namespace
{
using Text = std::function<std::string(double)>;

/// "31.2 mm is far from the others, about 318 mm", and what to do about it.
OddHit far_hit(const std::vector<double> &values, std::size_t index, double others, const Text &text)
{
  const double value = values[index], factor = usual_factor(value, around(others));
  return {index, fmt::format("{} is far from the others, about {}", text(value), text(others)),
          fmt::format("{}Correct it, or remove it if it was a bad reading",
                      factor > 0 ? fmt::format("Is it {}? ", text(factor * value)) : "")};
}

OddHit odd_pair(const std::vector<double> &values, const Text &text)
{
  const std::size_t smaller = values[0] <= values[1] ? 0 : 1;
  const double      low = values[smaller], high = values[1 - smaller];
  const double      factor = usual_factor(high, around(low));
  if (factor == 0)
    return {
      smaller,
      fmt::format("{} and {} are too far apart for hits of one stack", text(values[0]), text(values[1])),
      "Correct or remove one"};
  auto odd = far_hit(values, smaller, high, text);
  odd.cure += fmt::format(". Or the other is wrong: {} instead of {}", text(factor * high), text(high));
  return odd;
}
} // namespace

std::optional<OddHit> odd_hit(const std::vector<double> &values, double half_band, D dimension,
                              const std::string &unit)
{
  auto sorted = values;
  std::sort(sorted.begin(), sorted.end());
  const double middle = sorted[sorted.size() / 2];
  const auto   odd = std::ranges::find_if_not(values, [&](double value) {
    return around(middle).holds(value) || std::abs(value - middle) <= 2 * half_band;
  });
  if (odd == values.end())
    return std::nullopt;
  const auto text = [&](double value) { return value_text(value, dimension, unit); };
  return values.size() == 2 ? odd_pair(values, text)
                            : far_hit(values, static_cast<std::size_t>(odd - values.begin()), middle, text);
}
} // namespace solemech::tools
