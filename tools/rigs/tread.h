// SPDX-License-Identifier: Apache-2.0
// Grip of a whole sole at headings all round, against turning, under a tilted foot.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &tread();
} // namespace solemech::tools::rigs
