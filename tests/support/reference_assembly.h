// SPDX-License-Identifier: Apache-2.0
// Force and stiffness of quadratic elements a second time, slowly: first Piola-Kirchhoff stress and its full
// fourth-order derivative from a singular value decomposition of F, in extended precision, summed with the
// shape functions that deal.II evaluates. Nothing of the product is used; laws are written from their
// energies. Source: R.W. Ogden, Non-Linear Elastic Deformations, sec. 6.1 (derivative in principal axes; from
// memory).
#pragma once

#include <Eigen/Dense>

#include <array>
#include <functional>
#include <vector>

namespace solemech::tests
{
using Real = long double;
using Real3 = Eigen::Matrix<Real, 3, 1>;
using Real33 = Eigen::Matrix<Real, 3, 3>;

/// Energy per reference volume in principal logarithmic strains with both derivatives [J/m3, Pa, Pa].
struct PrincipalEnergy
{
  Real   energy = 0;
  Real3  slope = Real3::Zero();
  Real33 curvature = Real33::Zero();
};
using ReferenceLaw = std::function<PrincipalEnergy(const Real3 &)>;

/// Laws as their sources print them; parameters as in the product's headers.
ReferenceLaw reference_ogden(Real mu, Real alpha, Real beta);
ReferenceLaw reference_cell_gas(Real relative_density, Real share, Real atmosphere, Real n);
ReferenceLaw reference_densification(Real relative_density, Real modulus, Real m);
ReferenceLaw reference_hencky(Real mu, Real kappa);
ReferenceLaw reference_isochoric_rubber(Real c10, Real c20, Real c30, Real c01);
/// `share` times Huber's function of r = sqrt(2 W/mu), W quadratic in strain: elastic to the cap, straight
/// beyond.
ReferenceLaw reference_huber(Real share, Real mu, Real kappa, Real cap);
ReferenceLaw sum_of(std::vector<ReferenceLaw> laws);

/// Energy, P = dW/dF and dP/dF, the latter as 9 x 9 over the entries of F column by column.
struct PiolaResponse
{
  Real                      energy;
  Real33                    stress;
  Eigen::Matrix<Real, 9, 9> tangent;
};
PiolaResponse piola(const ReferenceLaw &law, const Real33 &F);

/// exp and log of a symmetric tensor.
Real33 spectral_map(const Real33 &a, const std::function<Real(Real)> &f);

/// A branch: its law in one push, and C_v^-1 at each integration point (3 x 3 (x 3), the first direction
/// fastest).
struct ReferenceBranch
{
  ReferenceLaw        push;
  std::vector<Real33> inverse_viscous;
};

/// What an element is made of. `bulk_modulus` > 0: mixed, U(J) = kappa/4 (J^2 - 1 - 2 ln J).
struct ReferenceMaterial
{
  ReferenceLaw                 law;
  std::vector<ReferenceBranch> branches;
  Real                         bulk_modulus = 0;
};

using ReferenceMatrix = Eigen::Matrix<Real, Eigen::Dynamic, Eigen::Dynamic>;
using ReferenceVector = Eigen::Matrix<Real, Eigen::Dynamic, 1>;

struct ReferenceElement
{
  ReferenceVector     force;
  ReferenceMatrix     stiffness;
  std::vector<Real33> deformation; ///< F at the integration points, axes r, z, hoop or x, y, z
};

/// One element of 3^dim nodes, the first direction fastest [m]; displacement node by node [m]. Plane sections
/// count twice, as in the product; a solid is never axisymmetric.
template <int dim>
ReferenceElement reference_element(const std::vector<std::array<double, dim>> &nodes, bool axisymmetric,
                                   const ReferenceMaterial   &material,
                                   const std::vector<double> &displacement);
} // namespace solemech::tests
