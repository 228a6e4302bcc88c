// SPDX-License-Identifier: Apache-2.0
// The one ± of a reading, wherever it is shown.
#pragma once

#include "solver/results/result.h"

#include <algorithm>

namespace solemech::solver
{
/// Half the band that a reading lies in: its numerical error and, on top, what the doubts about the case
/// leave open. Below 0: neither is known.
inline double uncertainty(const Reading &reading)
{
  return reading.error < 0 && reading.doubt() < 0
           ? -1.0
           : std::max(reading.error, 0.0) + std::max(reading.doubt(), 0.0);
}

/// The same of a difference of two readings, whose doubts may have the same cause; what is not known counts
/// as nothing.
inline double uncertainty_of_difference(const Reading &a, const Reading &b)
{
  return std::max(a.error, 0.0) + std::max(b.error, 0.0) + doubt_of_difference(a, b);
}
} // namespace solemech::solver
