// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/bordered_solver.h"

#include <Eigen/Dense>

#include <cmath>

namespace solemech::solver
{
namespace
{
/// The border of rigid bodies: columns right of the displacements, rows below them turned over, and corner.
struct BodyBorder
{
  Eigen::MatrixXd columns, rows, corner;
};

/// Takes the entries of the displacements alone out of the unsymmetric ones; the others go to the border.
SparseLdu::Entries split(const Tangent &tangent, int n, BodyBorder &border)
{
  SparseLdu::Entries inside;
  for (const auto &entry : tangent.unsymmetric)
  {
    const int row = entry.row(), column = entry.col();
    if (row < n && column < n)
      inside.push_back(entry);
    else if (row < n)
      border.columns(row, column - n) += entry.value();
    else if (column < n)
      border.rows(column, row - n) += entry.value();
    else
      border.corner(row - n, column - n) += entry.value();
  }
  return inside;
}
} // namespace

std::unique_ptr<LinearSolver> make_linear_solver(const SparseMatrix &pattern)
{
  return std::make_unique<BorderedSolver>(pattern);
}

BorderedSolver::BorderedSolver(const SparseMatrix &pattern) : sparse_(pattern), n_unknowns_(pattern.rows()) {}

bool BorderedSolver::factorise(const Tangent &tangent)
{
  symmetric_ = tangent.unsymmetric.empty();
  n_bodies_ = tangent.bodies.rows();
  BodyBorder border{tangent.coupling, {}, tangent.bodies};
  if (!symmetric_)
    border.rows = tangent.coupling;
  if (!sparse_.factorise(tangent.values.data(), split(tangent, n_unknowns_, border)))
    return false;

  const int n_gas = tangent.rank_one.size(), m = n_bodies_ + n_gas;
  columns_.resize(sparse_.inverse_pivots().size(), m);
  rows_.resize(symmetric_ ? 0 : columns_.rows(), m);
  for (int i = 0; i < n_bodies_; ++i)
  {
    columns_.col(i) = sparse_.forward(border.columns.col(i));
    if (!symmetric_)
      rows_.col(i) = sparse_.forward_transposed(border.rows.col(i));
  }
  Eigen::MatrixXd corner = Eigen::MatrixXd::Zero(m, m);
  corner.topLeftCorner(n_bodies_, n_bodies_) = border.corner;
  // A + c g g^T: unknown y = sqrt(c) g^T u, rows A u + sqrt(c) g y = f and sqrt(c) g^T u - y = 0.
  for (int i = 0; i < n_gas; ++i)
  {
    const auto &[g, c] = tangent.rank_one[i];
    columns_.col(n_bodies_ + i) = std::sqrt(c) * sparse_.forward(g);
    if (!symmetric_)
      rows_.col(n_bodies_ + i) = std::sqrt(c) * sparse_.forward_transposed(g);
    corner(n_bodies_ + i, n_bodies_ + i) = -1;
  }
  const int negative = sparse_.n_negative() + factorise_corner(corner);
  indefinite_ = symmetric_ && negative > n_gas;
  return m == 0 || schur_.isInvertible();
}

int BorderedSolver::factorise_corner(const Eigen::MatrixXd &corner)
{
  if (corner.size() == 0)
    return 0;
  const Eigen::MatrixXd schur =
    corner - rows().transpose() * sparse_.inverse_pivots().asDiagonal() * columns_;
  // A falling weight in a short step and the gas are many powers of ten apart: scaled to a diagonal of
  // ones, so that only a true loss of rank counts as one.
  border_scale_ =
    schur.diagonal().cwiseAbs().unaryExpr([](double d) { return d > 0 ? 1 / std::sqrt(d) : 1.0; });
  const Eigen::MatrixXd scaled = border_scale_.asDiagonal() * schur * border_scale_.asDiagonal();
  schur_.compute(scaled);
  if (!symmetric_)
    return 0; // no signs to count
  const Eigen::MatrixXd                                symmetric = 0.5 * (scaled + scaled.transpose());
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(symmetric, Eigen::EigenvaluesOnly);
  return (eigen.eigenvalues().array() < 0).count();
}

Vector BorderedSolver::solve(const Vector &right_side) const
{
  const int m = columns_.cols();
  Vector    half = sparse_.forward(right_side.head(n_unknowns_));
  Vector    out(n_unknowns_ + n_bodies_);
  if (m > 0)
  {
    Vector lower = Vector::Zero(m);
    lower.head(n_bodies_) = right_side.tail(n_bodies_);
    lower -= rows().transpose() * sparse_.inverse_pivots().cwiseProduct(half);
    const Vector y = border_scale_.cwiseProduct(schur_.solve(border_scale_.cwiseProduct(lower)));
    half -= columns_ * y;
    out.tail(n_bodies_) = y.head(n_bodies_);
  }
  out.head(n_unknowns_) = sparse_.backward(std::move(half));
  return out;
}
} // namespace solemech::solver
