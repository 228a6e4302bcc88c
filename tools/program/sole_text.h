// SPDX-License-Identifier: Apache-2.0
// What a sole measures and weighs, in lines for a terminal.
#pragma once

#include "tools/output/drawing/sole_facts.h"

#include <string>
#include <vector>

namespace solemech::tools
{
/// @param assumed  what its file leaves to the program
std::string sole_text(const SoleFacts &facts, const std::vector<std::string> &assumed);
} // namespace solemech::tools
