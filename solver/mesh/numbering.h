// SPDX-License-Identifier: Apache-2.0
// The unknowns of a mesh and the pattern of a matrix over them: all that balances, time steps and linear
// solvers know of a mesh, in a section or in space.
#pragma once

#include <Eigen/Sparse>

#include <vector>

namespace solemech::solver
{
using Vector = Eigen::VectorXd;
using SparseMatrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;

class Numbering
{
public:
  int n_unknowns() const { return n_unknowns_; }

  /// Lower triangle of the pattern; values all zero.
  const SparseMatrix &pattern() const { return pattern_; }

  /// Place of an entry of the lower triangle (row >= column) among the values.
  int slot(int row, int column) const;

  /// Adds to an entry of the lower triangle.
  void add_entry(std::vector<double> &values, int row, int column, double value) const
  {
    values[slot(row, column)] += value;
  }

protected:
  Numbering() = default;
  Numbering(const Numbering &) = default;
  Numbering(Numbering &&) = default;
  Numbering &operator=(const Numbering &) = default;
  Numbering &operator=(Numbering &&) = default;
  ~Numbering() = default; ///< nobody deletes a mesh as its numbering

  int          n_unknowns_ = 0;
  SparseMatrix pattern_;
};
} // namespace solemech::solver
