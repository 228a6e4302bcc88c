// SPDX-License-Identifier: Apache-2.0
// All kinds of rig, and the one that a case has.
#pragma once

#include "tools/rigs/kind.h"

#include <vector>

namespace solemech::tools::rigs
{
/// In the order in which their charts stand on a page.
const std::vector<const Kind *> &kinds();

const Kind &kind_of(const solver::Case &setup);

/// Mass, height and guide of the weight that falls on the stack; null when nothing falls.
solver::DropRig       *fall_of(solver::Case &setup);
const solver::DropRig *fall_of(const solver::Case &setup);

/// How well a reading is known by the inputs of its case; none: as well as it is calculated.
std::optional<InputRange> input_range(const Run &run, const std::string &reading);

/// What differs between two rigs and can be changed on its own; empty when a run cannot tell them apart.
std::vector<RigDifference> differences(const solver::Case &a, const solver::Case &b);

/// True when the readings of the two can be set against each other.
bool are_of_one_family(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools::rigs
