// SPDX-License-Identifier: Apache-2.0
// Numbers that a bench hardly ever shows, asked back before anything is calculated: a core of 146 mm, a
// contact of ten seconds, one hit a tenth of the others. They are not refused: strange shoes exist, and the
// person decides.
#pragma once

#include "solver/case.h"
#include "tools/language/quantity.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// Questions about the layers of a stack; empty when all are of a usual size.
std::vector<std::string> asked_of_stack(const solver::Case &setup);

/// A question about a reading of a drop: `reading` is its name in results; empty when it is of a usual size.
std::string asked_of_reading(const std::string &name, const std::string &reading, double value,
                             materials::Dimension dimension, const std::string &unit);

/// A question about repeated hits of which one stands far from the middle one; empty when none does.
std::string asked_of_repeats(const std::string &name, const std::vector<double> &values,
                             materials::Dimension dimension, const std::string &unit);
} // namespace solemech::tools
