// SPDX-License-Identifier: Apache-2.0
// Moduli of plies and orthotropic plates in the plane. A plate is thin, so they are those of plane stress,
// and stretch through the thickness goes along with nothing: Q11 = E1/(1 - nu12 nu21),
// Q12 = nu12 E2/(1 - nu12 nu21), Q66 = G12, turned about the normal as a tensor. Source: R.M. Jones,
// Mechanics of Composite Materials, sec. 2.6 (from memory).
#pragma once

#include "materials/errors.h"
#include "materials/log_strain_law.h"
#include "materials/plies.h"

#include <cmath>

namespace solemech::materials
{
/// Throws InvalidParameter where the moduli are none of a stable material.
inline void check(const Ply &ply)
{
  require_positive("modulus along the fibres", ply.modulus_along);
  require_positive("modulus across the fibres", ply.modulus_across);
  require_positive("shear modulus in the plane", ply.shear_modulus);
  require_positive("thickness of a ply", ply.thickness);
  require(ply.poisson_ratio * ply.poisson_ratio < ply.modulus_along / ply.modulus_across,
          "Poisson ratio nu12", ply.poisson_ratio, "a number whose square is less than E1/E2");
}

/// A plate that was bent as a whole, as one ply of this thickness [m].
inline Ply as_ply(const FlexuralData &plate, double thickness)
{
  return {plate.modulus_along, plate.modulus_across, plate.shear_modulus, plate.poisson_ratio, thickness, 0};
}

/// In-plane moduli of plane stress: 11, 22, 66, 12, 16, 26 [Pa].
using PlaneModuli = std::array<double, 6>;

/// Of a ply, along the foot, across it and in shear.
inline PlaneModuli plane_moduli(const Ply &ply)
{
  const double nu = ply.poisson_ratio, share = 1 - nu * nu * ply.modulus_across / ply.modulus_along;
  const double q11 = ply.modulus_along / share, q22 = ply.modulus_across / share, q12 = nu * q22;
  const double c = std::cos(ply.angle), s = std::sin(ply.angle);
  // Strains in the axes of the fibres from those along x and y: 11, 22 and engineering 12.
  const double turn[3][3] = {
    {c * c, s * s, c * s}, {s * s, c * c, -c * s}, {-2 * c * s, 2 * c * s, c * c - s * s}};
  const double q[3][3] = {{q11, q12, 0}, {q12, q22, 0}, {0, 0, ply.shear_modulus}};
  const auto   entry = [&](unsigned i, unsigned j) {
    double sum = 0;
    for (unsigned k = 0; k < 3; ++k)
      for (unsigned l = 0; l < 3; ++l)
        sum += turn[k][i] * q[k][l] * turn[l][j];
    return sum;
  };
  return {entry(0, 0), entry(1, 1), entry(2, 2), entry(0, 1), entry(0, 2), entry(1, 2)};
}
} // namespace solemech::materials
