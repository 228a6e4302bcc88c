// SPDX-License-Identifier: Apache-2.0
// Bands of readings from the doubts about a case. Doubts are independent along the directions of
// tools/language/doubted_case; the case is run at both ends of each, and half the difference of the two is
// what that doubt does to a reading. C. F. Gauss: independent ones add as squares. Linear in the doubts: a
// reading that curves within the band has a middle that differs from the mean.
#pragma once

#include "tools/study/solve.h"

#include <atomic>

namespace solemech::tools
{
/// The same solver, whose readings carry `shifts` when the case has doubts and the wish asks for the error of
/// the readings. The further runs are one level coarser, without pictures, side by side. A run that stops
/// early at one end of a doubt leaves the readings without band and says so in a warning.
Solve with_bands(Solve solve);
} // namespace solemech::tools
