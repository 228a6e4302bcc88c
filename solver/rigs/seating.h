// SPDX-License-Identifier: Apache-2.0
// How a head that is driven by force comes into touch: by travel, since a stack over a slack unit answers the
// first travel with next to nothing, and a force on nothing has no balance.
#pragma once

#include "solver/contributions/applied_force.h"
#include "solver/models/stack_model.h"
#include "solver/time/generalised_alpha.h"

namespace solemech::solver
{
/// Lowers the head until it carries a hundredth of the load, at most a newton, and leaves it in balance under
/// what it carries then.
/// @param settings  of the steps; from then on none goes farther than a tenth of the height
/// @param load      greatest force to come [N]
/// @param dt        of each step [s]
/// @throws NoBalance when the stack does not answer
void seat(StackModel &model, TimeIntegrator &integrator, StepSettings &settings, AppliedForce &head,
          double load, double dt);
} // namespace solemech::solver
