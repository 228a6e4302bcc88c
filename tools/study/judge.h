// SPDX-License-Identifier: Apache-2.0
// What each reading says about the model and about the other readings, linearised.
#pragma once

#include "tools/language/doubted_case.h"
#include "tools/study/quadratic_model.h"

namespace solemech::settle
{
using tools::doubts_in_half_band;

/// Fills verdict, misfit, weight and the bands `measured`, `predicted`, `without_it` of every reading.
///
/// A reading that was used is judged against what everything else predicts: its own pull q w (q = row C
/// row^T) is taken out, misfit_without = misfit / (1 - w q), variance q / (1 - w q) (leave-one-out identities
/// of linear least squares). Agree: difference within the 90 % band of both doubts together; disagree:
/// outside 99 %; between them, or when that band is wider than half the reading each way, cannot tell.
void judge(const std::vector<Observation> &observations, const Linear &linear,
           const Eigen::VectorXd &predictions, std::vector<SettledObservation> &judged);

/// Finds readings that cannot be reached by what is assumed of the parameters, and pairs of which each can
/// be, but not both: with only the two, chi-square beyond 13.8 (2 degrees of freedom, 0.1 %: a sheet holds
/// many pairs). Each has to show with the derivatives at the medians and with those at the settled point.
void find_contradictions(const std::vector<Observation> &observations, const Linear &at_start,
                         const Linear &at_end, const Eigen::VectorXd &start, const Eigen::VectorXd &end,
                         std::vector<SettledObservation> &judged);
} // namespace solemech::settle
