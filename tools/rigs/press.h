// SPDX-License-Identifier: Apache-2.0
// Press: slow cycles and body-like pulses.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &press();
} // namespace solemech::tools::rigs
