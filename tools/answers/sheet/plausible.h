// SPDX-License-Identifier: Apache-2.0
// Numbers that a bench hardly ever shows, asked back before anything is calculated: a core of 146 mm, a
// contact of ten seconds. They are not refused: strange shoes exist, and the person decides. One hit far from
// the others is: a mean of both would be of neither.
#pragma once

#include "solver/case.h"
#include "tools/language/quantity.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace solemech::tools
{
/// Questions about the layers of a stack; empty when all are of a usual size.
std::vector<std::string> asked_of_stack(const solver::Case &setup);

/// A question about a reading of a drop: `reading` is its name in results; empty when it is of a usual size.
std::string asked_of_reading(const std::string &name, const std::string &reading, double value,
                             materials::Dimension dimension, const std::string &unit);

/// A hit that is too far from the others to be one of the same stack.
struct OddHit
{
  std::size_t index; ///< among the hits
  std::string reason, cure;
};

/// The first hit that stands far from the middle one, beyond what the instrument leaves open; nothing when
/// none does. Of two hits either may be the wrong one.
/// @param half_band  of one reading, in its unit
std::optional<OddHit> odd_hit(const std::vector<double> &values, double half_band,
                              materials::Dimension dimension, const std::string &unit);
} // namespace solemech::tools
