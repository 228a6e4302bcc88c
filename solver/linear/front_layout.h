// SPDX-License-Identifier: Apache-2.0
// Plan of a multifrontal factorisation, made once for a pattern: an order of elimination that fills little
// (minimum degree: Amestoy, Davis & Duff, SIAM J. Matrix Anal. 17, 1996), the elimination tree (Liu, SIAM J.
// Matrix Anal. 11, 1990), columns of like pattern gathered into fronts, and fronts joined while a model of
// their cost gains by it.
#pragma once

#include "solver/kernels/front_kernel.h"

#include <Eigen/SparseCore>

#include <cstddef>
#include <vector>

namespace solemech::solver
{
/// Dense part of the factorisation. Places count padded unknowns in the order of elimination.
struct Front
{
  FrontSize        size;         ///< padded to multiples of four
  int              n_pivots = 0; ///< real ones
  int              first = 0;    ///< place of the first pivot
  int              parent = -1;
  std::vector<int> rows;       ///< places of the rows below the pivots, ascending
  std::vector<int> in_parent;  ///< where these rows stand in the front of the parent
  std::size_t      panel = 0;  ///< where its panel starts among the factors
  std::size_t      update = 0; ///< where its update starts in the work space
};

struct FrontLayout
{
  std::vector<Front>            fronts;   ///< children before parents
  std::vector<std::vector<int>> children; ///< of each front
  std::vector<int>              place;    ///< of each unknown
  std::vector<int>              front_of; ///< of each place
  int                           n_places = 0;
  std::size_t                   n_factors = 0, n_updates = 0, n_work = 0; ///< lengths of the arrays
  std::vector<std::size_t>      entry;  ///< of each value of the pattern: where it goes among the factors
  std::vector<std::size_t>      padded; ///< places among the factors that hold the 1 of padded pivots
  double                        n_operations = 0; ///< multiplications with additions of a factorisation

  /// Where an entry goes among the factors, whichever of the two unknowns is its row.
  /// @throws std::invalid_argument when no front holds both
  std::size_t entry_of(int unknown, int other) const;
};

/// @param pattern  lower triangle, compressed, column by column
FrontLayout make_front_layout(const Eigen::SparseMatrix<double> &pattern);
} // namespace solemech::solver
