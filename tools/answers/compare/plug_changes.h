// SPDX-License-Identifier: Apache-2.0
// What differs between two plugs and surroundings, entry by entry, for people.
#pragma once

#include "tools/answers/compare/changes.h"

namespace solemech::tools
{
/// Side and base of the plug; its radius is a matter of size.
std::vector<ChangeDetail> plug_details(const solver::Plug &a, const solver::Plug &b);

/// Temperature, gravity, air pressure.
std::vector<ChangeDetail> surroundings_details(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools
