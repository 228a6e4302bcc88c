// SPDX-License-Identifier: Apache-2.0
// Volume enclosed by the wetted boundary of a chamber, from current positions of quadratic edges:
//   axisymmetric V = pi * closed integral of r^2 dz,   plane strain V = closed integral of x dz (per depth),
// by the divergence theorem, travelling with the gas on the left. The axis contributes nothing and is left
// out. The integrand is a polynomial of degree 5 on a 3-node edge, so three Gauss points are exact: V, its
// gradient (the nodal load per unit pressure) and its Hessian (the pressure stiffness) belong to one discrete
// function.
#pragma once

#include <array>
#include <span>

namespace solemech::geometry
{
/// plane_strain: a section modelled by its right half and counted twice; whole_plane: plane strain as it
/// stands.
enum class Section { axisymmetric, plane_strain, whole_plane };

/// Current positions (r, z) of start, middle and end node of a quadratic edge [m].
using EdgeNodes = std::array<std::array<double, 2>, 3>;

/// Contribution of one edge. Degrees of freedom are ordered r0, z0, rm, zm, r1, z1.
struct EdgeVolume
{
  double                               volume = 0; ///< [m3], plane strain [m2]
  std::array<double, 6>                gradient{}; ///< dV/dx [m2], plane strain [m]
  std::array<std::array<double, 6>, 6> hessian{};  ///< d2V/dx2, symmetric [m], plane strain [-]
};

/// Volume contribution of an edge with both derivatives.
EdgeVolume edge_volume(const EdgeNodes &nodes, Section section);

/// Volume enclosed by edges [m3], plane strain [m2].
double enclosed_volume(std::span<const EdgeNodes> edges, Section section);
} // namespace solemech::geometry
