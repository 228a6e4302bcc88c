// SPDX-License-Identifier: Apache-2.0
#include "tools/study/fit.h"

#include "tools/study/residual.h"

#include <ceres/ceres.h>
#include <glog/logging.h>

#include <algorithm>
#include <cmath>
#include <exception>

namespace solemech::settle
{
namespace
{
/// Half a squared doubt of 1/100: below it a step changes no digit that people see.
constexpr double settled_cost_change = 1e-4;
/// Half a squared doubt of 1/20: a step that promises less is not worth its runs.
constexpr double worth_a_step = 1.25e-3;
/// Half a squared doubt of 1/5: a refused step that promised less was refused for the noise of the runs, and
/// so would shorter ones be. What is given away is an eighth of a half band.
constexpr double within_noise = 0.02;

/// What all residuals share: predictions and derivatives at the point that Ceres looks at now.
class Shared : public ceres::EvaluationCallback
{
public:
  Shared(PredictionTable &table, double relative_step, Eigen::VectorXd &z)
    : table_(table), relative_step_(relative_step), z_(z)
  {
  }

  void PrepareForEvaluation(bool with_jacobians, bool) override
  {
    if (fault)
      return;
    try
    {
      // With derivatives the point itself travels in their batch.
      jacobian = with_jacobians ? table_.jacobian(z_, relative_step_) : std::nullopt;
      predictions = table_.ask({z_})[0];
    }
    catch (...) // must not pass through Ceres
    {
      fault = std::current_exception();
    }
    usable = !fault && predictions && (!with_jacobians || jacobian);
  }

  std::optional<Eigen::VectorXd> predictions;
  std::optional<Eigen::MatrixXd> jacobian;
  std::exception_ptr             fault;
  bool                           usable = false;

private:
  PredictionTable &table_;
  double           relative_step_;
  Eigen::VectorXd &z_;
};

class ReadingCost : public ceres::CostFunction
{
public:
  ReadingCost(const Shared &shared, const Observation &observation, Eigen::Index row, int n_parameters)
    : shared_(shared), observation_(observation), row_(row), n_parameters_(n_parameters)
  {
    set_num_residuals(1);
    mutable_parameter_block_sizes()->push_back(n_parameters);
  }

  bool Evaluate(double const *const *, double *residuals, double **jacobians) const override
  {
    if (!shared_.usable)
      return false;
    const auto r = residual(observation_, (*shared_.predictions)[row_]);
    if (!r)
      return false;
    residuals[0] = r->value;
    if (jacobians && jacobians[0])
      Eigen::Map<Eigen::RowVectorXd>(jacobians[0], n_parameters_) = r->slope * shared_.jacobian->row(row_);
    return true;
  }

private:
  const Shared      &shared_;
  const Observation &observation_;
  Eigen::Index       row_;
  int                n_parameters_;
};

/// The prior: z is standard normal.
class PriorCost : public ceres::CostFunction
{
public:
  explicit PriorCost(int n) : n_(n)
  {
    set_num_residuals(n);
    mutable_parameter_block_sizes()->push_back(n);
  }

  bool Evaluate(double const *const *parameters, double *residuals, double **jacobians) const override
  {
    std::copy_n(parameters[0], n_, residuals);
    if (jacobians && jacobians[0])
      Eigen::Map<Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>>(jacobians[0], n_, n_)
        .setIdentity();
    return true;
  }

private:
  int n_;
};

class WildLoss : public ceres::LossFunction
{
public:
  explicit WildLoss(double at) : at_(at) {}
  void Evaluate(double s, double out[3]) const override
  {
    const auto loss = wild_loss(s, at_);
    out[0] = loss.value;
    out[1] = loss.first;
    out[2] = loss.second;
  }

private:
  double at_;
};

class StopEarly : public ceres::IterationCallback
{
public:
  explicit StopEarly(const Shared &shared) : shared_(shared) {}
  ceres::CallbackReturnType operator()(const ceres::IterationSummary &summary) override
  {
    if (shared_.fault)
      return ceres::SOLVER_ABORT;
    if (summary.iteration == 0)
      return ceres::SOLVER_CONTINUE;
    const bool   taken = summary.step_is_successful;
    const double promised = // by the linearised model
      summary.relative_decrease != 0 ? summary.cost_change / summary.relative_decrease : within_noise;
    const bool settled = taken
                           ? std::abs(summary.cost_change) < settled_cost_change || promised < worth_a_step
                           : promised >= 0 && promised < within_noise;
    return settled ? ceres::SOLVER_TERMINATE_SUCCESSFULLY : ceres::SOLVER_CONTINUE;
  }

private:
  const Shared &shared_;
};

/// One solve from z on. robust_at = 0: plain least squares.
bool solve(const std::vector<Observation> &observations, PredictionTable &table, const Wish &wish,
           double robust_at, Eigen::VectorXd &z)
{
  Shared                  shared(table, wish.relative_step, z);
  ceres::Problem::Options problem_options;
  problem_options.evaluation_callback = &shared;
  ceres::Problem problem(problem_options);
  const int      n = int(z.size());
  problem.AddParameterBlock(z.data(), n);
  for (int k = 0; k < n; ++k)
  {
    problem.SetParameterLowerBound(z.data(), k, table.lowest()[k]);
    problem.SetParameterUpperBound(z.data(), k, table.highest()[k]);
  }
  for (std::size_t i = 0; i < observations.size(); ++i)
    if (!observations[i].held_out)
      problem.AddResidualBlock(new ReadingCost(shared, observations[i], Eigen::Index(i), n),
                               robust_at > 0 ? new WildLoss(robust_at) : nullptr, z.data());
  problem.AddResidualBlock(new PriorCost(n), nullptr, z.data());

  StopEarly              stop(shared);
  ceres::Solver::Options options;
  options.linear_solver_type = ceres::DENSE_QR;
  options.max_num_iterations = wish.greatest_iterations;
  options.num_threads = 1;
  options.logging_type = ceres::SILENT;
  options.max_num_line_search_step_size_iterations = 0; // a search along each step would double the runs
  options.update_state_every_iteration = true;
  options.callbacks.push_back(&stop);
  // A model that fails or is stopped is reported by us, not by the logger of Ceres.
  FLAGS_minloglevel = google::FATAL;
  ceres::Solver::Summary summary;
  ceres::Solve(options, &problem, &summary);
  if (shared.fault)
    std::rethrow_exception(shared.fault);
  return summary.termination_type == ceres::CONVERGENCE || summary.termination_type == ceres::USER_SUCCESS;
}

/// Greatest misfit of the readings used, in doubts.
double greatest_misfit(const std::vector<Observation> &observations, const Eigen::VectorXd &predictions)
{
  double greatest = 0;
  for (std::size_t i = 0; i < observations.size(); ++i)
    if (!observations[i].held_out)
      if (const auto r = residual(observations[i], predictions[Eigen::Index(i)]))
        greatest = std::max(greatest, std::abs(r->value));
  return greatest;
}
} // namespace

Fit fit(const std::vector<Observation> &observations, PredictionTable &table, const Wish &wish)
{
  const auto n = table.lowest().size();
  Fit        fit;
  fit.z = Eigen::VectorXd::Zero(n).cwiseMax(table.lowest()).cwiseMin(table.highest());
  const auto jacobian = table.jacobian(fit.z, wish.relative_step);
  if (!jacobian)
    throw PredictionFailed("The model cannot be computed with the values assumed at the start. Check the "
                           "stack and the assumed values of the unknowns.");
  fit.start_jacobian = *jacobian;
  fit.start_predictions = *table.ask({fit.z})[0];

  fit.converged = solve(observations, table, wish, 0, fit.z);
  // Stages of a factor 3: each starts close to where the one before ended.
  for (double misfit = greatest_misfit(observations, *table.ask({fit.z})[0]), at = misfit / 3;
       misfit > wish.robust_at; at /= 3)
  {
    at = std::max(at, wish.robust_at);
    fit.converged = solve(observations, table, wish, at, fit.z);
    if (at <= wish.robust_at)
      break;
  }
  if (!fit.converged)
    fit.why_not = "the fit was still changing when its steps ran out; take the numbers as rough";
  return fit;
}
} // namespace solemech::settle
