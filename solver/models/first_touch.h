// SPDX-License-Identifier: Apache-2.0
// Where a striker that comes down first touches what lies under it.
#pragma once

#include "solver/contributions/contact.h"

namespace solemech::solver
{
/// Level of the striker's unknown at which it first touches in the state x, found by halving; where it misses
/// what is there, the level that it is sought from [m].
/// @param height  of the stack [m]
double first_touch(const Contact &striker, int unknown, Vector x, double height);
} // namespace solemech::solver
