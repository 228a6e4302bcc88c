// SPDX-License-Identifier: Apache-2.0
// One term of the compressible foam network of Ogden and Hill in principal stretches l_a = exp(eps_a):
//   W = 2 mu/alpha^2 [ sum_a (l_a^alpha - 1) + (J^(-alpha beta) - 1)/beta ],   beta = nu/(1 - 2 nu).
// The parts linear in strain cancel between the two brackets, so W is evaluated from exp(x) - 1 - x; for
// beta = 0 (no lateral strain, an ordinary foam) the second bracket is its limit -alpha ln J.
// Source: R. Hill, Adv. Appl. Mech. 18 (1978); R.W. Ogden, Non-linear Elastic Deformations, ch. 7 (from
// memory).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct OgdenHill
{
  double shear_modulus = 0;       ///< mu [Pa], > 0
  double exponent = 2;            ///< alpha [-], not 0
  double volumetric_exponent = 0; ///< beta = nu/(1 - 2 nu) [-], >= 0

  /// Small-strain bulk modulus 2 mu (1/3 + beta) [Pa].
  double bulk_modulus() const { return 2 * shear_modulus * (1.0 / 3.0 + volumetric_exponent); }

  /// Energy [J/m3], Kirchhoff stresses and moduli [Pa] at principal logarithmic strains.
  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    using std::expm1;
    const double alpha = exponent, beta = volumetric_exponent, mu = shear_modulus;

    const Number volume = -alpha * beta * trace(strains);
    const Number volume_growth = expm1(volume);
    const Number volume_modulus = 2 * mu * beta * (1.0 + volume_growth);

    SpectralResponse<Number> out;
    Number                   bracket(0.0);
    if (beta > 0)
      bracket = expm1_excess(volume, volume_growth) * (1 / beta);
    for (std::size_t a = 0; a < 3; ++a)
    {
      const Number x = alpha * strains[a];
      const Number growth = expm1(x);
      bracket = bracket + expm1_excess(x, growth);
      out.stress[a] = 2 * mu / alpha * (growth - volume_growth);
      out.moduli[a] = 2 * mu * (1.0 + growth) + volume_modulus;
    }
    out.moduli[3] = out.moduli[4] = out.moduli[5] = volume_modulus;
    out.energy = 2 * mu / (alpha * alpha) * bracket;
    return out;
  }
};

/// Throws InvalidParameter when a number is outside its range.
inline void check(const OgdenHill &term)
{
  require_positive("network shear modulus", term.shear_modulus);
  require(std::isfinite(term.exponent) && std::abs(term.exponent) >= 1e-3, "network exponent", term.exponent,
          "a finite number other than 0 (between -30 and 30 for foams)");
  require_not_negative("network volumetric exponent", term.volumetric_exponent);
}
} // namespace solemech::materials
