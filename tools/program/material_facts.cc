// SPDX-License-Identifier: Apache-2.0
#include "tools/program/material_facts.h"

#include "materials/pad_hardness.h"
#include "tools/language/quantity.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
using namespace materials;

namespace
{
std::optional<GaugeReading> stated_hardness(const Material &material)
{
  if (material.hardness.empty())
    return std::nullopt;
  return parse_hardness(material.hardness);
}

/// What is read, and in brackets what is stated, where it is printed as another number.
std::string read_and_stated(const std::string &read, const std::string &unit, const std::string &stated)
{
  return read + unit + (stated.empty() || stated == read ? "" : " (" + stated + ")");
}
} // namespace

double slow_modulus(const Material &material)
{
  return slow_stiffness(material).youngs_modulus;
}

std::optional<double> gauge_points(const Material &material, const std::string &scale)
{
  const auto &readings = material.readings;
  if (scale == asker_c_gauge.name && readings.asker_c >= 0)
    return readings.asker_c;
  if (scale == shore_a_gauge.name && readings.shore_a >= 0)
    return readings.shore_a;
  if (const auto stated = stated_hardness(material); stated && stated->scale == scale)
    return stated->value;
  const auto gauge =
    std::find_if(gauges.begin(), gauges.end(), [&](const Gauge &one) { return one.name == scale; });
  if (gauge == gauges.end() || std::holds_alternative<PlateData>(material.data))
    return std::nullopt;
  return pad_reading(*gauge, material);
}

std::string hardness_text(const Material &material)
{
  const auto  stated = stated_hardness(material);
  const bool  is_foam = std::holds_alternative<FoamData>(material.data);
  std::string scale = stated ? stated->scale : is_foam ? std::string(asker_c_gauge.name) : std::string();
  const auto  points = gauge_points(material, scale);
  if (!points)
    return "-";
  return read_and_stated(fmt::format("{:.0f}", *points), " " + scale,
                         stated ? fmt::format("{:g}", stated->value) : "");
}

std::string return_text(double read, double stated)
{
  if (read < 0 && stated < 0)
    return "-";
  if (read < 0)
    return fmt::format("({:.0f} %)", 100 * stated);
  return read_and_stated(fmt::format("{:.0f}", 100 * read), " %",
                         stated < 0 ? "" : fmt::format("{:.0f}", 100 * stated));
}
} // namespace solemech::tools
