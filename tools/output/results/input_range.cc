// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/input_range.h"

#include <algorithm>
#include <string_view>

namespace solemech::tools
{
namespace
{
constexpr std::string_view of_friction[] = {"effective_grip", "worn_grip",     "lowest_grip",   "highest_grip",
                                            "grip_push_off",  "grip_braking", "grip_side_cut", "pivot_moment"};

std::optional<InputRange> beside(const Run &run, const std::string &reading, const char *why)
{
  const auto *low = run.result.find(reading + "_lowest"), *high = run.result.find(reading + "_highest");
  if (!low || !high || !(low->value < high->value))
    return std::nullopt;
  return InputRange{low->value, high->value, why};
}
} // namespace

std::optional<InputRange> input_range(const Run &run, const std::string &reading)
{
  const auto *value = run.result.find(reading);
  if (!value)
    return std::nullopt;
  if (reading == "ground_depth")
    return beside(run, reading, "what the abrasive takes");
  const auto *rig = std::get_if<solver::SlideRig>(&run.setup.rig);
  if (!rig)
    return std::nullopt;
  if (reading == "life_steps")
    return beside(run, reading, "the wear on this court");
  const double friction = rig->friction.mu_ref * rig->friction.state;
  if (std::find(std::begin(of_friction), std::end(of_friction), reading) == std::end(of_friction) ||
      !(rig->friction_highest > rig->friction_lowest) || !(friction > 0))
    return std::nullopt;
  return InputRange{value->value * rig->friction_lowest / friction, value->value * rig->friction_highest / friction,
                    "the friction of this court"};
}
} // namespace solemech::tools
