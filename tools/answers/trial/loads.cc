// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/loads.h"

#include "solver/mesh/locking.h"
#include "solver/results/catalogue.h"
#include "tools/rigs/registry.h"

namespace solemech::tools
{
namespace
{
constexpr double body_weights = 2.55, pulse = 185e-3, head = 60e-3, head_edge = 6e-3; // [-], [s], [m], [m]
} // namespace

solver::Case dropped_with(const solver::Case &data, double energy)
{
  solver::Case result = data;
  auto        &fall = *rigs::fall_of(result);
  fall.height = energy / (fall.mass * data.gravity);
  return result;
}

double drop_energy(const solver::Case &data)
{
  const auto &fall = *rigs::fall_of(data);
  return fall.mass * data.gravity * fall.height;
}

solver::Case stepped_on(const solver::Case &data, double body_mass)
{
  solver::Case     result = data;
  solver::PressRig rig;
  rig.tup.diameter = head;
  rig.tup.edge_radius = head_edge;
  rig.control = solver::PressControl::force;
  rig.wave = solver::PressWave::half_sine;
  rig.peak = body_weights * body_mass * data.gravity;
  rig.duration = pulse;
  result.rig = rig;
  return result;
}

bool can_be_stepped_on(const solver::Case &data)
{
  return data.plug.section == solver::Section::axisymmetric && data.plug.radius >= head / 2;
}

std::optional<TravelLeft> travel_left(const solver::Case &data, const solver::Result &result)
{
  if (!result.complete)
    return std::nullopt;
  std::optional<TravelLeft> least;
  for (const auto &layer : data.layers)
  {
    const double limit = solver::locking_strain(layer);
    const auto  *compression = result.find(solver::catalogue.compression_of_layer.of(layer.name));
    if (limit <= 0 || !compression)
      continue;
    const double share = 1 - compression->value / layer.thickness / limit;
    if (!least || share < least->share)
      least = TravelLeft{share, layer.name};
  }
  return least;
}
} // namespace solemech::tools
