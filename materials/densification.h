// SPDX-License-Identifier: Apache-2.0
// Cell walls meeting each other: a pressure that starts with zero slope at x = (J - R)/(1 - R) = 1 and grows
// without bound as the foam nears the solid polymer (x -> 0); nothing for x >= 1.
//   p = kappa_d [x^-m - 1 - m (1 - x)],
//   W = kappa_d (1 - R) [(x^(1-m) - 1)/(m - 1) + x - 1 - m (1 - x)^2/2].
// The form is chosen for its smooth start and its exact integral (no outside source).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct Densification
{
  double relative_density = 0; ///< R [-], 0 <= R < 1
  double modulus = 0;          ///< kappa_d [Pa], >= 0
  double exponent = 3;         ///< m [-], > 1

  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    using std::expm1, std::log1p;
    const double solid = 1 - relative_density, m = exponent, k = modulus;

    const Number growth = expm1(trace(strains)); // J - 1
    const Number j = 1.0 + growth;
    const Number open = growth * (1 / solid);               // x - 1
    const Number u = select(open < 0.0, open, Number(0.0)); // every term below vanishes at u = 0
    const Number log_x = log1p(u);
    const Number drop = expm1(-m * log_x); // x^-m - 1

    const Number pressure = k * (drop + m * u);
    const Number slope = k * m / solid * ((1.0 + drop) / (1.0 + u) - 1.0); // -dp/dJ
    const Number energy = k * solid * (expm1((1 - m) * log_x) * (1 / (m - 1)) + u - 0.5 * m * u * u);
    return volume_response<Number>(energy, -1.0 * (j * pressure), j * (j * slope - pressure));
  }
};

/// Smallest volume ratio a foam state may have; at or below it an iterate is to be rejected [-].
inline double admissible_volume_ratio(double relative_density)
{
  return relative_density + 0.02 * (1 - relative_density);
}

/// Throws InvalidParameter when a number is outside its range.
inline void check(const Densification &law)
{
  require(law.relative_density >= 0 && law.relative_density < 0.9, "relative density", law.relative_density,
          "a share of the polymer density from 0 to below 0.9");
  require_not_negative("densification modulus", law.modulus);
  require(law.exponent > 1 && law.exponent <= 20, "densification exponent", law.exponent,
          "a number above 1, at most 20");
}
} // namespace solemech::materials
