// SPDX-License-Identifier: Apache-2.0
// Sparse factorisation with a small dense border: rigid bodies are unknowns of their own, and the rank-one
// terms of sealed chambers become one bordered unknown each. Unsymmetric terms (friction under the pressure
// of the same iteration) may stand anywhere. The signs of the pivots tell whether a symmetric tangent is
// positive definite.
#pragma once

#include "solver/linear/linear_solver.h"
#include "solver/linear/sparse_ldu.h"

#include <Eigen/Dense>

namespace solemech::solver
{
class BorderedSolver : public LinearSolver
{
public:
  explicit BorderedSolver(const SparseMatrix &pattern);

  /// Factorises; false when a pivot vanished.
  bool factorise(const Tangent &tangent) override;

  /// Solves for displacements and rigid bodies.
  Vector solve(const Vector &right_side) const override;

  /// True when the last factorised tangent was symmetric and had a negative direction.
  bool indefinite() const override { return indefinite_; }

private:
  SparseLdu                         sparse_;
  Eigen::MatrixXd                   columns_, rows_; ///< L^-1 B and U^-T C^T of [A B; C D]
  Eigen::FullPivLU<Eigen::MatrixXd> schur_;
  Vector                            border_scale_; ///< of the rows and columns of schur_
  int                               n_unknowns_, n_bodies_ = 0;
  bool                              symmetric_ = true, indefinite_ = false;

  /// Factors of what the border leaves of its corner; the number of negative directions in it.
  int                    factorise_corner(const Eigen::MatrixXd &corner);
  const Eigen::MatrixXd &rows() const { return symmetric_ ? columns_ : rows_; }
};
} // namespace solemech::solver
