// SPDX-License-Identifier: Apache-2.0
// Plain data of plates that are stiffer one way than the other: the plies of a laminate, or what bending a
// whole plate along and across the foot has shown. Laws are built from these numbers.
#pragma once

namespace solemech::materials
{
/// A ply in its own axes: 1 along the fibres, 2 across them in the plane.
struct Ply
{
  double modulus_along = 0;  ///< E1 [Pa]
  double modulus_across = 0; ///< E2 [Pa]
  double shear_modulus = 0;  ///< G12 [Pa]
  double poisson_ratio = 0;  ///< nu12, strain across over strain along under a pull along [-]
  double thickness = 0;      ///< [m]
  double angle = 0;          ///< of the fibres against the foot's length, towards the lateral side [rad]
};

/// A plate as a whole, by bending it.
struct FlexuralData
{
  double modulus_along = 0;    ///< along the foot [Pa]
  double modulus_across = 0;   ///< [Pa]
  double shear_modulus = 0;    ///< in the plane [Pa]
  double poisson_ratio = 0.30; ///< as of a ply [-]
};
} // namespace solemech::materials
