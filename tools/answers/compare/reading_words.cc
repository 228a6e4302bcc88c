// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/reading_words.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
const std::vector<const solver::ReadingKind *> &compared_readings()
{
  static const auto in_order =
    solver::in_order([](const solver::ReadingKind &kind) { return kind.compared.place; });
  return in_order;
}

ReadingWords reading_words(std::string_view name)
{
  const auto *kind = solver::find_reading(name);
  if (!kind || kind->compared.place == 0)
    return {"reading", "", "", 1, 3, "more", "less"};
  const auto &words = kind->compared;
  const auto  unit = words.unit.empty() ? kind->shown.unit : words.unit;
  return {words.label, unit,      unit == "%" ? "points" : unit, kind->shown.factor, kind->shown.digits,
          words.more,  words.less};
}

double real_difference(std::string_view name, double from, double to)
{
  const auto *kind = solver::find_reading(name);
  return kind ? kind->compared.real_difference +
                  kind->compared.real_share * std::max(std::abs(from), std::abs(to))
              : 0;
}

bool is_within_doubt(std::string_view name, double from, double to)
{
  return std::abs(to - from) < real_difference(name, from, to);
}
} // namespace solemech::tools
