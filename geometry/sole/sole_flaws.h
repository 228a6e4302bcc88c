// SPDX-License-Identifier: Apache-2.0
// Everything about the measurements of a sole that cannot be built, all at once: for each the part and the
// measurement it is about, what is wrong and what would be right. Measurements that are not numbers are
// passed over; whoever read them has said so.
#pragma once

#include "geometry/sole/sole_shape.h"

#include <string>
#include <vector>

namespace solemech::geometry
{
struct Flaw
{
  enum class Of { outline, bottom, layer, slot, pocket, patch };
  Of          of = Of::outline;
  std::size_t index = 0; ///< of the layer, pocket or patch; of a slot that of its plate
  std::size_t slot = 0;
  std::string entry;     ///< the measurement, e.g. "thickness"
  double      value = 0; ///< SI
  std::string reason;    ///< what is wrong, no full stop
  std::string cure;      ///< what to do, no full stop
};

std::vector<Flaw> flaws(const SoleShape &shape);
} // namespace solemech::geometry
