// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/knee.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

namespace solemech::tools
{
namespace
{
constexpr double steep = 2; ///< times the slope before: common practice, no source
/// Shares of the greatest way between which the two slopes are taken. The last twentieth is left out: there
/// the striker turns, and what depends on speed drops off.
constexpr double from = 0.25, bend = 0.7, to = 0.95;

const std::vector<double> *curve(const solver::Result &result, const char *name)
{
  for (const auto &each : result.curves)
    if (each.name == name && each.values.size() == result.time.size() && !each.values.empty())
      return &each.values;
  return nullptr;
}

/// Force where the way first reaches `at`.
std::optional<double> force_at(const std::vector<double> &way, const std::vector<double> &force, double at)
{
  for (std::size_t i = 1; i < way.size(); ++i)
    if (way[i - 1] < at && way[i] >= at)
      return force[i - 1] + (force[i] - force[i - 1]) * (at - way[i - 1]) / (way[i] - way[i - 1]);
  return std::nullopt;
}
} // namespace

std::optional<double> stiffening(const solver::Result &result)
{
  const auto *way = curve(result, "tup_displacement"), *force = curve(result, "force");
  if (!way || !force)
    return std::nullopt;
  const double greatest = *std::max_element(way->begin(), way->end());
  const auto low = force_at(*way, *force, from * greatest), middle = force_at(*way, *force, bend * greatest),
             high = force_at(*way, *force, to * greatest);
  if (!low || !middle || !high || !(*middle > *low))
    return std::nullopt;
  return (*high - *middle) / (to - bend) / ((*middle - *low) / (bend - from));
}

bool has_knee(const solver::Result &result)
{
  return stiffening(result).value_or(0) >= steep;
}

std::string bottoming_consequence(const solver::Result &result, double travel_left)
{
  if (travel_left > 0)
    return fmt::format("has {:.0f} % of its travel left: a slightly harder drop bottoms it.",
                       100 * travel_left);
  return has_knee(result)
           ? "bottoms: the force already climbs steeply, and a little more weight or height hits much harder."
           : "bottoms: a layer is at the end of its travel. The force shows no knee yet; drops from other "
             "heights show "
             "where it comes.";
}
} // namespace solemech::tools
