// SPDX-License-Identifier: Apache-2.0
// Hardness gauge set onto the stack.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &gauge();
} // namespace solemech::tools::rigs
