// SPDX-License-Identifier: Apache-2.0
// What Newton's method asks of a linear solver.
#pragma once

#include "solver/contribution.h"

#include <memory>

namespace solemech::solver
{
class LinearSolver
{
public:
  virtual ~LinearSolver() = default;

  /// Factorises; false when the tangent is singular.
  virtual bool factorise(const Tangent &tangent) = 0;

  /// Solves for displacements and rigid bodies with the last factors.
  virtual Vector solve(const Vector &right_side) const = 0;

  /// True when the last factorised tangent is known to have a negative direction.
  virtual bool indefinite() const { return false; }
};

/// The solver for one process: fronts of our own.
std::unique_ptr<LinearSolver> make_linear_solver(const SparseMatrix &pattern);
} // namespace solemech::solver
