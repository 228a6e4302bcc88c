// SPDX-License-Identifier: Apache-2.0
// From the program that answers at once to the one that calculates.
#pragma once

#include <string>
#include <vector>

namespace solemech::tools
{
/// Replaces this process by the solver program.
/// @param arguments  as the person typed them
/// @throws MissingPart when it is not there or cannot be started
[[noreturn]] void hand_over(const std::vector<std::string> &arguments);
} // namespace solemech::tools
