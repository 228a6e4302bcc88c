// SPDX-License-Identifier: Apache-2.0
// L D U factors of a sparse matrix whose pattern stays and is symmetric: multifrontal, without pivoting (Duff
// & Reid, ACM TOMS 9, 1983). What is symmetric is worked once, U being L^T; unsymmetric entries cost the
// other half only in their own fronts and the fronts that wait for these. The half solves are public: a
// border needs L^-1 B and U^-T C only, and one way back serves all.
#pragma once

#include "solver/linear/front_layout.h"

#include <Eigen/Core>

namespace solemech::solver
{
class SparseLdu
{
public:
  using Entries = std::vector<Eigen::Triplet<double>>;

  /// @param pattern  lower triangle, compressed, column by column
  explicit SparseLdu(const Eigen::SparseMatrix<double> &pattern);

  /// @param values       of the pattern's entries, which stand for their mirror images as well
  /// @param unsymmetric  added to them, each at its own place. @return false when a pivot is zero or not
  /// finite
  bool factorise(const double *values, const Entries &unsymmetric = {});

  /// Number of negative pivots of the last factorisation; negative eigenvalues where it was symmetric.
  int n_negative() const { return n_negative_; }

  /// L^-1 b, in places of its own (padded, in the order of elimination).
  Eigen::VectorXd forward(const Eigen::Ref<const Eigen::VectorXd> &b) const;

  /// U^-T c, in the same places; the same as `forward` where the matrix was symmetric.
  Eigen::VectorXd forward_transposed(const Eigen::Ref<const Eigen::VectorXd> &c) const;

  /// D^-1, in the same places.
  const Eigen::VectorXd &inverse_pivots() const { return inverse_; }

  /// U^-1 D^-1 y as unknowns.
  Eigen::VectorXd backward(Eigen::VectorXd y) const;

  Eigen::VectorXd solve(const Eigen::Ref<const Eigen::VectorXd> &b) const { return backward(forward(b)); }

  const FrontLayout &layout() const { return layout_; }

private:
  /// One half of all fronts, with the layout's offsets.
  struct Half
  {
    std::vector<double> factors, updates, work;

    FrontHalf of(const Front &front)
    {
      return {factors.data() + front.panel, updates.data() + front.update, work.data()};
    }
  };

  FrontLayout                  layout_;
  std::unique_ptr<FrontKernel> kernel_;
  Half              below_, above_; ///< L; U^T of the unsymmetric fronts, empty while there is none
  std::vector<char> unsymmetric_;   ///< of each front
  Eigen::VectorXd   pivots_, inverse_;
  int               n_negative_ = 0;
  int               n_tallest_ = 0; ///< rows of the tallest front

  Half       &above(std::size_t front) { return unsymmetric_[front] ? above_ : below_; }
  const Half &above(std::size_t front) const { return unsymmetric_[front] ? above_ : below_; }
  void        add(const Entries &unsymmetric);
  void        add_children(std::size_t front, const FrontHalf &to, bool of_above);

  Eigen::VectorXd forward(const Eigen::Ref<const Eigen::VectorXd> &b, bool through_above) const;
};
} // namespace solemech::solver
