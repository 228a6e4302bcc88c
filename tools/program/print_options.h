// SPDX-License-Identifier: Apache-2.0
// How summaries are printed on standard output: as wide as its terminal, with emphasis where it is welcome.
#pragma once

#include "tools/output/results/summary.h"

namespace solemech::tools
{
/// Options of a summary for the stream that people read now.
SummaryOptions print_options(bool details = false, Lengths lengths = Lengths::millimetre);
} // namespace solemech::tools
