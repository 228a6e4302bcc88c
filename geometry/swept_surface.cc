// SPDX-License-Identifier: Apache-2.0
#include "geometry/swept_surface.h"

#include <cmath>

namespace solemech::geometry
{
SpaceDistance surface_distance(const SweptSurface &surface, const std::array<double, 3> &place)
{
  const auto [x, y, z] = place;
  const bool   round = surface.sweep == Sweep::round;
  const double r = round ? std::hypot(x, y) : x;
  const auto   flat = surface_distance(surface.outline, r, z);
  // On the axis every direction leads away from it.
  const std::array<double, 2> away = !round || r == 0 ? std::array{1.0, 0.0} : std::array{x / r, y / r};
  const double                across = !round ? 0 : r == 0 ? flat.curvature[0] : flat.normal[0] / r;

  SpaceDistance out{.distance = flat.distance,
                    .normal = {flat.normal[0] * away[0], flat.normal[0] * away[1], flat.normal[1]}};
  for (unsigned i = 0; i < 2; ++i)
  {
    for (unsigned j = 0; j < 2; ++j)
      out.curvature[i][j] =
        flat.curvature[0] * away[i] * away[j] + across * ((i == j ? 1.0 : 0.0) - away[i] * away[j]);
    out.curvature[i][2] = out.curvature[2][i] = flat.curvature[2] * away[i];
  }
  out.curvature[2][2] = flat.curvature[1];
  return out;
}
} // namespace solemech::geometry
