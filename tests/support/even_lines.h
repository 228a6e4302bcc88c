// SPDX-License-Identifier: Apache-2.0
// Lines of a tensor grid for tests.
#pragma once

#include <vector>

namespace solemech::tests
{
using Lines = std::vector<double>;

inline Lines even_lines(double first, double last, unsigned n)
{
  Lines lines;
  for (unsigned i = 0; i <= n; ++i)
    lines.push_back(first + (last - first) * i / n);
  return lines;
}
} // namespace solemech::tests
