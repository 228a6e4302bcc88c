// SPDX-License-Identifier: Apache-2.0
// Small pieces shared by the laws in principal logarithmic strains: trace, deviator, the response of an
// energy of the volume alone, and exp(x) - 1 - x without cancellation. A Number is a double, or a type with
// arithmetic (doubles on either side), a constructor from double and, by argument-dependent lookup, exp,
// expm1, log, log1p, sqrt and select(mask, a, b).
#pragma once

#include "materials/law.h"

namespace solemech::materials
{
/// Volumetric logarithmic strain ln J [-].
template <typename Number>
Number trace(const LogStrains<Number> &strains)
{
  return strains[0] + strains[1] + strains[2];
}

/// Isochoric part of the logarithmic strains [-].
template <typename Number>
LogStrains<Number> deviator(const LogStrains<Number> &strains)
{
  const Number mean = trace(strains) * (1.0 / 3.0);
  return {strains[0] - mean, strains[1] - mean, strains[2] - mean};
}

/// exp(x) - 1 - x for a given expm1(x). Below |x| = 0.1 the difference would lose digits; nine terms of the
/// power series leave 5e-15 there.
template <typename Number>
Number expm1_excess(const Number &x, const Number &expm1_of_x)
{
  Number series(1.0);
  for (int k = 9; k >= 3; --k)
    series = 1.0 + series * x * (1.0 / k);
  return select(x * x < 0.01, 0.5 * x * x * series, expm1_of_x - x);
}

/// Response of an energy psi(J) to principal strains, from psi, t = J psi' and k = d t / d ln J.
template <typename Number>
SpectralResponse<Number> volume_response(const Number &energy, const Number &stress, const Number &modulus)
{
  return {energy, {stress, stress, stress}, {modulus, modulus, modulus, modulus, modulus, modulus}};
}
} // namespace solemech::materials
