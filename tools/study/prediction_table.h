// SPDX-License-Identifier: Apache-2.0
// Predictions asked for in batches, each parameter set once, and derivatives from perturbed sets.
//
// Inside, a parameter is z = (ln value - ln median) / spread: its prior is the standard normal distribution.
#pragma once

#include "tools/study/settle.h"

#include <Eigen/Core>

#include <map>
#include <optional>

namespace solemech::settle
{
class PredictionTable
{
public:
  PredictionTable(const std::vector<Parameter> &parameters, std::size_t n_observations,
                  const Predict &predict);

  /// Predictions at each z, in order; nothing where the model could not be computed. One batch for all that
  /// is new.
  /// @throws PredictionFailed when the answer has another shape than asked for
  std::vector<std::optional<Eigen::VectorXd>> ask(const std::vector<Eigen::VectorXd> &points);

  /// d prediction / d z by one-sided differences of `relative_step` of each parameter, away from a limit; the
  /// other side where that run fails, zero and a note where both do. Columns of minor parameters are computed
  /// at the first point asked for and later scaled with the prediction.
  /// @return nothing when the point itself cannot be computed
  std::optional<Eigen::MatrixXd> jacobian(const Eigen::VectorXd &z, double relative_step);

  const Eigen::VectorXd          &lowest() const { return lowest_; } ///< limits of z
  const Eigen::VectorXd          &highest() const { return highest_; }
  std::vector<double>             values(const Eigen::VectorXd &z) const; ///< z -> parameters in their units
  int                             n_evaluations() const { return n_evaluations_; }
  int                             n_failed() const { return n_failed_; }
  const std::vector<std::string> &notes() const { return notes_; }

private:
  const std::vector<Parameter>                                 &parameters_;
  std::size_t                                                   n_observations_;
  const Predict                                                &predict_;
  Eigen::VectorXd                                               lowest_, highest_;
  std::map<std::vector<double>, std::optional<Eigen::VectorXd>> kept_;
  int                                                           n_evaluations_ = 0, n_failed_ = 0;
  std::vector<std::string>                                      notes_;
  std::optional<Eigen::VectorXd> first_predictions_; ///< where the columns of minor parameters were taken
  Eigen::MatrixXd                first_jacobian_;
};
} // namespace solemech::settle
