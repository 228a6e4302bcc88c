// SPDX-License-Identifier: Apache-2.0
// A pair settled: both sheets in one problem with one rod, then heel against forefoot, with bands that hold
// what the readings of both left open together.
#pragma once

#include "tools/answers/compare/explain.h"
#include "tools/answers/pair/read_pair.h"
#include "tools/answers/sheet/settle_sheet.h"

#include <vector>

namespace solemech::tools
{
/// @throws Interrupted, and what settle::settle throws
SettledTogether settle_pair(const Pair &pair, Job &job, const std::vector<materials::Material> &candidates);

/// Heel against forefoot as settled, both on the rod of the heel. The numbers that the readings left open are
/// moved together, as they go together: a guide that may take more or less moves both.
Comparison heel_against_forefoot(const Pair &pair, const SettledTogether &settled);
} // namespace solemech::tools
