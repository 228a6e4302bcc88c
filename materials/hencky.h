// SPDX-License-Identifier: Apache-2.0
// Elasticity quadratic in logarithmic strain: W = mu |dev eps|^2 + kappa/2 (tr eps)^2. Linear elasticity at
// small strain, exact under large rotation; also the elastic law inside every branch.
// Source: H. Hencky 1928; G.A. Holzapfel, Nonlinear Solid Mechanics, sec. 6.5 (from memory).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct Hencky
{
  double shear_modulus = 0; ///< mu [Pa], >= 0
  double bulk_modulus = 0;  ///< kappa [Pa], >= 0; 0: no resistance to a change of volume

  /// Energy [J/m3] alone.
  template <typename Number>
  Number energy(const LogStrains<Number> &strains) const
  {
    const LogStrains<Number> e = deviator(strains);
    const Number             tr = trace(strains);
    return shear_modulus * (e[0] * e[0] + e[1] * e[1] + e[2] * e[2]) + 0.5 * bulk_modulus * tr * tr;
  }

  template <typename Number>
  SpectralResponse<Number> response(const LogStrains<Number> &strains) const
  {
    const LogStrains<Number> e = deviator(strains);
    const Number             pressure = bulk_modulus * trace(strains);
    const Number             diagonal(bulk_modulus + 4.0 / 3.0 * shear_modulus);
    const Number             coupling(bulk_modulus - 2.0 / 3.0 * shear_modulus);

    SpectralResponse<Number> out;
    out.energy = energy(strains);
    for (std::size_t a = 0; a < 3; ++a)
      out.stress[a] = 2 * shear_modulus * e[a] + pressure;
    out.moduli = {diagonal, diagonal, diagonal, coupling, coupling, coupling};
    return out;
  }
};

/// The law with the small-strain Young's modulus E [Pa] and Poisson ratio nu [-]. Throws InvalidParameter.
inline Hencky hencky_from_young(double youngs_modulus, double poisson_ratio)
{
  require_positive("Young's modulus", youngs_modulus);
  require(poisson_ratio > -1 && poisson_ratio <= 0.45, "Poisson ratio", poisson_ratio,
          "a number above -1, at most 0.45");
  return {youngs_modulus / (2 * (1 + poisson_ratio)), youngs_modulus / (3 * (1 - 2 * poisson_ratio))};
}
} // namespace solemech::materials
