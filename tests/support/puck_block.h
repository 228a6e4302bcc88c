// SPDX-License-Identifier: Apache-2.0
// Half of a block 120 x 60 x 20 mm of two foams with a strip of plate in it, meshed for a puck of radius 20
// and edge radius 3 whose axis stands at (44, 0), so that it overhangs the end by 4 mm: rings of cells along
// its edge, coarse elsewhere. x along the block, y across, z up.
#pragma once

#include "solver/models/solid_model.h"
#include "tests/support/hex_mesh.h"

namespace solemech::tests
{
/// Quadrilaterals in plan, and the places of their corners [m].
struct Plan
{
  std::vector<std::array<double, 2>>   places;
  std::vector<std::array<unsigned, 4>> cells; ///< 2 x 2, the first direction fastest
  std::vector<bool>                    round; ///< of each cell: between two circles about the puck
};

/// How fine the mesh is.
struct PuckMeshSize
{
  unsigned            n_left = 3, n_right = 5;      ///< cells along the edge, left and right of its corner
  std::vector<double> rings = {17, 18.5, 20, 22.5}; ///< radii [mm]
  unsigned            n_inside = 2, n_outside = 2;  ///< layers between core and rings, rings and box
  unsigned            n_far = 3;                    ///< cells along the rest of the block
  Lines               z = {0, 9, 10, 15, 20};       ///< [mm]
};

Plan puck_plan(const PuckMeshSize &size);

/// Share of a cell of a plan where first < y < last [m].
double strip_share(const Plan &plan, std::size_t cell, double first, double last);

/// The puck has one freedom, along z, and touches at zero.
struct PuckBlock
{
  std::unique_ptr<solver::SolidModel> model;
  solver::SolidContact               *contact;
  solver::RigidBody                   puck;

  /// On the whole puck, of both halves [N], and how far off its axis the force acts, towards the middle [m].
  double force(const Vector &x) const { return 2 * contact->state(x).force[2]; }
  double moment(const Vector &x) const { return 2 * contact->state(x).moment[1]; }
  double lever(const Vector &x) const { return moment(x) / force(x); }
};

/// @param first, last  strip of plate first < |y| < last [m]
/// @param puck_mass    of the whole puck [kg]; with one the foams have masses and branches as well
PuckBlock puck_block(const PuckMeshSize &size, double first, double last, double puck_mass = 0,
                     double penalty = 1e16);
} // namespace solemech::tests
