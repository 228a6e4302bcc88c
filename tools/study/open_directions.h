// SPDX-License-Identifier: Apache-2.0
// What the readings leave open, as mixtures of parameters and in words.
#pragma once

#include "tools/study/quadratic_model.h"

namespace solemech::settle
{
/// Parameters that no reading sees come one by one; the others along the principal axes of what the readings
/// say, each axis whose doubt is not halved, widest first.
std::vector<OpenDirection> open_directions(const std::vector<Parameter> &parameters, const Linear &linear);
} // namespace solemech::settle
