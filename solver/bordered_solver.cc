// SPDX-License-Identifier: Apache-2.0
#include "solver/bordered_solver.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
BorderedSolver::BorderedSolver(const SparseMatrix &pattern) : matrix_(pattern)
{
  sparse_.analyzePattern(matrix_);
}

bool BorderedSolver::factorise(const Tangent &tangent)
{
  std::copy_n(tangent.values.begin(), matrix_.nonZeros(), matrix_.valuePtr());
  sparse_.factorize(matrix_);
  if (sparse_.info() != Eigen::Success)
    return false;
  const auto pivots = sparse_.vectorD();
  if (!pivots.allFinite() || (pivots.array() == 0).any())
    return false;

  n_bodies_ = tangent.bodies.rows();
  const int n_gas = tangent.rank_one.size(), n = matrix_.rows(), m = n_bodies_ + n_gas;
  border_.setZero(n, m);
  border_.leftCols(n_bodies_) = tangent.coupling;
  Eigen::MatrixXd corner = Eigen::MatrixXd::Zero(m, m);
  corner.topLeftCorner(n_bodies_, n_bodies_) = tangent.bodies;
  // K + c g g^T: unknown y = sqrt(c) g^T u, rows K u + sqrt(c) g y = f and sqrt(c) g^T u - y = 0.
  for (int i = 0; i < n_gas; ++i)
  {
    border_.col(n_bodies_ + i) = std::sqrt(tangent.rank_one[i].c) * tangent.rank_one[i].g;
    corner(n_bodies_ + i, n_bodies_ + i) = -1;
  }
  int negative = (pivots.array() < 0).count();
  if (m > 0)
  {
    solved_border_ = sparse_.solve(border_);
    const Eigen::MatrixXd schur = corner - border_.transpose() * solved_border_;
    schur_.compute(schur);
    const Eigen::MatrixXd symmetric = 0.5 * (schur + schur.transpose());
    negative += (Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(symmetric, Eigen::EigenvaluesOnly).eigenvalues().array() <
                 0).count();
    if (!schur_.isInvertible())
      return false;
  }
  indefinite_ = negative > n_gas;
  return true;
}

Vector BorderedSolver::solve(const Vector &right_side) const
{
  const int n = matrix_.rows(), m = border_.cols();
  Vector    u = sparse_.solve(right_side.head(n));
  Vector    out(n + n_bodies_);
  if (m > 0)
  {
    Vector lower = Vector::Zero(m);
    lower.head(n_bodies_) = right_side.tail(n_bodies_);
    const Vector y = schur_.solve(lower - border_.transpose() * u);
    u -= solved_border_ * y;
    out.tail(n_bodies_) = y.head(n_bodies_);
  }
  out.head(n) = u;
  return out;
}
} // namespace solemech::solver
