// SPDX-License-Identifier: Apache-2.0
// How fine a run is; made from the target accuracy, refined from run to run.
#pragma once

#include "solver/time/account.h"

namespace solemech::solver
{
struct Resolution
{
  double mesh_level = 1;     ///< see geometry::MeshSize
  double step_tolerance = 1; ///< relative to the default step control; smaller is finer
  /// Of the striker into the surface: its share of the contact length (stack height or striker diameter, the
  /// smaller) at a pressure of one confined modulus of the softest layer.
  double     penetration = 4e-4;
  double     newton_tolerance = 1; ///< of the residuals, relative to the default; smaller is closer
  OpenParts *open_parts = nullptr; ///< filled with what each part leaves open of the account, where wanted
};
} // namespace solemech::solver
