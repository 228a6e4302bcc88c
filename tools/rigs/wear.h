// SPDX-License-Identifier: Apache-2.0
// Life of a bar of a tread on a court.
#pragma once

#include "tools/rigs/kind.h"

namespace solemech::tools::rigs
{
const Kind &wear();
} // namespace solemech::tools::rigs
