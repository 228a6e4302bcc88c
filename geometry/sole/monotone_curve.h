// SPDX-License-Identifier: Apache-2.0
// A curve through a few measured values that rises and falls only where they do: monotone cubic pieces (F.N.
// Fritsch & J. Butland, SIAM J. Sci. Stat. Comput. 5, 1984) by Boost.Math. Beyond its ends it stays level.
#pragma once

#include <functional>
#include <span>

namespace solemech::geometry
{
class MonotoneCurve
{
public:
  /// @param at  rising, at least four
  MonotoneCurve(std::span<const double> at, std::span<const double> values);

  double operator()(double x) const { return curve_(x); }

private:
  std::function<double(double)> curve_;
};
} // namespace solemech::geometry
