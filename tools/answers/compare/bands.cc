// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/bands.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
// Envelopes of the errors of shares at the wished accuracy of 1 %, in points of one or relative to the
// reading: shares of two pairs of stacks (foam against air unit, two air units) at this level and a finer
// one, the difference taken to the limit of mesh and step.
double least_share_error(const std::string &name, double scale)
{
  if (name == "rebound_by_height" || name == "loop_return")
    return 0.001;
  const double relative = name == "contact_time" ? 0.004 : name == "peak_force" ? 0.002 : 0.001;
  return std::abs(scale) * relative;
}

Banded banded(double fine, double coarse, double least)
{
  return {fine, std::max(std::abs(fine - coarse), least)};
}
} // namespace solemech::tools
