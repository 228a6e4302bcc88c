// SPDX-License-Identifier: Apache-2.0
// Parts of an energy account that are no layer of the stack. A layer of such a name is refused: its energies
// would be added to these. Names of layers have no spaces, so a name with one needs no refusal and leaves
// words that layers like to have ("base") to them.
#pragma once

#include <algorithm>
#include <string_view>

namespace solemech::solver::rig_part
{
inline constexpr const char *striker = "tup", *guide = "guide";
inline constexpr const char *support = "support"; ///< the block, its spring and its damper
inline constexpr const char *ground =
  "base contact"; ///< where a stack, or its side as it bulges, meets the base
inline constexpr const char *wall = "side wall", *shell = "shell", *jaws = "jaws"; ///< of a plug's side
inline constexpr const char *creasing = "creasing";               ///< energy set free by a fall
inline constexpr const char *stack = "stack", *scheme = "scheme"; ///< all layers together; the time steps
inline constexpr const char *drive = "drive", *press = "press", *gauge = "gauge"; ///< what does work on it

inline constexpr std::string_view all[] = {striker,  guide, support, ground, wall,  shell, jaws,
                                           creasing, stack, scheme,  drive,  press, gauge};

inline bool is_one(std::string_view part)
{
  return std::ranges::find(all, part) != std::end(all);
}
} // namespace solemech::solver::rig_part
