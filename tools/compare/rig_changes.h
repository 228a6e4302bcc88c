// SPDX-License-Identifier: Apache-2.0
// What differs between two rigs, plugs and surroundings, entry by entry, for people.
#pragma once

#include "tools/compare/changes.h"

namespace solemech::tools
{
/// Empty when a run cannot tell the rigs apart.
std::vector<ChangeDetail> rig_details(const solver::Rig &a, const solver::Rig &b);

/// "drop height" when nothing else of the rig differs, else "rig".
std::string rig_change_name(const std::vector<ChangeDetail> &details);

/// Side and base of the plug; its radius is a matter of size.
std::vector<ChangeDetail> plug_details(const solver::Plug &a, const solver::Plug &b);

/// Temperature, gravity, air pressure.
std::vector<ChangeDetail> surroundings_details(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools
