// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/reading_display.h"

#include "solver/results/catalogue.h"
#include "tools/output/results/text_layout.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
struct UnitDisplay
{
  const char *si, *unit;
  double      factor;
  int         digits;
};
constexpr UnitDisplay units[] = {
  {"m", "mm", 1e3, 2},   {"s", "ms", 1e3, 2},  {"Pa", "kPa", 1e-3, 0},   {"N", "N", 1, 0},
  {"J", "J", 1, 3},      {"1", "", 1, 3},      {"N/m", "N/mm", 1e-3, 1}, {"K", "K", 1, 1},
  {"m3", "cm³", 1e6, 2}, {"m/s", "m/s", 1, 2},
};

std::string spoken(std::string name)
{
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}
} // namespace

ReadingDisplay reading_display(const solver::Reading &reading)
{
  if (const auto *kind = solver::find_reading(reading.name))
  {
    // Small forces and energies, as of a ball, would lose their digits.
    const auto  &shown = kind->shown;
    const double size = std::abs(reading.value);
    const int    more = kind->is_family()                    ? 0
                        : shown.unit == "N" && size < 99.95  ? 2
                        : shown.unit == "J" && size < 0.0995 ? 2
                                                             : 0;
    const auto   label = fmt::format(fmt::runtime(kind->label), reading.name.substr(kind->name.size()));
    return {label, std::string(shown.unit), shown.factor, shown.digits + more, kind->headline};
  }
  for (const auto &entry : units)
    if (reading.unit == entry.si)
      return {spoken(reading.name), entry.unit, entry.factor, entry.digits, false};
  return {spoken(reading.name), reading.unit, 1, 3, false};
}

std::string display_text(const solver::Reading &reading)
{
  const ReadingDisplay display = reading_display(reading);
  return fixed_text(reading.value * display.factor, display.digits) +
         (display.unit.empty() ? "" : " " + display.unit);
}
} // namespace solemech::tools::report
