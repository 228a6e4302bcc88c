// SPDX-License-Identifier: Apache-2.0
// Second-order Butterworth low-pass, run once forwards, as EN 14808 asks for its force records: for holding a
// computed force against a filtered record. Bilinear transform with the cutoff pre-warped (textbook). The
// product reads the peak from a fitted curve instead (solver/metrics.h), which does not delay it.
#pragma once

#include <cmath>
#include <numbers>
#include <span>
#include <vector>

namespace solemech::tests
{
/// @param interval of the samples [s]; `cutoff` [Hz]
inline std::vector<double> butterworth_low_pass(std::span<const double> samples, double interval,
                                                double cutoff)
{
  const double w = std::tan(std::numbers::pi * cutoff * interval), q = std::numbers::sqrt2;
  const double norm = 1 / (1 + q * w + w * w);
  const double b0 = w * w * norm, b1 = 2 * b0, a1 = 2 * (w * w - 1) * norm, a2 = (1 - q * w + w * w) * norm;
  std::vector<double> out;
  double              x1 = 0, x2 = 0, y1 = 0, y2 = 0;
  for (const double x : samples)
  {
    const double y = b0 * x + b1 * x1 + b0 * x2 - a1 * y1 - a2 * y2;
    x2 = x1, x1 = x, y2 = y1, y1 = y;
    out.push_back(y);
  }
  return out;
}
} // namespace solemech::tests
