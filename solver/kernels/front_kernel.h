// SPDX-License-Identifier: Apache-2.0
// Dense work of the multifrontal factorisation A = L D U on plain arrays, four rows side by side. A front has
// two halves: on and below its diagonal, and on and above it, which is kept turned over so that both are
// lower trapezoids of n_pivots columns (the panel) over n_pivots + n_rows rows, with the lower triangle of
// n_rows that is left for the parent (the update). A symmetric front gives one half for both. Both counts are
// multiples of four; padded pivots hold 1 on the diagonal and 0 elsewhere. Source: Duff & Reid, ACM TOMS 9
// (1983) 302, for the method.
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

struct FrontHalf
{
  double *panel;  ///< height x n_pivots, column by column
  double *update; ///< n_rows x n_rows, column by column; its lower triangle counts
  double *work;   ///< height x n_pivots numbers

  bool operator==(const FrontHalf &) const = default;
};

class FrontKernel
{
public:
  virtual ~FrontKernel() = default;

  /// Eliminates the pivots: the panels turn into L and U^T (unit lower; what stands above the diagonal is
  /// meaningless), `pivots` into D, and the updates lose L D U and its transpose. The diagonal is read from
  /// `below`. No pivoting: a zero pivot gives infinities, which the caller looks for.
  virtual void eliminate(const FrontSize &size, const FrontHalf &below, const FrontHalf &above,
                         double *pivots) const = 0;

  /// y := L^-1 y on the pivots; the rows below lose L y.
  virtual void forward(const FrontSize &size, const double *panel, double *y) const = 0;

  /// y := L^-T y on the pivots, with the rows below known.
  virtual void backward(const FrontSize &size, const double *panel, double *y) const = 0;
};

std::unique_ptr<FrontKernel> make_front_kernel(InstructionSet set = best_instruction_set());
} // namespace solemech::solver
