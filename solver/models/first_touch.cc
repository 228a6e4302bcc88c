// SPDX-License-Identifier: Apache-2.0
#include "solver/models/first_touch.h"

namespace solemech::solver
{
double first_touch(const Contact &striker, int unknown, Vector x, double height)
{
  const auto touches = [&](double level) {
    x[unknown] = level;
    return striker.state(x).deepest > 0;
  };
  double above = 0, below = 0;
  while (touches(above))
    below = above, above += 0.1 * height;
  while (above == below || !touches(below))
  {
    if (below < -height)
      return above; // it misses the stack
    below -= 0.1 * height;
  }
  constexpr int n_halvings = 40;
  for (int i = 0; i < n_halvings; ++i)
  {
    const double middle = 0.5 * (above + below);
    (touches(middle) ? below : above) = middle;
  }
  return above;
}
} // namespace solemech::solver
