// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/elimination_tree.h"

#include <Eigen/OrderingMethods>

#include <algorithm>

namespace solemech::solver
{
namespace
{
/// Place of each column when children come right before their parents.
std::vector<int> post_order(const std::vector<int> &parent)
{
  const int        n = parent.size();
  std::vector<int> first_child(n, -1), sibling(n, -1), place(n), stack;
  for (int k = n - 1; k >= 0; --k)
    if (parent[k] >= 0)
      sibling[k] = first_child[parent[k]], first_child[parent[k]] = k;
  int count = 0;
  for (int root = 0; root < n; ++root)
  {
    if (parent[root] >= 0)
      continue;
    stack.push_back(root);
    while (!stack.empty())
    {
      const int k = stack.back();
      if (const int child = first_child[k]; child >= 0)
        first_child[k] = sibling[child], stack.push_back(child);
      else
        place[k] = count++, stack.pop_back();
    }
  }
  return place;
}

} // namespace

Columns permuted(const Eigen::SparseMatrix<double> &pattern, const std::vector<int> &order)
{
  Columns below(pattern.cols());
  for (int column = 0; column < pattern.outerSize(); ++column)
    for (Eigen::SparseMatrix<double>::InnerIterator entry(pattern, column); entry; ++entry)
      if (const int a = order[entry.row()], b = order[column]; a != b)
        below[std::min(a, b)].push_back(std::max(a, b));
  return below;
}

std::vector<int> elimination_tree(const Columns &below)
{
  const int        n = below.size();
  Columns          before(n);
  std::vector<int> parent(n, -1), ancestor(n, -1);
  for (int column = 0; column < n; ++column)
    for (const int row : below[column])
      before[row].push_back(column);
  for (int row = 0; row < n; ++row)
    for (int k : before[row])
      while (k != -1 && k < row)
      {
        const int next = ancestor[k];
        ancestor[k] = row;
        if (next == -1)
          parent[k] = row;
        k = next;
      }
  return parent;
}

std::vector<int> elimination_order(const Eigen::SparseMatrix<double> &pattern)
{
  const int                         n = pattern.rows();
  const Eigen::SparseMatrix<double> whole = pattern.selfadjointView<Eigen::Lower>();
  Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> eliminated; // [column] -> unknown
  Eigen::AMDOrdering<int>()(whole, eliminated);
  std::vector<int> order(n);
  for (int column = 0; column < n; ++column)
    order[eliminated.indices()[column]] = column;
  const auto post = post_order(elimination_tree(permuted(pattern, order)));
  for (int &column : order)
    column = post[column];
  return order;
}
} // namespace solemech::solver
