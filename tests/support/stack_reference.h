// SPDX-License-Identifier: Apache-2.0
// Foam columns stacked on each other under a falling mass: one force for all, compressions add up. It is
// exact for a bonded stack when nothing pulls sideways: sides held, or networks with beta = 0 and neither
// cell gas nor densification, whatever the base. Trapezoid rule for the mass, implicit steps with exact decay
// for the layers.
#pragma once

#include "tests/support/column_reference.h"

namespace solemech::tests
{
struct StackLayer
{
  ColumnFoam foam;
  double     height = 0; ///< [m]
};

/// A hit on a stack; the branch losses of the whole are not split, each layer's loss is given instead.
struct StackHit : ColumnHit
{
  std::vector<double> layer_peak_compression; ///< [m]
  std::vector<double> layer_stored_at_loss;   ///< [J]
  std::vector<double> layer_dissipated;       ///< work put in less what is stored, in this contact [J]
};

/// Successive hits; `drop.step` is the fixed time step. Errors as for column_drop.
std::vector<StackHit> stack_drop(const std::vector<StackLayer> &layers, double area, Lateral lateral,
                                 const ColumnDrop &drop);
} // namespace solemech::tests
