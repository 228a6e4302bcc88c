// SPDX-License-Identifier: Apache-2.0
// Stress and tangent at an integration point.
#pragma once

#include <array>

namespace solemech::solver
{
/// Kirchhoff stress tau and spatial tangent (of the Lie derivative of tau, engineering shear), both [Pa];
/// `n` components of a symmetric tensor, in the order of the kinematics.
template <typename Number, unsigned n>
struct PointResponse
{
  std::array<Number, n>              stress{};
  std::array<Number, n *(n + 1) / 2> tangent{};

  PointResponse times(const Number &weight) const
  {
    PointResponse out;
    for (unsigned i = 0; i < n; ++i)
      out.stress[i] = weight * stress[i];
    for (unsigned i = 0; i < out.tangent.size(); ++i)
      out.tangent[i] = weight * tangent[i];
    return out;
  }
};
} // namespace solemech::solver
