// SPDX-License-Identifier: Apache-2.0
// The kinds of parts as the element loops see them: response in principal strains or in axes of the material,
// energies by kind, branches.
#pragma once

#include "materials/foam.h"
#include "materials/isotropic_plate.h"
#include "materials/laminate.h"
#include "materials/rubber.h"

#include <array>

namespace solemech::solver
{
template <typename Material>
struct PartLaw;

template <>
struct PartLaw<materials::Foam>
{
  static constexpr bool mixed = false, in_axes = false;
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

template <>
struct PartLaw<materials::IsotropicPlate>
{
  static constexpr bool     mixed = false, in_axes = false;
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

template <>
struct PartLaw<materials::Rubber>
{
  static constexpr bool mixed = true, in_axes = false;
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

/// In solids alone: in a section nothing says how fibres lie.
template <>
struct PartLaw<materials::Laminate>
{
  static constexpr bool mixed = false, in_axes = true;
  materials::Laminate   laminate;

  const std::vector<materials::Branch> &branches() const { return laminate.branches; }
  double                                smallest_volume_ratio() const { return 0.1; }

  /// At a point of a hexahedron, whose third direction is that through the thickness.
  const materials::AxesModuli &moduli(unsigned point) const { return laminate.at(point / 9); }
};
} // namespace solemech::solver
