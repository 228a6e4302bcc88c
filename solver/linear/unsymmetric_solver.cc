// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/unsymmetric_solver.h"

#include <stdexcept>

namespace solemech::solver
{
UnsymmetricSolver::UnsymmetricSolver(const SparseMatrix &pattern) : pattern_(pattern)
{
  lu_.umfpackControl()(UMFPACK_IRSTEP) = 0; // Newton's method refines anyhow
}

bool UnsymmetricSolver::factorise(const Tangent &tangent)
{
  if (!tangent.rank_one.empty())
    throw std::invalid_argument("an unsymmetric tangent with a sealed chamber is not built");
  const int                           n = pattern_.cols(), n_bodies = tangent.bodies.rows();
  std::vector<Eigen::Triplet<double>> entries;
  entries.reserve(2 * pattern_.nonZeros() + 2 * n * n_bodies + tangent.unsymmetric.size());
  for (int column = 0; column < n; ++column)
    for (int k = pattern_.outerIndexPtr()[column]; k < pattern_.outerIndexPtr()[column + 1]; ++k)
    {
      const int row = pattern_.innerIndexPtr()[k];
      entries.emplace_back(row, column, tangent.values[k]);
      if (row != column)
        entries.emplace_back(column, row, tangent.values[k]);
    }
  for (int body = 0; body < n_bodies; ++body)
  {
    for (int i = 0; i < n; ++i)
      if (const double c = tangent.coupling(i, body); c != 0)
      {
        entries.emplace_back(i, n + body, c);
        entries.emplace_back(n + body, i, c);
      }
    for (int other = 0; other < n_bodies; ++other)
      entries.emplace_back(n + body, n + other, tangent.bodies(body, other));
  }
  entries.insert(entries.end(), tangent.unsymmetric.begin(), tangent.unsymmetric.end());
  matrix_.resize(n + n_bodies, n + n_bodies);
  matrix_.setFromTriplets(entries.begin(), entries.end());
  matrix_.makeCompressed();

  // Contact comes and goes, so the pattern may change from one iteration to the next.
  const std::vector<int> outer(matrix_.outerIndexPtr(), matrix_.outerIndexPtr() + matrix_.cols() + 1);
  const std::vector<int> inner(matrix_.innerIndexPtr(), matrix_.innerIndexPtr() + matrix_.nonZeros());
  if (outer != outer_ || inner != inner_)
  {
    lu_.analyzePattern(matrix_);
    outer_ = outer, inner_ = inner;
  }
  lu_.factorize(matrix_);
  return lu_.info() == Eigen::Success;
}

Vector UnsymmetricSolver::solve(const Vector &right_side) const
{
  return lu_.solve(right_side);
}
} // namespace solemech::solver
