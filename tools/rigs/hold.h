// SPDX-License-Identifier: Apache-2.0
// Hold: a squeeze or a load kept up for minutes to days, and the rest after it.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &hold();
} // namespace solemech::tools::rigs
