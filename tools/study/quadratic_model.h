// SPDX-License-Identifier: Apache-2.0
// Predictions around the most probable point as a quadratic model along the principal axes of what is left
// open, and the linearised (Gaussian) distribution of the parameters that follows from it.
#pragma once

#include "tools/study/prediction_table.h"

namespace solemech::settle
{
/// y(z) = base + sum_k slope_k t_k + curvature_k t_k^2 / 2, t = axes^T (z - centre); no terms between axes.
/// For readings compared by ratio y is the logarithm of the prediction.
struct QuadraticModel
{
  std::vector<bool> logarithmic; ///< an observation
  Eigen::VectorXd   centre, base;
  Eigen::MatrixXd   axes;             ///< orthonormal columns in z
  Eigen::MatrixXd   slope, curvature; ///< [observation][axis]

  Eigen::VectorXd predict(const Eigen::VectorXd &z) const; ///< in units
  Eigen::MatrixXd jacobian() const;                        ///< d prediction / d z at the centre
  QuadraticModel  about(const Eigen::VectorXd &z) const;   ///< the same model, written around another point
};

/// Weighted misfits, their derivatives by z and the covariance of z at a point, linearised.
struct Linear
{
  Eigen::VectorXd misfit; ///< two-sided, in doubts
  Eigen::VectorXd weight; ///< of the loss, 0..1; zero for held-out readings and at-least readings that hold
  Eigen::MatrixXd rows;   ///< d misfit / d z
  Eigen::MatrixXd fisher; ///< sum of weighted rows^T rows
  Eigen::MatrixXd covariance; ///< (1 + fisher)^-1
};

Linear linearise(const std::vector<Observation> &observations, const Eigen::VectorXd &predictions,
                 const Eigen::MatrixXd &jacobian, double robust_at);

/// 2 x the negative log of the posterior density of z, up to a constant; infinite where a prediction cannot
/// be compared.
double posterior_cost(const std::vector<Observation> &observations, const Eigen::VectorXd &predictions,
                      const Eigen::VectorXd &z, double robust_at);

/// Where the quadratic model has its least cost within the limits, at most one standard deviation of the
/// linearised distribution away from its centre. Its arms are longer than the steps of the derivatives on the
/// way there, so noise of the runs moves it less.
Eigen::VectorXd least_cost(const QuadraticModel &model, const std::vector<Observation> &observations,
                           const PredictionTable &table, double robust_at);

/// Runs on both sides along each principal axis of `first.covariance`, taken part by part of the problem
/// (that of two stacks mixes them over the little that they share), one standard deviation away where the
/// limits allow it (never more than 0.35 in ln of a parameter: a model is asked for what is near). Runs that
/// fail leave that side out; an axis without any keeps the slope it had, as those of minor parameters do.
/// @param more  further points to compute in the same batch, for a check; answers in `more_answers`
QuadraticModel quadratic_model(PredictionTable &table, const std::vector<Parameter> &parameters,
                               const std::vector<Observation> &observations, const Eigen::VectorXd &centre,
                               const Eigen::MatrixXd &jacobian, const Linear &first,
                               const std::vector<Eigen::VectorXd>          &more,
                               std::vector<std::optional<Eigen::VectorXd>> &more_answers);
} // namespace solemech::settle
