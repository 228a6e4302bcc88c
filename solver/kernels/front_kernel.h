// SPDX-License-Identifier: Apache-2.0
// Dense work of the multifrontal LDL^T factorisation on plain arrays, four rows side by side. A front is a
// lower trapezoid of n_pivots columns (the panel) over n_pivots + n_rows rows, and the square of n_rows that
// is left for its parent (the update). Both counts are multiples of four; padded pivots hold 1 on the
// diagonal and 0 elsewhere. Source: Duff & Reid, ACM TOMS 9 (1983) 302, for the method.
#pragma once

#include "solver/kernels/solid_kernel.h"

#include <memory>

namespace solemech::solver
{
/// Size of a front, both multiples of four.
struct FrontSize
{
  int n_pivots = 0, n_rows = 0;

  int height() const { return n_pivots + n_rows; }
};

class FrontKernel
{
public:
  virtual ~FrontKernel() = default;

  /// Eliminates the pivots. Column-major `panel`, height x n_pivots, turns into L (unit lower; what stands
  /// above the diagonal is meaningless), `pivots` into D, and the lower triangle of `update`, n_rows x
  /// n_rows, loses L D L^T. No pivoting: a zero pivot gives infinities, which the caller looks for.
  /// @param work  height x n_pivots numbers
  virtual void eliminate(const FrontSize &size, double *panel, double *update, double *pivots,
                         double *work) const = 0;

  /// y := L^-1 y on the pivots; the rows below lose L y.
  virtual void forward(const FrontSize &size, const double *panel, double *y) const = 0;

  /// y := L^-T y on the pivots, with the rows below known.
  virtual void backward(const FrontSize &size, const double *panel, double *y) const = 0;
};

std::unique_ptr<FrontKernel> make_front_kernel(InstructionSet set = best_instruction_set());
} // namespace solemech::solver
