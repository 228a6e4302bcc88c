// SPDX-License-Identifier: Apache-2.0
// Readings from curves: peaks between two instants, smoothed peak, loop areas.
#pragma once

#include <span>
#include <vector>

namespace solemech::solver
{
/// Where a motion turns within a step, on the cubic that has the places and speeds of both ends.
struct Crest
{
  double share = 0; ///< of the step that has passed then [-]
  double place = 0; ///< unit of x0
};

/// @param v0, v1  speeds at the ends, of opposite sign [unit of x0 per s]
Crest crest_between(double x0, double v0, double x1, double v1, double dt);

/// Value at `share` of a step of the cubic with places x0, x1 and motions m0 = v0 dt, m1 = v1 dt at its ends
/// (Hermite); numbers or vectors.
template <typename Value>
Value on_cubic(double share, const Value &x0, const Value &m0, const Value &x1, const Value &m1)
{
  const double s = share, r = 1 - share;
  return r * r * (1 + 2 * s) * x0 + s * r * r * m0 + s * s * (3 - 2 * s) * x1 - s * s * r * m1;
}

/// Greatest value of a smooth curve: the top of the parabola through the greatest sample and its neighbours;
/// the sample itself at an end of the curve.
struct Peak
{
  double at = 0, value = 0;
};
Peak peak_of(std::span<const double> t, std::span<const double> y);

/// Maximum of the least-squares quartic of y(t) over +-`half_window` round the raw maximum: a stress-wave
/// ripple on a flat top does not count as peak force. Falls back to the raw maximum with fewer than six
/// points.
double smoothed_peak(std::span<const double> t, std::span<const double> y, double half_window);

/// Work of `force` over `way`: while the way grows to its greatest value, and after it (both positive) [J].
struct LoopAreas
{
  double loading = 0, unloading = 0;
  double returned() const { return loading > 0 ? unloading / loading : 0.0; }
};
LoopAreas loop_areas(std::span<const double> way, std::span<const double> force);
} // namespace solemech::solver
