// SPDX-License-Identifier: Apache-2.0
// The most probable parameters: bounded robust least squares on top of a PredictionTable (Ceres).
#pragma once

#include "tools/study/prediction_table.h"

namespace solemech::settle
{
struct Fit
{
  Eigen::VectorXd z;                 ///< most probable point
  Eigen::VectorXd start_predictions; ///< at the medians
  Eigen::MatrixXd start_jacobian;    ///< d prediction / d z there
  bool            converged = false;
  std::string     why_not;
};

/// First without, then with the loss for wild readings, which is tightened in stages: at the medians all
/// readings may look wild, and a loss that lets go of them at once would stay there.
/// @throws PredictionFailed when the model cannot be computed at the medians; what predict throws
Fit fit(const std::vector<Observation> &observations, PredictionTable &table, const Wish &wish);
} // namespace solemech::settle
