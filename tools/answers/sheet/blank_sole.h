// SPDX-License-Identifier: Apache-2.0
// A sole file to fill in: valid as it stands, every number in it invented, with remarks on how to take each
// with callipers, rule and paper.
#pragma once

#include <string>

namespace solemech::tools
{
std::string blank_sole();
} // namespace solemech::tools
