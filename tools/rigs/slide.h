// SPDX-License-Identifier: Apache-2.0
// One slide of a bar of a tread over a court.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &slide();
} // namespace solemech::tools::rigs
