// SPDX-License-Identifier: Apache-2.0
// Sparse symmetric factorisation with a small dense border: rigid bodies are unknowns of their own, and the
// rank-one terms of sealed chambers become one bordered unknown each. The signs of the pivots tell whether
// the tangent is positive definite.
#pragma once

#include "solver/linear/linear_solver.h"
#include "solver/linear/sparse_ldlt.h"

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

  /// True when the last factorised tangent had a negative direction.
  bool indefinite() const override { return indefinite_; }

private:
  SparseLdlt                        sparse_;
  Eigen::MatrixXd                   half_border_; ///< L^-1 B
  Eigen::FullPivLU<Eigen::MatrixXd> schur_;
  Vector                            border_scale_; ///< of the rows and columns of schur_
  int                               n_unknowns_, n_bodies_ = 0;
  bool                              indefinite_ = false;
};
} // namespace solemech::solver
