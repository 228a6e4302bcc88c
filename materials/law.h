// SPDX-License-Identifier: Apache-2.0
// The contract of an isotropic material law written in principal logarithmic strains
//   eps_a = ln(lambda_a).
// A law is a small value type of parameters; it is evaluated for a double, for a SIMD pack or for a
// differentiating number, and never knows whether it serves an axisymmetric, plane or 3D mesh.
#pragma once

#include <array>
#include <cmath>
#include <concepts>

namespace solemech::materials
{
/// Three principal logarithmic strains eps_a = ln(lambda_a) [-].
template <typename Number>
using LogStrains = std::array<Number, 3>;

/// Answer of a law at one point. Energies are per reference volume.
template <typename Number>
struct SpectralResponse
{
  Number                energy{}; ///< stored energy density W [J/m3]
  std::array<Number, 3> stress{}; ///< principal Kirchhoff stresses tau_a = dW/d eps_a [Pa]
  std::array<Number, 6> moduli{}; ///< d tau_a/d eps_b, symmetric: 11, 22, 33, 12, 13, 23 [Pa]
};

/// Sum of two responses that share their principal frame.
template <typename Number>
SpectralResponse<Number> operator+(SpectralResponse<Number> a, const SpectralResponse<Number> &b)
{
  a.energy = a.energy + b.energy;
  for (std::size_t i = 0; i < 3; ++i)
    a.stress[i] = a.stress[i] + b.stress[i];
  for (std::size_t i = 0; i < 6; ++i)
    a.moduli[i] = a.moduli[i] + b.moduli[i];
  return a;
}

/// What a law must offer: its response to principal logarithmic strains, pure and without state.
template <typename Law, typename Number>
concept IsotropicLaw = requires(const Law law, const LogStrains<Number> strains)
{
  {
    law.response(strains)
    } -> std::same_as<SpectralResponse<Number>>;
};

// Scalar counterparts of the lane-wise operations a SIMD pack offers, so that one law text serves both.
inline double select(bool condition, double if_true, double if_false)
{
  return condition ? if_true : if_false;
}
inline bool any(bool condition)
{
  return condition;
}
} // namespace solemech::materials
