// SPDX-License-Identifier: Apache-2.0
#include "tools/compare/bands.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
double least_share_error(const std::string &name, double scale)
{
  const bool in_points = name == "rebound_by_height" || name == "loop_return";
  return 0.0005 * (in_points ? 1.0 : std::abs(scale));
}

Banded banded(double fine, double coarse, double least)
{
  return {fine, std::max(std::abs(fine - coarse), least)};
}
} // namespace solemech::tools
