// SPDX-License-Identifier: Apache-2.0
#include "solver/time/correcting_solver.h"

#include "solver/time/boundary_values.h"

#include <limits>

namespace solemech::solver
{
namespace
{
constexpr unsigned most_corrections = 15;
constexpr double   wanted = 1e-5;    ///< error over the solution, in the norm of the preconditioner
constexpr int      dear = 1'000'000; ///< entries of a pattern from which corrections pay
} // namespace

CorrectingSolver::CorrectingSolver(const SparseMatrix &pattern)
  : pattern_(pattern), direct_(make_linear_solver(pattern))
{
}

bool CorrectingSolver::factorise(const Tangent &tangent)
{
  const bool alike = tangent.bodies.rows() == n_bodies_;
  tangent_ = &tangent, n_bodies_ = tangent.bodies.rows();
  is_fresh_ = false;
  return (has_factors_ && alike && tangent.unsymmetric.empty()) || refresh();
}

bool CorrectingSolver::refresh() const
{
  ++n_factorisations_;
  is_fresh_ = direct_->factorise(*tangent_);
  has_factors_ = is_fresh_ && tangent_->unsymmetric.empty() && !direct_->indefinite();
  return is_fresh_;
}

bool CorrectingSolver::indefinite() const
{
  return (is_fresh_ || refresh()) && direct_->indefinite();
}

bool CorrectingSolver::correct(const Vector &right_side, Vector &x) const
{
  x = direct_->solve(right_side);
  const double goal = wanted * wanted * right_side.dot(x);
  Vector       residual = right_side - product(*tangent_, pattern_, x), step = direct_->solve(residual);
  double       error = residual.dot(step);
  Vector       along = step;
  for (unsigned i = 0; i < most_corrections && error > goal; ++i)
  {
    const Vector pulled = product(*tangent_, pattern_, along);
    const double curvature = along.dot(pulled);
    if (!(curvature > 0)) // no minimum that way
      return false;
    const double length = error / curvature;
    x += length * along;
    residual -= length * pulled;
    step = direct_->solve(residual);
    const double next = residual.dot(step);
    along = step + next / error * along;
    error = next;
  }
  return error <= goal;
}

Vector CorrectingSolver::solve(const Vector &right_side) const
{
  Vector x;
  if (!is_fresh_ && correct(right_side, x))
    return x;
  if (is_fresh_ || refresh())
    return direct_->solve(right_side);
  return Vector::Constant(right_side.size(), std::numeric_limits<double>::quiet_NaN());
}

std::unique_ptr<LinearSolver> make_run_solver(const SparseMatrix &pattern)
{
  if (pattern.nonZeros() < dear)
    return make_linear_solver(pattern);
  return std::make_unique<CorrectingSolver>(pattern);
}
} // namespace solemech::solver
