// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/learn/measured.h"

#include "solver/results/catalogue.h"
#include "solver/results/result_check.h"
#include "tools/language/number_text.h"
#include "tools/language/quantity.h"
#include "tools/output/report/reading_display.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <cmath>
#include <optional>
#include <string_view>

namespace solemech::tools::learn
{
using materials::Dimension;

namespace
{
/// Energy that a layer turned into heat, its ring or film left out, over what went in.
double lost_share(const Run &run, std::string_view layer)
{
  const auto picture = energy_picture(run.setup, run.result);
  for (const auto &part : picture.shares)
    if (part.kind == ShareKind::lost_in_part && part.name == layer)
      return picture.share(part);
  return 0;
}

std::optional<double> of_unit(const solver::Result &result, std::string_view name)
{
  const auto *fact = find_unit_fact(name);
  return fact && !result.chambers.empty() ? std::optional(result.chambers.front().*fact->value)
                                          : std::nullopt;
}

double value_of(const ReadingOf &reading, const std::vector<Run> &runs)
{
  const Run &run = runs.at(reading.run);
  if (!run.result.complete)
    throw solver::ResultsError(
      fmt::format("'{}' stopped early, so the lesson has no answer: {}", run.label, run.result.stop_reason));
  std::optional<double> value;
  if (reading.name.starts_with(lost_in))
    value = lost_share(run, std::string_view(reading.name).substr(lost_in.size()));
  else if (const auto *found = run.result.find(reading.name))
    value = found->value;
  else
    value = of_unit(run.result, reading.name);
  if (!value || !std::isfinite(*value))
    throw solver::ResultsError(
      fmt::format("'{}' gave no {}, which the lesson needs", run.label, reading.name));
  return *value;
}

/// Three digits that carry information.
std::string digits(double value)
{
  const double size = std::abs(value);
  return fmt::format("{:.{}f}", value, size >= 99.95 ? 0 : size >= 9.995 ? 1 : 2);
}

std::string quantity(double value, Dimension dimension, std::string_view name)
{
  if (name == solver::catalogue.bottoming_margin)
    return value < 0.005 ? "nothing" : fmt::format("{:.0f} %", 100 * value);
  switch (dimension)
  {
  case Dimension::share:
    return fmt::format("{:.1f} %", 100 * value);
  case Dimension::length:
    return length_text(value, Lengths::millimetre);
  case Dimension::force:
    return std::abs(value) < 99.95 ? digits(value) + " N" : force_text(value);
  case Dimension::time:
    return time_text(value);
  case Dimension::pressure:
    return digits(1e-3 * value) + " kPa";
  case Dimension::energy:
    return digits(value) + " J";
  case Dimension::stiffness:
    return digits(1e-3 * value) + " N/mm";
  default:
    return digits(value) + (name == solver::catalogue.peak_deceleration ? " g" : "");
  }
}

std::string reading_words(const ReadingOf &reading)
{
  if (reading.name.starts_with(lost_in))
    return "share lost in " + reading.name.substr(lost_in.size());
  return report::reading_display({reading.name, 0, "", "", -1}).label;
}
} // namespace

double measured(const ReadingMeasure &measure, const std::vector<Run> &runs)
{
  const double first = value_of(measure.first, runs);
  if (measure.kind == MeasureKind::single)
    return first;
  const double second = value_of(measure.second, runs);
  if (measure.kind == MeasureKind::difference)
    return first - second;
  if (second == 0)
    throw solver::ResultsError(fmt::format("{} of '{}' is zero, so the lesson cannot compare with it",
                                           measure.second.name, runs[measure.second.run].label));
  return first / second - (measure.kind == MeasureKind::change ? 1 : 0);
}

std::string measured_text(const ReadingMeasure &measure, double value, bool with_sign)
{
  const char *plus = with_sign && value >= 0 ? "+" : "";
  if (measure.kind == MeasureKind::single)
    return plus + quantity(value, measure.dimension, measure.first.name);
  if (measure.kind == MeasureKind::ratio)
    return plus + quantity(value, measure.dimension, "");
  const double size = std::abs(value);
  const char  *sign = with_sign && value < 0 ? "-" : plus;
  if (measure.kind == MeasureKind::change)
    return fmt::format("{}{:.{}f} %", sign, 100 * size, size < 0.0995 ? 1 : 0);
  if (measure.dimension == Dimension::share)
    return fmt::format("{}{:.1f} points", sign, 100 * size);
  return sign + quantity(size, measure.dimension, measure.first.name);
}

std::string spoken(const ReadingMeasure &measure)
{
  const auto words = reading_words(measure.first);
  const auto of = [](const ReadingOf &reading) {
    return reading.run_name.empty() ? std::string() : " of " + reading.run_name;
  };
  if (measure.kind == MeasureKind::single)
    return words + of(measure.first);
  if (measure.first.name != measure.second.name)
    return fmt::format("{}{} {} {}{}", words, of(measure.first),
                       measure.kind == MeasureKind::difference ? "less" : "over",
                       reading_words(measure.second), of(measure.second));
  switch (measure.kind)
  {
  case MeasureKind::difference:
    return fmt::format("{}{} minus that{}", words, of(measure.first), of(measure.second));
  case MeasureKind::change:
    return fmt::format("{}, from {} to {}", words, measure.second.run_name, measure.first.run_name);
  default:
    return fmt::format("{}{} divided by that{}", words, of(measure.first), of(measure.second));
  }
}

std::string filled(const LessonText &text, const std::vector<Run> &runs)
{
  std::string result = text.texts.empty() ? std::string() : text.texts.front();
  for (std::size_t i = 0; i < text.numbers.size(); ++i)
  {
    const auto &number = text.numbers[i];
    result +=
      measured_text(number.measure, measured(number.measure, runs), number.with_sign) + text.texts[i + 1];
  }
  return result;
}
} // namespace solemech::tools::learn
