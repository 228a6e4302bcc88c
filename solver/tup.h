// SPDX-License-Identifier: Apache-2.0
// A rigid striker of revolution, and the tip of a gauge as one.
#pragma once

#include "materials/gauge.h"

#include <cmath>
#include <numbers>

namespace solemech::solver
{
enum class TupShape { flat, sphere, spherical_ended, cone };
struct Tup
{
  TupShape shape = TupShape::flat;
  double   diameter = 0;  ///< [m]
  double edge_radius = 0; ///< flat, and where a spherical end meets the side wall; of a cone: all edges, and
                          ///< its tip when it has no flat [m]
  double end_radius =
    0; ///< spherical-ended: radius of the end; cone: of the flat up to the rounding of its edge [m]
  double half_angle = 0; ///< cone: from the axis [rad]
  double friction = 0;   ///< Coulomb against the stack [-]
};

/// The tip of a gauge as a striker: flat, nose, cone and rod with rounded edges; a ball is a nose on a rod of
/// its size.
inline Tup gauge_tip(const materials::Gauge &gauge)
{
  constexpr double sharp_edge =
    0.03e-3; // rounding of the edges that a drawing shows sharp [m]: of a gauge in use
  const auto &tip = gauge.tip;
  Tup         out;
  out.shape = TupShape::cone;
  if (tip.is_ball())
  {
    // A nose that goes over into its own rod without a cone worth the name.
    out.edge_radius = tip.nose_radius;
    out.half_angle = 0.05;
    out.diameter = 2 * tip.nose_radius * (1 + 1e-4);
    return out;
  }
  out.diameter = 2 * tip.rod_radius;
  out.half_angle = tip.half_angle;
  if (tip.nose_radius > 0)
    out.edge_radius = tip.nose_radius;
  else
  {
    // Rounded so that flat and flank stay in their places: the rounding takes tan(turn/2) of its radius from
    // the flat.
    out.edge_radius = sharp_edge;
    out.end_radius = tip.flat_radius - sharp_edge * std::tan(0.5 * (0.5 * std::numbers::pi - tip.half_angle));
  }
  return out;
}
} // namespace solemech::solver
