// SPDX-License-Identifier: Apache-2.0
#include "tools/study/prediction_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::settle
{
namespace
{
std::vector<double> key_of(const Eigen::VectorXd &z)
{
  return {z.data(), z.data() + z.size()};
}
} // namespace

PredictionTable::PredictionTable(const std::vector<Parameter> &parameters, std::size_t n_observations,
                                 const Predict &predict)
  : parameters_(parameters), n_observations_(n_observations), predict_(predict), lowest_(parameters.size()),
    highest_(parameters.size())
{
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    lowest_[k] = std::log(parameters[k].lowest / parameters[k].median) / parameters[k].spread;
    highest_[k] = std::log(parameters[k].highest / parameters[k].median) / parameters[k].spread;
  }
}

std::vector<double> PredictionTable::values(const Eigen::VectorXd &z) const
{
  std::vector<double> values(parameters_.size());
  for (std::size_t k = 0; k < values.size(); ++k)
    values[k] = std::clamp(parameters_[k].median * std::exp(parameters_[k].spread * z[k]),
                           parameters_[k].lowest, parameters_[k].highest);
  return values;
}

std::vector<std::optional<Eigen::VectorXd>> PredictionTable::ask(const std::vector<Eigen::VectorXd> &points)
{
  std::vector<std::vector<double>> keys, sets;
  for (const auto &z : points)
    if (const auto key = key_of(z);
        !kept_.contains(key) && std::find(keys.begin(), keys.end(), key) == keys.end())
    {
      keys.push_back(key);
      sets.push_back(values(z));
    }
  if (!sets.empty())
  {
    const auto rows = predict_(sets);
    if (rows.size() != sets.size())
      throw PredictionFailed(
        fmt::format("{} parameter sets were asked for, {} came back", sets.size(), rows.size()));
    for (std::size_t i = 0; i < rows.size(); ++i)
    {
      auto &kept = kept_[keys[i]];
      if (!rows[i].empty() && rows[i].size() != n_observations_)
        throw PredictionFailed(
          fmt::format("{} predictions came back for {} readings", rows[i].size(), n_observations_));
      if (!rows[i].empty() &&
          std::all_of(rows[i].begin(), rows[i].end(), [](double y) { return std::isfinite(y); }))
        kept = Eigen::Map<const Eigen::VectorXd>(rows[i].data(), Eigen::Index(n_observations_));
      else
        ++n_failed_;
    }
    n_evaluations_ += int(sets.size());
  }
  std::vector<std::optional<Eigen::VectorXd>> answers;
  for (const auto &z : points)
    answers.push_back(kept_.at(key_of(z)));
  return answers;
}

std::optional<Eigen::MatrixXd> PredictionTable::jacobian(const Eigen::VectorXd &z, double relative_step)
{
  const auto                   n = z.size();
  Eigen::VectorXd              step(n);
  std::vector<Eigen::VectorXd> points{z};
  std::vector<Eigen::Index>    moved;
  for (Eigen::Index k = 0; k < n; ++k)
  {
    if (first_predictions_ && parameters_[std::size_t(k)].minor)
      continue;
    moved.push_back(k);
    step[k] = std::log1p(relative_step) / parameters_[k].spread;
    if (z[k] + step[k] > highest_[k])
      step[k] = -step[k];
    points.push_back(z);
    points.back()[k] += step[k];
  }
  const auto answers = ask(points);
  if (!answers[0])
    return std::nullopt;
  Eigen::MatrixXd              jacobian = Eigen::MatrixXd::Zero(answers[0]->size(), n);
  std::vector<Eigen::VectorXd> other_side;
  std::vector<Eigen::Index>    failed;
  for (std::size_t m = 0; m < moved.size(); ++m)
    if (const auto k = moved[m]; answers[m + 1])
      jacobian.col(k) = (*answers[m + 1] - *answers[0]) / step[k];
    else
    {
      failed.push_back(k);
      other_side.push_back(z);
      other_side.back()[k] -= step[k];
    }
  const auto second = ask(other_side);
  for (std::size_t i = 0; i < failed.size(); ++i)
    if (second[i])
      jacobian.col(failed[i]) = (*answers[0] - *second[i]) / step[failed[i]];
    else
      notes_.push_back(fmt::format(
        "runs with a little more and a little less {} both failed; its influence is assumed to be zero there",
        parameters_[failed[i]].name));
  if (!first_predictions_)
  {
    first_predictions_ = *answers[0];
    first_jacobian_ = jacobian;
  }
  else
    for (Eigen::Index k = 0; k < n; ++k)
      if (parameters_[std::size_t(k)].minor)
        for (Eigen::Index i = 0; i < jacobian.rows(); ++i)
        {
          const double before = (*first_predictions_)[i];
          jacobian(i, k) = first_jacobian_(i, k) * (before != 0 ? (*answers[0])[i] / before : 1);
        }
  return jacobian;
}
} // namespace solemech::settle
