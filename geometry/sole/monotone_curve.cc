// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/monotone_curve.h"

// Boost 1.74 calls isnan as C's own header declares it.
// clang-format off
#include <math.h>
#include <boost/math/interpolators/pchip.hpp>
// clang-format on

#include <algorithm>
#include <vector>

namespace solemech::geometry
{
MonotoneCurve::MonotoneCurve(std::span<const double> at, std::span<const double> values)
{
  using Pieces = boost::math::interpolators::pchip<std::vector<double>>;
  const Pieces pieces(std::vector<double>(at.begin(), at.end()),
                      std::vector<double>(values.begin(), values.end()));
  curve_ = [pieces, first = at.front(), last = at.back()](double x) {
    return pieces(std::clamp(x, first, last));
  };
}
} // namespace solemech::geometry
