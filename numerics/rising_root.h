// SPDX-License-Identifier: Apache-2.0
// Where a rising function is zero: algorithm 748 (G.E. Alefeld, F.A. Potra & Y. Shi, ACM TOMS 21, 1995) by
// Boost.Math.
#pragma once

#include <boost/math/tools/toms748_solve.hpp>

#include <cstdint>

namespace solemech::numerics
{
/// The zero of a function that rises from `low` to `high`; the end that is nearer to it when it lies outside.
template <typename Function>
double rising_root(const Function &f, double low, double high)
{
  const double at_low = f(low);
  if (at_low >= 0)
    return low;
  const double at_high = f(high);
  if (at_high <= 0)
    return high;
  std::uintmax_t n_most = 98;
  return boost::math::tools::toms748_solve(f, low, high, at_low, at_high,
                                           boost::math::tools::eps_tolerance<double>(), n_most)
    .second;
}
} // namespace solemech::numerics
