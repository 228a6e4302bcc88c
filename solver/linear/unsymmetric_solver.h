// SPDX-License-Identifier: Apache-2.0
// Sparse factorisation of an unsymmetric tangent (UMFPACK, Davis, ACM TOMS 30, 2004): Coulomb friction with
// the pressure of the same iteration. Displacements and rigid bodies stand in one matrix; chambers do not
// occur beside friction.
#pragma once

#include "solver/linear/linear_solver.h"

#include <Eigen/UmfPackSupport>

namespace solemech::solver
{
class UnsymmetricSolver : public LinearSolver
{
public:
  explicit UnsymmetricSolver(const SparseMatrix &pattern);

  bool   factorise(const Tangent &tangent) override;
  Vector solve(const Vector &right_side) const override;
  bool   symmetric() const override { return false; }

private:
  SparseMatrix                   pattern_; ///< lower triangle of the displacements
  SparseMatrix                   matrix_;
  std::vector<int>               outer_, inner_; ///< pattern of the last symbolic analysis
  Eigen::UmfPackLU<SparseMatrix> lu_;
};
} // namespace solemech::solver
