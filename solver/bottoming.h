// SPDX-License-Identifier: Apache-2.0
// How near each layer came to locking up.
#pragma once

#include "solver/stack_model.h"

namespace solemech::solver
{
/// Adds `bottoming_margin` (share of the useful travel left in the layer that has least; 0: locked up), one
/// `compression.<layer>` a layer, and warnings. Useful travel: locking.h.
void add_bottoming(const StackModel &model, const std::vector<double> &thickness_at_peak, Result &result);
} // namespace solemech::solver
