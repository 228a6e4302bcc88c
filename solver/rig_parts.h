// SPDX-License-Identifier: Apache-2.0
// Parts of an energy account that belong to the rig and are no layer of the stack. A layer of such a name is
// refused: its energies would be added to these.
#pragma once

#include <algorithm>
#include <string_view>

namespace solemech::solver::rig_part
{
inline constexpr const char *striker = "tup", *guide = "guide";
inline constexpr const char *support = "support"; ///< the block, its spring and its damper

inline constexpr std::string_view all[] = {striker, guide, support};

inline bool is_one(std::string_view part)
{
  return std::ranges::find(all, part) != std::end(all);
}
} // namespace solemech::solver::rig_part
