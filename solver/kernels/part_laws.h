// SPDX-License-Identifier: Apache-2.0
// The three kinds of parts as the element loops see them: shared-frame response, energies by kind, branches;
// and the shape functions of the nine-node element at its 3 x 3 integration points.
#pragma once

#include "materials/foam.h"
#include "materials/isotropic_plate.h"
#include "materials/rubber.h"

#include <array>

namespace solemech::solver
{
/// Abscissae of the three-point Gauss rule on [0, 1].
inline constexpr std::array<double, 3> gauss_abscissae{0.1127016653792583, 0.5, 0.8872983346207417};

/// Quadratic Lagrange polynomials on [0, 1] with nodes 0, 1/2, 1.
constexpr double quadratic_shape(unsigned node, double s)
{
  return node == 0 ? (2 * s - 1) * (s - 1) : node == 1 ? 4 * s * (1 - s) : s * (2 * s - 1);
}

namespace detail
{
constexpr auto make_point_shapes()
{
  std::array<std::array<double, 9>, 9> table{};
  for (unsigned q = 0; q < 9; ++q)
    for (unsigned a = 0; a < 9; ++a)
      table[q][a] =
        quadratic_shape(a % 3, gauss_abscissae[q % 3]) * quadratic_shape(a / 3, gauss_abscissae[q / 3]);
  return table;
}
inline constexpr auto point_shapes = make_point_shapes();
} // namespace detail

/// Shape function of node `a` (3 x 3, r fastest) at integration point `q` (3 x 3, r fastest).
constexpr double point_shape(unsigned q, unsigned a)
{
  return detail::point_shapes[q][a];
}

/// Linear pressure fields 1, s - 1/2, t - 1/2 of the mixed element.
constexpr double pressure_shape(unsigned q, unsigned m)
{
  return m == 0 ? 1.0 : (m == 1 ? gauss_abscissae[q % 3] : gauss_abscissae[q / 3]) - 0.5;
}

struct FoamPart
{
  static constexpr bool mixed = false;
  materials::Foam       foam;

  const std::vector<materials::Branch> &branches() const { return foam.branches; }
  double                                smallest_volume_ratio() const { return foam.smallest_volume_ratio(); }

  template <typename Number>
  materials::SpectralResponse<Number> response(const materials::LogStrains<Number> &strains) const
  {
    return foam.response(strains);
  }

  /// Network, cell gas, densification [J/m3].
  template <typename Number>
  std::array<Number, 3> energies(const materials::LogStrains<Number> &strains) const
  {
    std::array<Number, 3> out{Number(0.0), Number(0.0), Number(0.0)};
    for (const auto &term : foam.network)
      out[0] = out[0] + term.response(strains).energy;
    if (foam.has_gas())
      out[1] = foam.gas.response(strains).energy;
    if (foam.has_densification())
      out[2] = foam.densification.response(strains).energy;
    return out;
  }
};

struct PlatePart
{
  static constexpr bool     mixed = false;
  materials::IsotropicPlate plate;

  const std::vector<materials::Branch> &branches() const { return plate.branches; }
  double                                smallest_volume_ratio() const { return 0.1; }

  template <typename Number>
  materials::SpectralResponse<Number> response(const materials::LogStrains<Number> &strains) const
  {
    return plate.response(strains);
  }

  template <typename Number>
  std::array<Number, 3> energies(const materials::LogStrains<Number> &strains) const
  {
    return {plate.elastic.energy(strains), Number(0.0), Number(0.0)};
  }
};

struct RubberPart
{
  static constexpr bool mixed = true;
  materials::Rubber     rubber;

  const std::vector<materials::Branch> &branches() const { return rubber.branches; }
  const materials::Volumetric          &volumetric() const { return rubber.volumetric; }
  double                                smallest_volume_ratio() const { return 0.1; }

  template <typename Number>
  materials::SpectralResponse<Number> response(const materials::LogStrains<Number> &strains) const
  {
    return rubber.isochoric.response(strains);
  }

  template <typename Number>
  std::array<Number, 3> energies(const materials::LogStrains<Number> &strains) const
  {
    return {rubber.isochoric.response(strains).energy, Number(0.0), Number(0.0)};
  }
};
} // namespace solemech::solver
