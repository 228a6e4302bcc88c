// SPDX-License-Identifier: Apache-2.0
#include "tools/report/run_facts.h"

#include "tools/results/readings_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
bool is_drop(const Run &run)
{
  return std::holds_alternative<solver::DropRig>(run.setup.rig);
}

std::optional<double> value_of(const Run &run, const std::string &name)
{
  const auto *reading = run.result.find(name);
  return reading ? std::optional(reading->value) : std::nullopt;
}

const std::vector<double> *curve_of(const Run &run, const std::string &name)
{
  for (const auto &curve : run.result.curves)
    if (curve.name == name && !curve.values.empty() && curve.values.size() == run.result.time.size())
      return &curve.values;
  return nullptr;
}

const std::vector<double> *compression_curve(const Run &run)
{
  for (const char *name : {"tup_displacement", "compression", "displacement"})
    if (const auto *values = curve_of(run, name))
      return values;
  return nullptr;
}

double greatest_in(const std::vector<double> *curve)
{
  return curve ? *std::max_element(curve->begin(), curve->end()) : 0.0;
}

double greatest_compression(const Run &run)
{
  return value_of(run, "greatest_compression").value_or(greatest_in(compression_curve(run)));
}

double peak_force(const Run &run)
{
  return value_of(run, "peak_force").value_or(greatest_in(curve_of(run, "force")));
}

std::string length(double metres)
{
  return length_text(metres, Lengths::millimetre);
}

std::string milliseconds(double seconds)
{
  const double ms = 1e3 * seconds;
  return fmt::format("{:.{}f} ms", ms, std::abs(ms) < 99.95 ? 1 : 0);
}

std::string of_stack(const Run &run, double way)
{
  const double height = stack_height(run.setup);
  return height > 0 ? fmt::format("{} of {}", length(way), length(height)) : length(way);
}

std::string striker_name(const solver::Case &setup)
{
  const auto *drop = std::get_if<solver::DropRig>(&setup.rig);
  return !drop ? "press head" : drop->tup.shape == solver::TupShape::sphere ? "ball" : "drop weight";
}

std::string title_of(const Run &run)
{
  return run.setup.title.empty() ? run.label : run.setup.title;
}
} // namespace solemech::tools::report
