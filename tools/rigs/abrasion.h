// SPDX-License-Identifier: Apache-2.0
// Abrasive held on a piece: a sleeve on a rotary tool, the drum of ISO 4649.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &abrasion();
} // namespace solemech::tools::rigs
