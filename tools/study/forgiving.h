// SPDX-License-Identifier: Apache-2.0
// One bad case may not cost the others: a solver that answers every case, if only with the reason why not.
#pragma once

#include "tools/study/solve.h"

namespace solemech::tools
{
/// The same solver; a case that it refuses, or trips over, comes back incomplete, with the reason.
Solve forgiving(const Solve &solve);
} // namespace solemech::tools
