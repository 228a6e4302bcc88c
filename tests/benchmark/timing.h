// SPDX-License-Identifier: Apache-2.0
// Clocks of the benchmark: processor time of the process, wall time, peak memory.
#pragma once

#include <functional>

namespace solemech::tests
{
struct Seconds
{
  double processor = 0, wall = 0; ///< [s]
};

/// What `work` takes, once.
Seconds timed(const std::function<void()> &work);

/// The quickest of `n` goes: the others were disturbed.
Seconds quickest(unsigned n, const std::function<void()> &work);

/// Greatest resident memory of this process so far [MB].
double peak_memory();
} // namespace solemech::tests
