// SPDX-License-Identifier: Apache-2.0
// A striker in the line about its rig.
#pragma once

#include "solver/case.h"
#include "tools/language/number_text.h"

namespace solemech::tools::rigs
{
/// "flat 45.0 mm face".
std::string tup_text(const solver::Tup &tup, Lengths lengths);
} // namespace solemech::tools::rigs
