// SPDX-License-Identifier: Apache-2.0
#include "solver/time/boundary_values.h"

#include <algorithm>

namespace solemech::solver
{
void constrain(const std::vector<LedUnknown> &led, const SparseMatrix &pattern, Tangent &tangent)
{
  if (led.empty())
    return;
  const int         n = static_cast<int>(tangent.coupling.rows());
  std::vector<char> is_led(n + tangent.bodies.rows(), 0);
  for (const auto &one : led)
  {
    is_led[one.unknown] = 1;
    if (one.unknown < n)
    {
      tangent.coupling.row(one.unknown).setZero();
      for (auto &term : tangent.rank_one)
        term.g[one.unknown] = 0;
      continue;
    }
    const int k = one.unknown - n;
    tangent.coupling.col(k).setZero();
    tangent.bodies.row(k).setZero(), tangent.bodies.col(k).setZero();
    tangent.bodies(k, k) = 1;
  }
  std::erase_if(tangent.unsymmetric, [&](const Eigen::Triplet<double> &entry) {
    return is_led[entry.row()] || is_led[entry.col()];
  });
  if (led.front().unknown >= n)
    return;
  for (int column = 0; column < n; ++column)
    for (int place = pattern.outerIndexPtr()[column]; place < pattern.outerIndexPtr()[column + 1]; ++place)
      if (const int row = pattern.innerIndexPtr()[place]; is_led[row] || is_led[column])
        tangent.values[place] = row == column ? 1 : 0;
}

Vector product(const Tangent &tangent, const SparseMatrix &pattern, const Vector &vector)
{
  const auto                     n = tangent.coupling.rows(), m = tangent.bodies.rows();
  Eigen::Map<const SparseMatrix> matrix(n, n, pattern.nonZeros(), pattern.outerIndexPtr(),
                                        pattern.innerIndexPtr(), tangent.values.data());
  Vector                         out(n + m);
  out.head(n) = matrix.selfadjointView<Eigen::Lower>() * vector.head(n);
  out.head(n) += tangent.coupling * vector.tail(m);
  out.tail(m) = tangent.coupling.transpose() * vector.head(n) + tangent.bodies * vector.tail(m);
  for (const auto &term : tangent.rank_one)
    out.head(n) += term.c * term.g.dot(vector.head(n)) * term.g;
  for (const auto &entry : tangent.unsymmetric)
    out[entry.row()] += entry.value() * vector[entry.col()];
  return out;
}
} // namespace solemech::solver
