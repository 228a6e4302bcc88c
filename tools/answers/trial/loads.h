// SPDX-License-Identifier: Apache-2.0
// The stack of a case under other loads, and how much travel a run left.
#pragma once

#include "solver/case.h"
#include "solver/results/result.h"

#include <optional>
#include <string>

namespace solemech::tools
{
/// The same weight let fall with another energy [J]. The case must have one that falls.
solver::Case dropped_with(const solver::Case &data, double energy);

/// Energy of the fall [J] of such a case.
double drop_energy(const solver::Case &data);

/// A step of a player: half-sine force pulse of 2.55 body weights in 185 ms from a flat head of 60 mm (edge
/// 6 mm) on the plug. At 80 kg this is the pulse of 2000 N in 185 ms of Hoogkamer et al. 2018 (from memory);
/// the head is invented.
/// @param body_mass  [kg]
solver::Case stepped_on(const solver::Case &data, double body_mass);

/// True when the plug is wide enough for the head of stepped_on.
bool can_be_stepped_on(const solver::Case &data);

/// A margin and the layer that has it.
struct TravelLeft
{
  double      share = 0; ///< of the useful travel; below 0 when a layer went beyond it
  std::string layer;
};

/// Share of the useful travel left in the layer that has least, by the readings `compression.<layer>`; unlike
/// the reading bottoming_margin it goes on below 0. Nothing when no layer has an end of travel, or the run is
/// not complete.
std::optional<TravelLeft> travel_left(const solver::Case &data, const solver::Result &result);
} // namespace solemech::tools
