// SPDX-License-Identifier: Apache-2.0
// Elements of one part, laid out for the kernels: quadratic elements of a section or of a solid, four side by
// side (one a lane). Everything is referred to the unloaded shape (total Lagrangian), so gradients and
// weights are stored once. No mesh library is known here.
#pragma once

#include "solver/kernels/pack.h"
#include "solver/kernels/quadratic_element.h"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace solemech::solver
{
/// One value a lane.
using Lanes = std::array<double, n_lanes>;

/// Four elements. Lanes beyond the last element repeat it with weight zero.
template <int dim>
struct ElementBatch
{
  using Element = QuadraticElement<dim>;
  template <typename T>
  using AtPoints = std::array<T, Element::n_points>;
  template <typename T>
  using AtDofs = std::array<T, Element::n_dofs>;
  using History = std::array<Lanes, Element::n_components>;

  unsigned                                                       n_elements = 0;
  AtPoints<std::array<std::array<Lanes, dim>, Element::n_nodes>> gradient{}; ///< dN/dX [1/m]
  std::array<Lanes, dim == 2 ? Element::n_points : 0> inverse_radius{};      ///< 1/R [1/m]; 0 in plane strain
  AtPoints<Lanes>                  weight{}; ///< integration weight, 2 pi R included [m3] (plane: [m2])
  std::array<AtDofs<int>, n_lanes> dof{};    ///< unknown, or -1 where held
  AtDofs<Lanes>                    offset{}; ///< displacement the part has before the unknowns count [m]
  std::array<std::array<int, Element::n_entries>, n_lanes> slot{}; ///< place in the matrix values
  std::array<Lanes, Element::n_modes * Element::n_modes>
    projection{};                          ///< inverse mass matrix of the linear pressure (mixed element)
  std::array<std::size_t, n_lanes> cell{}; ///< cell number in the mesh

  // Histories, [point][branch][component]: logarithmic elastic strain at the last accepted step in the
  // spatial frame, and C_v^-1 - I in the reference after the first half decay of the running step.
  std::vector<History> elastic;
  std::vector<History> base;
  AtPoints<Lanes>      dissipated{}; ///< so far, per reference volume [J/m3]
};

/// Energies of a part [J]; stored ones are states, dissipated ones increments of the accepted step.
struct PartEnergies
{
  double network = 0, cell_gas = 0, densification = 0, relaxing = 0, slipping = 0;
  double lost_relaxing = 0, lost_slipping = 0, lost_recovery = 0;
};

/// The elements of one part.
template <int dim>
struct ElementGroupOf
{
  std::string                    part;
  std::vector<ElementBatch<dim>> batches;
  std::vector<double>            remaining; ///< half-step decay factor of each branch in the running step [-]
};

/// Values at an integration point, for pictures.
template <int dim>
struct PointFields;

template <>
struct PointFields<2>
{
  double vertical_stress, radial_stress, hoop_stress, shear_stress; ///< Cauchy [Pa]
  double vertical_stretch, volume_ratio;                            ///< [-]
  double energy_density, dissipated_density;                        ///< per reference volume [J/m3]
};

template <>
struct PointFields<3>
{
  std::array<double, 6> stress;                             ///< Cauchy: xx, yy, zz, xy, yz, zx [Pa]
  double                vertical_stretch;                   ///< along z [-]
  double                volume_ratio;                       ///< [-]
  double                energy_density, dissipated_density; ///< per reference volume [J/m3]
};

template <int dim>
using ElementFieldsOf = std::array<PointFields<dim>, QuadraticElement<dim>::n_points>;

// Of a section, which is what the stacks and lugs are made of.
using ElementGroup = ElementGroupOf<2>;
using ElementFields = ElementFieldsOf<2>;
} // namespace solemech::solver
