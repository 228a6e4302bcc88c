// SPDX-License-Identifier: Apache-2.0
#include "solver/rigs/sole_benches.h"

#include "geometry/errors.h"
#include "solver/models/sole_section.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr double lift_share = 0.8; // of the way from the ball to the middle of the heel
constexpr double least_setback = 5e-3, greatest_setback = 12e-3; // of the upper pad [m]
constexpr double near = 1.5e-3, off = 4e-3; // cells under a roller or pad and elsewhere, at level 1 [m]

/// The layer that bends hardest, of those that are plates; empty: there is none.
std::string plate_of(const Sole &sole, const geometry::SoleBody &body)
{
  std::string name;
  double      stiffest = 0;
  for (std::size_t i = 0; i < sole.layers.size(); ++i)
  {
    const auto   material = material_in_section(sole.layers[i]);
    const auto  *data = std::get_if<materials::PlateData>(&material.data);
    const double stiff =
      data ? data->youngs_modulus * std::pow(body.thickness(i, body.ball_line().centre()), 3) : 0.0;
    if (stiff > stiffest)
      stiffest = stiff, name = sole.layers[i].name;
  }
  return name;
}

/// The uppermost foam is as thick as the upper pad ends ahead of the lower one.
double setback_of(const Sole &sole, const geometry::SoleBody &body)
{
  for (std::size_t i = 0; i < sole.layers.size(); ++i)
    if (std::holds_alternative<materials::FoamData>(sole.layers[i].material.data))
      return std::clamp(body.thickness(i, body.ball_line().centre()), least_setback, greatest_setback);
  return least_setback;
}

/// Even along the foot, and through foam and rubber finer than a solid can have them.
geometry::SoleSizes section_sizes(const geometry::SoleBody &body, double level)
{
  constexpr double    through = 3e-3, thin = 1.5e-3; // [m]
  geometry::SoleSizes sizes;
  sizes.plan.along = off / level;
  for (std::size_t layer = 0; layer < body.n_layers(); ++layer)
  {
    const double thickness = body.thickness(layer, body.ball_line().centre());
    sizes.n_cells.push_back(
      thickness < thin ? 1 : static_cast<unsigned>(std::max(1.0, std::round(level * thickness / through))));
  }
  return sizes;
}

void require_inside(const geometry::SoleBody &body, double from, double to, const char *what, double value,
                    double most)
{
  if (from <= 0 || to >= body.length())
    throw geometry::InvalidGeometry(what, value, "less than " + geometry::in_mm(most) + " on this sole");
}
} // namespace

SoleBend bend_of(const Sole &sole, BendRig rig, double level)
{
  const geometry::SoleBody body(shape_of(sole));
  const double             ball = body.ball_line().centre(), half = 0.5 * rig.span;
  require_inside(body, ball - half - rig.support_radius, ball + half + rig.support_radius,
                 "span between the supports", rig.span,
                 2 * (std::min(ball, body.length() - ball) - rig.support_radius));
  rig.centre = ball;
  rig.plate = plate_of(sole, body);
  auto             sizes = section_sizes(body, level);
  constexpr double reach = 4e-3; // of the fine cells on both sides of a roller [m]
  for (const double place : {ball - half, ball, ball + half})
    sizes.plan.finer.push_back({place - reach, place + reach, near / level});
  return {long_section(sole, body, sizes), rig};
}

SoleFlexion flexion_of(const Sole &sole, FlexionRig rig, double level)
{
  const geometry::SoleBody body(shape_of(sole));
  const double             ball = body.ball_line().centre(), heel = geometry::heel_station * body.length();
  rig.axis = {ball, 0};
  rig.arm = lift_share * (ball - heel);
  rig.setback = setback_of(sole, body);
  rig.plate = plate_of(sole, body);
  const double roller = ball - rig.arm;
  require_inside(body, roller - 2 * rig.roller_radius, ball + rig.setback, "radius of the roller",
                 rig.roller_radius, 0.5 * roller);
  auto sizes = section_sizes(body, level);
  sizes.plan.finer.push_back({roller - rig.roller_radius, roller + rig.roller_radius, near / level});
  sizes.plan.finer.push_back({ball - 3e-3, ball + rig.setback + 3e-3, near / level});
  return {long_section(sole, body, sizes, {ball + rig.setback}), rig};
}
} // namespace solemech::solver
