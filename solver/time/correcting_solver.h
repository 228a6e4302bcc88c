// SPDX-License-Identifier: Apache-2.0
// A solver for large meshes, whose factorisation costs as much as some fifty solves with it: the factors of
// an earlier tangent of the same run serve the later ones as preconditioner of conjugate gradients (Golub &
// Van Loan, Matrix Computations, sec. 11.5), and a tangent is factorised only where too many corrections
// would be wanted, or where it is not known to be symmetric and positive definite.
#pragma once

#include "solver/linear/linear_solver.h"

namespace solemech::solver
{
/// @param pattern  outlived by it
class CorrectingSolver : public LinearSolver
{
public:
  explicit CorrectingSolver(const SparseMatrix &pattern);

  /// The tangent has to stay until the last question about it.
  bool   factorise(const Tangent &tangent) override;
  Vector solve(const Vector &right_side) const override;
  bool   indefinite() const override;

  unsigned n_factorisations() const { return n_factorisations_; }

private:
  const SparseMatrix           &pattern_;
  std::unique_ptr<LinearSolver> direct_;
  const Tangent                *tangent_ = nullptr;   ///< the last one; others may be gone
  long                          n_bodies_ = -1;       ///< freedoms of its bodies
  mutable bool                  has_factors_ = false; ///< of a positive definite tangent of as many
  mutable bool                  is_fresh_ = false;    ///< of this very tangent
  mutable unsigned              n_factorisations_ = 0;

  bool refresh() const;
  /// @return whether x solves well enough
  bool correct(const Vector &right_side, Vector &x) const;
};

/// For a run: with corrections where a factorisation is dear, else direct.
std::unique_ptr<LinearSolver> make_run_solver(const SparseMatrix &pattern);
} // namespace solemech::solver
