// SPDX-License-Identifier: Apache-2.0
// What running out of travel does to the force, read from the run itself: a layer may come to the end of its
// travel while the stack as a whole still gives way as before.
#pragma once

#include "solver/results/result.h"

#include <optional>
#include <string>

namespace solemech::tools
{
/// Rise of force over way near the greatest compression, over that on the way there; none without the curves.
std::optional<double> stiffening(const solver::Result &result);

/// True when the force climbs so much more steeply at the end that people would speak of a knee.
bool has_knee(const solver::Result &result);

/// What follows from a travel that is used up or nearly so, as the end of a sentence that begins with what
/// bottoms: "bottoms: the force already climbs steeply, and a little more weight or height hits much harder."
std::string bottoming_consequence(const solver::Result &result, double travel_left);
} // namespace solemech::tools
