// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/solid_contact.h"

#include <algorithm>

namespace solemech::solver
{
SolidContactState SolidContact::state(const Vector &x) const
{
  SolidContactState state;
  const auto        centre = place_on_body({}, x);
  for (const auto &touch : touches(x))
  {
    for (unsigned c = 0; c < 3; ++c)
    {
      const unsigned d = (c + 1) % 3, e = (c + 2) % 3;
      state.force[c] += touch.force[c];
      state.moment[c] +=
        (touch.place[d] - centre[d]) * touch.force[e] - (touch.place[e] - centre[e]) * touch.force[d];
    }
    if (touch.pressure > 0)
      state.area += touch.point->area * reach(*touch.point, x);
    state.deepest = std::max(state.deepest, touch.depth);
  }
  return state;
}
} // namespace solemech::solver
