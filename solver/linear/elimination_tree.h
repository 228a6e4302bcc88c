// SPDX-License-Identifier: Apache-2.0
// Which unknown of a sparse symmetric matrix is eliminated when, and which column then waits for which:
// minimum degree (Amestoy, Davis & Duff, SIAM J. Matrix Anal. 17, 1996) and the elimination tree (Liu, SIAM
// J. Matrix Anal. 11, 1990).
#pragma once

#include <Eigen/SparseCore>

#include <vector>

namespace solemech::solver
{
/// Numbers of rows, column by column.
using Columns = std::vector<std::vector<int>>;

/// Column of each unknown in an order that fills little and puts children of the elimination tree right
/// before their parents. @param pattern  lower triangle
std::vector<int> elimination_order(const Eigen::SparseMatrix<double> &pattern);

/// Rows below the diagonal of each column in the order [unknown] -> column.
Columns permuted(const Eigen::SparseMatrix<double> &pattern, const std::vector<int> &order);

/// Parent of each column; -1: a root.
std::vector<int> elimination_tree(const Columns &below);
} // namespace solemech::solver
