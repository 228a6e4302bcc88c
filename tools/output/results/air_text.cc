// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/air_text.h"

#include <fmt/format.h>

namespace solemech::tools
{
namespace
{
const solver::AirUnit *unit_of(const solver::Case &setup, const solver::ChamberFacts &chamber)
{
  for (const auto &layer : setup.layers)
    if (layer.name == chamber.layer && layer.unit)
      return &*layer.unit;
  return nullptr;
}
} // namespace

std::string air_text(const solver::AirUnit &unit)
{
  const std::string pressure = fmt::format("{:.0f} kPa gauge", unit.gauge_pressure / 1e3);
  switch (unit.state)
  {
  case solver::ChamberState::open:
    return "open, no pressure";
  case solver::ChamberState::leaking:
    return "leaking from " + pressure;
  case solver::ChamberState::sealed:
    break;
  }
  return pressure;
}

std::string air_text(const solver::Case &setup, const solver::ChamberFacts &chamber)
{
  const auto *unit = unit_of(setup, chamber);
  return unit ? air_text(*unit) : fmt::format("{:.0f} kPa gauge", chamber.gauge_pressure / 1e3);
}

bool is_open(const solver::Case &setup, const solver::ChamberFacts &chamber)
{
  const auto *unit = unit_of(setup, chamber);
  return unit && unit->state == solver::ChamberState::open;
}
} // namespace solemech::tools
