// SPDX-License-Identifier: Apache-2.0
// Curves and times of results as pictures take them.
#pragma once

#include "solver/results/result.h"

#include <algorithm>
#include <initializer_list>
#include <vector>

namespace solemech::tools
{
/// Values of the first curve that has one of these names, nullptr when the result has none.
inline const std::vector<double> *curve_named(const solver::Result               &result,
                                              std::initializer_list<const char *> names)
{
  for (const char *name : names)
    for (const auto &candidate : result.curves)
      if (candidate.name == name)
        return &candidate.values;
  return nullptr;
}

/// The unit in which people read times up to `longest` [s], as the page does.
struct TimeUnit
{
  const char *name;
  double      seconds;
};
inline TimeUnit time_unit(double longest)
{
  for (const TimeUnit unit : {TimeUnit{"h", 3600}, TimeUnit{"min", 60}, TimeUnit{"s", 1}})
    if (longest >= 2 * unit.seconds)
      return unit;
  return {"ms", 1e-3};
}

/// All values in another unit.
inline std::vector<double> scaled(std::vector<double> values, double factor)
{
  for (double &value : values)
    value *= factor;
  return values;
}

/// The first n values, or as many as there are, in another unit.
inline std::vector<double> scaled(const std::vector<double> &values, std::size_t n, double factor)
{
  return scaled({values.begin(), values.begin() + static_cast<long>(std::min(n, values.size()))}, factor);
}
} // namespace solemech::tools
