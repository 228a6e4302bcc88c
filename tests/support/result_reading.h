// SPDX-License-Identifier: Apache-2.0
// What tests ask of a result: readings, curves, energies, in one call each. A name that is not there fails
// the test with that name.
#pragma once

#include "solver/results/result.h"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace solemech::tests
{
/// Value of a reading, SI.
inline double reading(const solver::Result &result, const std::string &name)
{
  if (const auto *found = result.find(name))
    return found->value;
  throw std::runtime_error("the result has no reading '" + name + "'");
}

/// Values of a curve, one a recorded time.
inline const std::vector<double> &curve(const solver::Result &result, const std::string &name)
{
  for (const auto &one : result.curves)
    if (one.name == name)
      return one.values;
  throw std::runtime_error("the result has no curve '" + name + "'");
}

/// y at the place where x first reaches `at`, straight between recorded points.
inline double interpolated(const std::vector<double> &x, const std::vector<double> &y, double at)
{
  for (std::size_t i = 1; i < x.size(); ++i)
    if (x[i] >= at)
      return y[i - 1] + (y[i] - y[i - 1]) * (at - x[i - 1]) / (x[i] - x[i - 1]);
  throw std::runtime_error("the curve ends before " + std::to_string(at));
}

/// Sum of all rows of a kind of energy at a time [s]; `part` restricts it to one part [J].
inline double energy_at(const solver::Result &result, solver::EnergyKind type, double time,
                        const std::string &part = "")
{
  double sum = 0;
  for (const auto &row : result.ledger)
    if (row.type == type && (part.empty() || row.part == part))
      sum += interpolated(result.time, row.values, time);
  return sum;
}
} // namespace solemech::tests
