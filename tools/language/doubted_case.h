// SPDX-License-Identifier: Apache-2.0
// A case with its doubted numbers moved: what each of them is in a case, and the independent directions in
// which correlated doubts move together (L. Cholesky's factor of their covariance; C. F. Gauss: the variance
// of a prediction is the sum over independent doubts).
#pragma once

#include "solver/case.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Standard deviations in half of a 90 % band of a normal distribution.
constexpr double doubts_in_half_band = 1.6448536269514722;

/// True for a number of the rig, which belongs to no stack.
constexpr bool is_of_rig(solver::DoubtedNumber number)
{
  using solver::DoubtedNumber;
  return number == DoubtedNumber::height || number == DoubtedNumber::mass ||
         number == DoubtedNumber::guide_loss;
}

/// The number of a layer, its air unit or the rig; nullptr: the case does not hold it, or it is of a
/// material.
/// @param of  as in solver::Doubt
double *doubted_member(solver::Case &setup, solver::DoubtedNumber number, const std::string &of);

/// Multiplies a number of the case. What the case does not hold is left alone.
/// @param of  material or layer, as in solver::Doubt
void scale_number(solver::Case &setup, solver::DoubtedNumber number, const std::string &of, double ratio);

/// Independent directions of the doubts: [direction][doubt] = change of the logarithm by half a band. Empty
/// when the correlations contradict each other.
std::vector<std::vector<double>> independent_doubts(const std::vector<solver::Doubt> &doubts);

/// The case moved along a direction, without doubts of its own.
/// @param sign  +1 or -1: to which end of the band
solver::Case moved(const solver::Case &setup, const std::vector<double> &direction, double sign);
} // namespace solemech::tools
