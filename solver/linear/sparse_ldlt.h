// SPDX-License-Identifier: Apache-2.0
// LDL^T factors of a sparse symmetric matrix whose pattern stays: multifrontal, without pivoting (Duff &
// Reid, ACM TOMS 9, 1983). The half solves are public: a border needs L^-1 B only, and one way back serves
// all.
#pragma once

#include "solver/linear/front_layout.h"

#include <Eigen/Core>

namespace solemech::solver
{
class SparseLdlt
{
public:
  /// @param pattern  lower triangle, compressed, column by column
  explicit SparseLdlt(const Eigen::SparseMatrix<double> &pattern);

  /// @param values  of the pattern's entries. @return false when a pivot is zero or not finite
  bool factorise(const double *values);

  /// Number of negative pivots of the last factorisation.
  int n_negative() const { return n_negative_; }

  /// L^-1 b, in places of its own (padded, in the order of elimination).
  Eigen::VectorXd forward(const Eigen::Ref<const Eigen::VectorXd> &b) const;

  /// D^-1, in the same places.
  const Eigen::VectorXd &inverse_pivots() const { return inverse_; }

  /// L^-T D^-1 y as unknowns.
  Eigen::VectorXd backward(Eigen::VectorXd y) const;

  Eigen::VectorXd solve(const Eigen::Ref<const Eigen::VectorXd> &b) const { return backward(forward(b)); }

  const FrontLayout &layout() const { return layout_; }

private:
  FrontLayout                  layout_;
  std::unique_ptr<FrontKernel> kernel_;
  std::vector<double>          factors_, updates_, work_;
  Eigen::VectorXd              pivots_, inverse_;
  int                          n_negative_ = 0;
  int                          n_tallest_ = 0; ///< rows of the tallest front

  void add_children(std::size_t front);
};
} // namespace solemech::solver
