// SPDX-License-Identifier: Apache-2.0
// Elements of one part, laid out for the kernels: nine-node quadrilaterals with 3 x 3 integration points,
// four elements side by side (one a lane). Everything is referred to the unloaded shape (total Lagrangian),
// so gradients and weights are stored once. No mesh library is known here.
#pragma once

#include "solver/kernels/pack.h"

#include <array>
#include <cstddef>
#include <string>
#include <vector>

namespace solemech::solver
{
inline constexpr unsigned n_element_nodes = 9;
inline constexpr unsigned n_element_dofs = 18; ///< node by node: r, z
inline constexpr unsigned n_points = 9;        ///< integration points
inline constexpr unsigned n_node_pairs = 45;   ///< of the lower triangle, a >= b
inline constexpr unsigned n_element_entries = 4 * n_node_pairs;

/// One value a lane.
using Lanes = std::array<double, n_lanes>;

/// Four elements. Lanes beyond the last element repeat it with weight zero.
struct ElementBatch
{
  unsigned                                                                n_elements = 0;
  std::array<std::array<std::array<Lanes, 2>, n_element_nodes>, n_points> gradient{}; ///< dN/dR, dN/dZ [1/m]
  std::array<Lanes, n_points> inverse_radius{}; ///< 1/R [1/m]; 0 in plane strain
  std::array<Lanes, n_points> weight{};         ///< integration weight, 2 pi R included [m3] (plane: [m2])
  std::array<std::array<int, n_element_dofs>, n_lanes> dof{}; ///< unknown, or -1 where held
  std::array<Lanes, n_element_dofs> offset{}; ///< displacement the part has before the unknowns count [m]
  std::array<std::array<int, n_element_entries>, n_lanes> slot{}; ///< place in the matrix values
  std::array<Lanes, 9> projection{};       ///< inverse mass matrix of the linear pressure (mixed element)
  std::array<std::size_t, n_lanes> cell{}; ///< cell number in the mesh

  // Histories, [point][branch][component]: logarithmic elastic strain at the last accepted step in the
  // spatial frame, and C_v^-1 - I in the reference after the first half decay of the running step.
  std::vector<std::array<Lanes, 4>> elastic;
  std::vector<std::array<Lanes, 4>> base;
  std::array<Lanes, n_points>       dissipated{}; ///< so far, per reference volume [J/m3]
};

/// Energies of a part [J]; stored ones are states, dissipated ones increments of the accepted step.
struct PartEnergies
{
  double network = 0, cell_gas = 0, densification = 0, relaxing = 0, slipping = 0;
  double lost_relaxing = 0, lost_slipping = 0, lost_recovery = 0;
};

/// The elements of one part.
struct ElementGroup
{
  std::string               part;
  std::vector<ElementBatch> batches;
  std::vector<double>       remaining; ///< half-step decay factor of each branch in the running step [-]
};

/// Values at the integration points of one element, for pictures.
struct PointFields
{
  double vertical_stress, radial_stress, hoop_stress, shear_stress; ///< Cauchy [Pa]
  double vertical_stretch, volume_ratio;                            ///< [-]
  double energy_density, dissipated_density;                        ///< per reference volume [J/m3]
};
using ElementFields = std::array<PointFields, n_points>;
} // namespace solemech::solver
