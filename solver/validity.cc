// SPDX-License-Identifier: Apache-2.0
#include "solver/validity.h"

#include "solver/results/catalogue.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
// The edge of a plug shows in the readings below striker radius + half a stack height (own convergence study:
// the case plug-edge shows it).
constexpr double edge_distance = 0.5;
// A blow by less than this many stack masses is as much a wave as a blow. Common practice, no source.
constexpr double light_weight = 5;
// Share of the drop energy that gravity adds on the way down, from which on the definitions of return part.
constexpr double gravity_share = 0.2;

/// The advice must pass its own check, so it is never rounded down [mm].
double whole_millimetres_above(double length)
{
  constexpr double rounding = 1e-6; // [mm]
  return std::ceil(1e3 * length - rounding);
}
} // namespace

void add_validity(const StackModel &model, const DropRig &rig, Result &result)
{
  const auto  &plug = model.input.plug;
  const double sunk = result.find(catalogue.greatest_compression)->value;
  const double reach = std::min(0.5 * rig.tup.diameter, striker_reach(rig.tup, sunk));
  const double wide_enough = reach + edge_distance * model.height;
  if (plug.side == Side::free && plug.radius < wide_enough)
  {
    const double width = whole_millimetres_above(2 * wide_enough);
    result.warnings.push_back(
      {catalogue.greatest_compression, fmt::format("the edge of the plug is close; in a shoe the stack sinks "
                                                   "less. Cut plugs at least {:g} mm wide (radius {:g} mm)",
                                                   width, width / 2)});
  }
  double moving = 0;
  for (std::size_t i = 0; i < model.bodies.size(); ++i)
    for (const auto &batch : model.bodies[i]->group().batches)
      for (const auto &weights : batch.weight)
        for (const double weight : weights)
          moving += weight * model.parts[i].material.density * model.parts[i].area_share;
  // What lies beyond the striker hardly moves.
  const double struck = std::min(1.0, reach * reach / (plug.radius * plug.radius)) * moving;
  if (rig.mass < light_weight * struck)
    result.warnings.push_back(
      {catalogue.peak_force,
       fmt::format("the drop weight is only {:.1f} times as heavy as what it hits", rig.mass / struck)});
  if (const double rise = result.find(catalogue.rebound_height)->value; rise < 0)
    result.warnings.push_back(
      {catalogue.rebound_by_height,
       fmt::format(
         "the stack stays compressed: the weight leaves it {:.1f} mm below the level of first touch",
         -1e3 * rise)});
  const double given = rig.mass * model.input.gravity * rig.height;
  if (rig.mass * model.input.gravity * sunk > gravity_share * given)
    result.warnings.push_back({catalogue.rebound_by_height,
                               "the weight gains much energy while it sinks in, so the returns by "
                               "height, speed and loop differ (--details)"});
}
} // namespace solemech::solver
