// SPDX-License-Identifier: Apache-2.0
// Readings from curves: smoothed peak, loop areas, interpolated contact loss.
#pragma once

#include <span>
#include <vector>

namespace solemech::solver
{
/// Maximum of the least-squares quartic of y(t) over +-`half_window` round the raw maximum: a stress-wave ripple
/// on a flat top does not count as peak force. Falls back to the raw maximum with fewer than six points.
double smoothed_peak(std::span<const double> t, std::span<const double> y, double half_window);

/// Work of `force` over `way`: while the way grows to its greatest value, and after it (both positive) [J].
struct LoopAreas
{
  double loading = 0, unloading = 0;
  double returned() const { return loading > 0 ? unloading / loading : 0.0; }
};
LoopAreas loop_areas(std::span<const double> way, std::span<const double> force);
} // namespace solemech::solver
