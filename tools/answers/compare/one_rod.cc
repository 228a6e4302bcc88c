// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/one_rod.h"

#include "tools/language/doubted_case.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using solver::DoubtedNumber;

struct RodNumber
{
  DoubtedNumber number;
  double solver::DropRig::*member;
  const char              *name, *unit;
  double                   scale; ///< from SI to `unit`
};
constexpr RodNumber rod_numbers[] = {
  {DoubtedNumber::height, &solver::DropRig::height, "drop height", "mm", 1e3},
  {DoubtedNumber::mass, &solver::DropRig::mass, "drop weight", "kg", 1},
  {DoubtedNumber::guide_loss, &solver::DropRig::guide_loss, "guide loss", "%", 100}};

/// One sigma of the logarithm; 0: the case knows of no doubt.
double spread_of(const solver::Case &setup, DoubtedNumber number)
{
  for (const auto &doubt : setup.doubts)
    if (doubt.number == number)
      return doubt.spread;
  return 0;
}

/// The mean of both when each is doubted and they agree; else the number of the first.
double common(const RodNumber &each, const solver::Case &a, const solver::Case &b)
{
  const double from = rigs::fall_of(a)->*each.member, to = rigs::fall_of(b)->*each.member;
  const double spread_a = spread_of(a, each.number), spread_b = spread_of(b, each.number);
  if (!(spread_a > 0) || !(spread_b > 0) || !(from > 0) || !(to > 0) ||
      std::abs(std::log(to / from)) > doubts_in_half_band * std::hypot(spread_a, spread_b))
    return from;
  const double weight_a = std::pow(spread_a, -2), weight_b = std::pow(spread_b, -2);
  return std::exp((weight_a * std::log(from) + weight_b * std::log(to)) / (weight_a + weight_b));
}
} // namespace

std::string share_rod(solver::Case &a, solver::Case &b)
{
  std::string text;
  const auto *rod_a = rigs::fall_of(a), *rod_b = rigs::fall_of(b);
  if (rod_a && rod_b)
  {
    auto one_a = a, one_b = b;
    for (const auto &each : rod_numbers)
    {
      const double from = rod_a->*each.member, to = rod_b->*each.member, both = common(each, a, b);
      if (from == to || both == from)
        continue;
      for (auto *one : {&one_a, &one_b})
        rigs::fall_of(*one)->*each.member = both;
      text += fmt::format("{}{} {:.4g} {} (settled {:.4g} and {:.4g})", text.empty() ? "" : ", ", each.name,
                          both * each.scale, each.unit, from * each.scale, to * each.scale);
    }
    if (!text.empty() && rigs::differences(one_a, one_b).empty())
      a.rig = one_a.rig, b.rig = one_b.rig;
    else
      text.clear();
  }
  for (auto *setup : {&a, &b})
    std::erase_if(setup->doubts, [](const solver::Doubt &doubt) { return is_of_rig(doubt.number); });
  return text;
}
} // namespace solemech::tools
