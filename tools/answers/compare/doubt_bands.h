// SPDX-License-Identifier: Apache-2.0
// What the doubts about two cases do to a comparison: to the readings of both, to their difference and to the
// share of each change. Equal doubts of A and B are one doubt that moves both, so that most of it drops out
// of the difference; different ones are independent and add as squares (C. F. Gauss).
#pragma once

#include "tools/answers/compare/mixture_runs.h"

#include <vector>

namespace solemech::tools
{
/// Runs all mixtures again with A and B moved to the upper end of each doubt, at the coarser level, and
/// widens the bands of `answer` by what that moves; nine of ten cases lie within. Nothing without doubts.
/// Where a moved pair differs in other things than A and B do, `answer.no_doubt_bands` says so.
/// @param a, b    with their doubts
/// @param sets    of the comparison
/// @param coarse  its results at the coarser level
/// @throws what the solver throws, and solver::ResultsError of the store
void add_doubt_bands(Explanation &answer, const solver::Case &a, const solver::Case &b, const Sets &sets,
                     const std::vector<solver::Result> &coarse, const ExplainTools &tools);

/// Pairs that have to be run besides A and B themselves.
std::size_t n_moved_pairs(const solver::Case &a, const solver::Case &b);
} // namespace solemech::tools
