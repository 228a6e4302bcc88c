// SPDX-License-Identifier: Apache-2.0
// What differs between two rigs, plugs and surroundings, entry by entry, for people.
#pragma once

#include "tools/answers/compare/changes.h"

namespace solemech::tools
{
/// What differs between two rigs and can be changed on its own. A striker is one; of a slide, court, shape of
/// the bar and the way it is pressed and led are three, because people choose them apart.
struct RigDifference
{
  std::string name; ///< "drop height" when nothing else differs, else "rig", "court", "shape of the bar" ...
  std::vector<ChangeDetail> details;
  RigTaker                  take;
};

/// "drop", "press", "gauge", "slide".
const char *rig_kind(const solver::Rig &rig);

/// Empty when a run cannot tell the rigs apart.
std::vector<RigDifference> rig_differences(const solver::Case &a, const solver::Case &b);

/// Side and base of the plug; its radius is a matter of size.
std::vector<ChangeDetail> plug_details(const solver::Plug &a, const solver::Plug &b);

/// Temperature, gravity, air pressure.
std::vector<ChangeDetail> surroundings_details(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools
