// SPDX-License-Identifier: Apache-2.0
// Coulomb friction of a pair of surfaces: tangential traction up to coefficient x pressure.
#pragma once

#include "materials/errors.h"

namespace solemech::materials
{
struct CoulombFriction
{
  double coefficient = 0; ///< [-], 0: frictionless

  /// Largest tangential traction [Pa] under a contact pressure [Pa]; none when the surfaces are apart.
  double limit(double pressure) const { return pressure > 0 ? coefficient * pressure : 0.0; }
};

/// Throws InvalidParameter when the coefficient is outside 0..3.
inline void check(const CoulombFriction &friction)
{
  require(friction.coefficient >= 0 && friction.coefficient <= 3, "friction coefficient",
          friction.coefficient, "a number from 0 to 3");
}
} // namespace solemech::materials
