// SPDX-License-Identifier: Apache-2.0
// What a law in axes of the material answers: quadratic in the logarithmic strain ln U of the material frame,
// so linear elasticity at small strain, exact under large rotation. Components xx, yy, zz, xy, yz, zx; shear
// strains are engineering ones.
#pragma once

#include <array>

namespace solemech::materials
{
/// Symmetric matrix of moduli by components, row by row of its lower triangle [Pa].
using AxesModuli = std::array<double, 21>;

constexpr unsigned entry_of(unsigned i, unsigned j)
{
  return i > j ? i * (i + 1) / 2 + j : j * (j + 1) / 2 + i;
}

/// Stress that does work on the logarithmic strain: C e [Pa].
template <typename Number>
std::array<Number, 6> stress_of(const AxesModuli &moduli, const std::array<Number, 6> &strain)
{
  std::array<Number, 6> stress;
  for (unsigned i = 0; i < 6; ++i)
  {
    stress[i] = moduli[entry_of(i, 0)] * strain[0];
    for (unsigned j = 1; j < 6; ++j)
      stress[i] = stress[i] + moduli[entry_of(i, j)] * strain[j];
  }
  return stress;
}

/// Energy e C e/2 [J/m3].
template <typename Number>
Number energy_of(const AxesModuli &moduli, const std::array<Number, 6> &strain)
{
  const auto stress = stress_of(moduli, strain);
  Number     twice = stress[0] * strain[0];
  for (unsigned i = 1; i < 6; ++i)
    twice = twice + stress[i] * strain[i];
  return 0.5 * twice;
}
} // namespace solemech::materials
