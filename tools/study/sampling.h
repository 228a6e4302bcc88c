// SPDX-License-Identifier: Apache-2.0
// The bands without linearising: importance sampling of the posterior, with the predictions of the quadratic
// model.
#pragma once

#include "tools/study/quadratic_model.h"

namespace solemech::settle
{
struct Sampled
{
  std::vector<Band> parameters, predictions; ///< medians and 90 % bands, in units
  double            effective_share = 0;     ///< effective number of samples over their number (Kish)
};

/// Draws points of the linearised distribution, for true runs that test the quadratic model. Within the
/// limits.
std::vector<Eigen::VectorXd> draw_check_points(const PredictionTable &table, const Eigen::VectorXd &centre,
                                               const Linear &linear, int n_points, unsigned seed);

/// Greatest difference between model and runs, in doubts of the readings; runs that failed are left out.
double model_error(const QuadraticModel &model, const std::vector<Observation> &observations,
                   const std::vector<Eigen::VectorXd>                &points,
                   const std::vector<std::optional<Eigen::VectorXd>> &answers);

/// Samples of a normal distribution 1.2 times as wide as the linearised one (its tails must cover the true
/// ones), weighed by exp(-cost); weighted 5, 50 and 95 % quantiles.
Sampled sample(const PredictionTable &table, const std::vector<Observation> &observations,
               const QuadraticModel &model, const Linear &linear, const Wish &wish);
} // namespace solemech::settle
