// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/bordered_solver.h"

#include <Eigen/Dense>

#include <cmath>

namespace solemech::solver
{
BorderedSolver::BorderedSolver(const SparseMatrix &pattern) : sparse_(pattern), n_unknowns_(pattern.rows()) {}

bool BorderedSolver::factorise(const Tangent &tangent)
{
  if (!sparse_.factorise(tangent.values.data()))
    return false;
  n_bodies_ = tangent.bodies.rows();
  const int n_gas = tangent.rank_one.size(), m = n_bodies_ + n_gas;
  int       negative = sparse_.n_negative();
  half_border_.resize(sparse_.inverse_pivots().size(), m);
  if (m > 0)
  {
    Eigen::MatrixXd corner = Eigen::MatrixXd::Zero(m, m);
    corner.topLeftCorner(n_bodies_, n_bodies_) = tangent.bodies;
    for (int i = 0; i < n_bodies_; ++i)
      half_border_.col(i) = sparse_.forward(tangent.coupling.col(i));
    // K + c g g^T: unknown y = sqrt(c) g^T u, rows K u + sqrt(c) g y = f and sqrt(c) g^T u - y = 0.
    for (int i = 0; i < n_gas; ++i)
    {
      half_border_.col(n_bodies_ + i) =
        std::sqrt(tangent.rank_one[i].c) * sparse_.forward(tangent.rank_one[i].g);
      corner(n_bodies_ + i, n_bodies_ + i) = -1;
    }
    const Eigen::MatrixXd schur =
      corner - half_border_.transpose() * sparse_.inverse_pivots().asDiagonal() * half_border_;
    // A falling weight in a short step and the gas are many powers of ten apart: scaled to a diagonal of
    // ones, so that only a true loss of rank counts as one.
    border_scale_ =
      schur.diagonal().cwiseAbs().unaryExpr([](double d) { return d > 0 ? 1 / std::sqrt(d) : 1.0; });
    const Eigen::MatrixXd scaled = border_scale_.asDiagonal() * schur * border_scale_.asDiagonal();
    schur_.compute(scaled);
    const Eigen::MatrixXd symmetric = 0.5 * (scaled + scaled.transpose());
    negative += (Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(symmetric, Eigen::EigenvaluesOnly)
                   .eigenvalues()
                   .array() < 0)
                  .count();
    if (!schur_.isInvertible())
      return false;
  }
  indefinite_ = negative > n_gas;
  return true;
}

Vector BorderedSolver::solve(const Vector &right_side) const
{
  const int m = half_border_.cols();
  Vector    half = sparse_.forward(right_side.head(n_unknowns_));
  Vector    out(n_unknowns_ + n_bodies_);
  if (m > 0)
  {
    Vector lower = Vector::Zero(m);
    lower.head(n_bodies_) = right_side.tail(n_bodies_);
    lower -= half_border_.transpose() * sparse_.inverse_pivots().cwiseProduct(half);
    const Vector y = border_scale_.cwiseProduct(schur_.solve(border_scale_.cwiseProduct(lower)));
    half -= half_border_ * y;
    out.tail(n_bodies_) = y.head(n_bodies_);
  }
  out.head(n_unknowns_) = sparse_.backward(std::move(half));
  return out;
}
} // namespace solemech::solver
