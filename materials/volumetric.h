// SPDX-License-Identifier: Apache-2.0
// Volume part of a nearly incompressible rubber: U(J) = kappa/4 (J^2 - 1 - 2 ln J).
// Source: Simo & Taylor's choice, see P. Wriggers, Nonlinear Finite Element Methods, sec. 3.3 (from memory).
#pragma once

#include "materials/errors.h"
#include "materials/principal.h"

namespace solemech::materials
{
struct Volumetric
{
  double bulk_modulus = 0; ///< kappa [Pa], > 0

  /// U [J/m3] at the volume ratio J [-].
  template <typename Number>
  Number energy(const Number &j) const
  {
    using std::log1p;
    const Number twice = 2.0 * log1p(j - 1.0);
    return 0.25 * bulk_modulus * expm1_excess(twice, Number((j - 1.0) * (j + 1.0)));
  }

  /// dU/dJ [Pa], positive in tension.
  template <typename Number>
  Number pressure(const Number &j) const
  {
    return 0.5 * bulk_modulus * (j - 1.0) * (j + 1.0) / j;
  }

  /// d2U/dJ2 [Pa].
  template <typename Number>
  Number modulus(const Number &j) const
  {
    return 0.5 * bulk_modulus * (1.0 + 1.0 / (j * j));
  }
};
} // namespace solemech::materials
