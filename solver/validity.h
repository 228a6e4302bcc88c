// SPDX-License-Identifier: Apache-2.0
// Warnings where a drop leaves the range in which the model is meant to be right.
#pragma once

#include "solver/models/stack_model.h"

namespace solemech::solver
{
/// Checks plug edge, mass of the drop weight, speed of waves, and which definition of return matters.
void add_validity(const StackModel &model, const DropRig &rig, Result &result);
} // namespace solemech::solver
