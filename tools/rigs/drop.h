// SPDX-License-Identifier: Apache-2.0
// Drop weight and ball rebound.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &drop();
} // namespace solemech::tools::rigs
