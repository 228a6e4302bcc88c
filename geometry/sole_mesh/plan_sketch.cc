// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_sketch.h"

#include <algorithm>

namespace solemech::geometry::plan
{
double corner_quality(const Sketch &sketch)
{
  double least = 1;
  for (const auto &cell : sketch.cells)
    for (unsigned i = 0; i < 4; ++i)
    {
      const auto at = [&](unsigned k) { return sketch.nodes[cell.corners[around[k % 4]]].at; };
      const auto ahead = at(i + 1) - at(i), behind = at(i + 3) - at(i);
      least = std::min(least, cross(ahead, behind) / std::max(length(ahead) * length(behind), 1e-300));
    }
  return least;
}

void want_present_sides(Sketch &sketch)
{
  for (auto &cell : sketch.cells)
  {
    const auto side = [&](unsigned a, unsigned b) {
      return length(sketch.nodes[cell.corners[b]].at - sketch.nodes[cell.corners[a]].at);
    };
    cell.wanted = {0.5 * (side(0, 1) + side(2, 3)), 0.5 * (side(0, 2) + side(1, 3))};
  }
}
} // namespace solemech::geometry::plan
