// SPDX-License-Identifier: Apache-2.0
// What the press pulse of each library foam shall return, and where that figure comes from.
// Class figures: Hoogkamer et al. 2018, Sports Med 48:1009-1019, three whole midsoles on one press; 87.0 and
// 75.9 % as quoted by a later paper, 65.5 % from memory. Whole shoes stand in for their foams.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace solemech::tools
{
struct PulseTarget
{
  std::string_view foam;
  double           loop_return; ///< unloading over loading area [-]
  std::string_view source;
};

inline constexpr std::array<PulseTarget, 6> pulse_targets{{
  {"eva-soft", 0.65, "class figure of EVA, from memory"},
  {"eva-firm", 0.66, "class figure of EVA and a point for the firmer moulding, invented"},
  {"eva-insert", 0.65, "class figure of EVA taken over, invented"},
  {"tpu-bead", 0.76, "class figure of bead TPU, quoted"},
  {"peba-supercritical", 0.87, "class figure of PEBA, quoted"},
  {"pu-cast", 0.58, "invented"},
}};

/// Target of a foam, or nothing when its loss is not to be touched.
inline std::optional<PulseTarget> pulse_target(std::string_view foam)
{
  for (const auto &target : pulse_targets)
    if (target.foam == foam)
      return target;
  return std::nullopt;
}
} // namespace solemech::tools
