// SPDX-License-Identifier: Apache-2.0
// What the doubts about two cases do to a comparison: to the readings of both, to their difference and to the
// share of each change. Equal doubts of A and B are one doubt that moves both, so that most of it drops out
// of the difference; different ones are independent and add as squares (C. F. Gauss).
#pragma once

#include "tools/answers/compare/explain.h"

#include <vector>

namespace solemech::tools
{
/// A and B moved to the upper end of each doubt that they carry, without doubts then. Empty without doubts.
std::vector<CasePair> moved_pairs(const solver::Case &a, const solver::Case &b);

/// Runs all mixtures again between the moved cases of the comparison, at the coarser level, and widens the
/// bands of `answer` by what each move does; nine of ten cases lie within. Where a moved pair differs in more
/// things than A and B do, such as outsoles that only read the same, it widens the difference and no share:
/// `answer` says so.
/// @param coarse  results of the comparison at the coarser level
/// @param what    a few words on the pair, for the progress
/// @throws Interrupted
void add_doubt_bands(Explanation &answer, const Comparison &comparison,
                     const std::vector<solver::Result> &coarse, Job &job, const std::string &what);
} // namespace solemech::tools
