// SPDX-License-Identifier: Apache-2.0
// Where 100 % of the energy went, for people: the ledger rows summed by part at the end of contact.
//   thrown back      rebound by height (or loop return) times the energy that went in
//   a part           everything that part turned into heat
//   base of the rig  what the block under the stack, its spring and its damper took
//   guide            lost in the guide of the rig, both ways
//   left in the stack   still held by the parts or moving in them at that instant; it is lost later
// The sum over 100 % says how well the bookkeeping closes.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <array>
#include <string>
#include <string_view>
#include <vector>

namespace solemech::tools
{
enum class ShareKind { returned, lost_in_part, lost_in_guide, left_in_stack };
constexpr std::array<std::string_view, 4> words_of(ShareKind)
{
  return {"returned", "part", "guide", "left"};
}

/// What the block under the stack, its spring and its damper took.
inline constexpr const char *base_of_the_rig = "base of the rig";

struct EnergyShare
{
  std::string name; ///< part as the case names it, or "thrown back", "guide", "left in the stack"
  ShareKind   kind;
  double      energy = 0; ///< [J]
  double      error = -1; ///< estimated numerical error [J]; < 0: not estimated
};

struct EnergyPicture
{
  double                   input = 0;       ///< 100 % [J]
  double                   held_before = 0; ///< share of it that a leaking unit held before [J]
  double                   numerical = 0;   ///< left to the time integration, not shown as a share [J]
  std::vector<EnergyShare> shares; ///< returned first, parts foot side first, guide, left in the stack

  double share(const EnergyShare &part) const { return input > 0 ? part.energy / input : 0; } ///< [-]
  double accounted() const;   ///< sum of shares [-]
  double share_error() const; ///< greatest numerical error of a share [-]; < 0: not estimated
};

/// ", each share to ±0.4 points"; empty when no error was estimated.
std::string share_error_words(const EnergyPicture &picture);

/// Sums the ledger of a run at its contact loss, or at its last time when there was none.
/// Empty when the run has no energy input or no ledger.
EnergyPicture energy_picture(const solver::Case &setup, const solver::Result &result);

/// How far the shares may add up to something else than 100 % [-].
inline constexpr double most_unaccounted = 0.005;

/// Why the shares of a finished run cannot be shown: they do not add up. Empty when they do, or there are
/// none.
std::string unaccounted_text(const solver::Case &setup, const solver::Result &result);
} // namespace solemech::tools
