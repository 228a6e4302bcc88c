// SPDX-License-Identifier: Apache-2.0
#include "tests/benchmark/timing.h"

#include <sys/resource.h>

#include <algorithm>
#include <chrono>
#include <ctime>

namespace solemech::tests
{
Seconds timed(const std::function<void()> &work)
{
  const auto    wall = std::chrono::steady_clock::now();
  const clock_t processor = std::clock();
  work();
  return {static_cast<double>(std::clock() - processor) / CLOCKS_PER_SEC,
          std::chrono::duration<double>(std::chrono::steady_clock::now() - wall).count()};
}

Seconds quickest(unsigned n, const std::function<void()> &work)
{
  Seconds best{1e300, 1e300};
  for (unsigned i = 0; i < n; ++i)
  {
    const auto once = timed(work);
    best.processor = std::min(best.processor, once.processor);
    best.wall = std::min(best.wall, once.wall);
  }
  return best;
}

double peak_memory()
{
  rusage usage{};
  getrusage(RUSAGE_SELF, &usage);
  return usage.ru_maxrss / 1024.0;
}
} // namespace solemech::tests
