// SPDX-License-Identifier: Apache-2.0
#include "tools/study/sampling.h"

#include "tools/study/residual.h"

#include <Eigen/Cholesky>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <random>

namespace solemech::settle
{
namespace
{
constexpr double wider = 1.2;

Eigen::VectorXd standard_normal(std::mt19937_64 &random, Eigen::Index n)
{
  std::normal_distribution<double> normal;
  Eigen::VectorXd                  draw(n);
  for (auto &x : draw)
    x = normal(random);
  return draw;
}

Band weighted_band(const std::vector<double> &values, const std::vector<double> &weights)
{
  std::vector<std::size_t> order(values.size());
  std::iota(order.begin(), order.end(), 0);
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return values[a] < values[b]; });
  const double total = std::accumulate(weights.begin(), weights.end(), 0.0);
  const auto   quantile = [&](double share) {
    double sum = 0;
    for (const auto i : order)
      if ((sum += weights[i]) >= share * total)
        return values[i];
    return values[order.back()];
  };
  return {quantile(0.5), quantile(0.05), quantile(0.95)};
}
} // namespace

std::vector<Eigen::VectorXd> draw_check_points(const PredictionTable &table, const Eigen::VectorXd &centre,
                                               const Linear &linear, int n_points, unsigned seed)
{
  std::mt19937_64              random(seed);
  const Eigen::MatrixXd        root = linear.covariance.llt().matrixL();
  std::vector<Eigen::VectorXd> points;
  for (int i = 0; i < n_points; ++i)
    points.emplace_back((centre + root * standard_normal(random, centre.size()))
                          .cwiseMax(table.lowest())
                          .cwiseMin(table.highest()));
  return points;
}

double model_error(const QuadraticModel &model, const std::vector<Observation> &observations,
                   const std::vector<Eigen::VectorXd>                &points,
                   const std::vector<std::optional<Eigen::VectorXd>> &answers)
{
  double greatest = 0;
  for (std::size_t p = 0; p < points.size(); ++p)
    if (answers[p])
    {
      const Eigen::VectorXd predicted = model.predict(points[p]);
      for (std::size_t i = 0; i < observations.size(); ++i)
      {
        const auto difference = two_sided_residual(observations[i], predicted[Eigen::Index(i)]);
        const auto exact = two_sided_residual(observations[i], (*answers[p])[Eigen::Index(i)]);
        if (difference && exact)
          greatest = std::max(greatest, std::abs(difference->value - exact->value));
      }
    }
  return greatest;
}

Sampled sample(const PredictionTable &table, const std::vector<Observation> &observations,
               const QuadraticModel &model, const Linear &linear, const Wish &wish)
{
  // Another stream than that of the check points.
  std::mt19937_64       random(wish.seed + 0x9e3779b97f4a7c15ull);
  const Eigen::MatrixXd root = linear.covariance.llt().matrixL();
  const auto            n = model.centre.size(), n_predictions = model.base.size();
  const auto            n_samples = std::size_t(std::max(1, wish.n_samples));

  std::vector<std::vector<double>> parameters(n, std::vector<double>(n_samples)),
    predictions(n_predictions, std::vector<double>(n_samples));
  std::vector<double> log_weights(n_samples), weights(n_samples);
  for (std::size_t s = 0; s < n_samples; ++s)
  {
    const auto            draw = standard_normal(random, n);
    const Eigen::VectorXd z = model.centre + wider * (root * draw);
    const bool            inside =
      (z.array() >= table.lowest().array()).all() && (z.array() <= table.highest().array()).all();
    const auto predicted = model.predict(z);
    log_weights[s] =
      inside ? 0.5 * (draw.squaredNorm() - posterior_cost(observations, predicted, z, wish.robust_at))
             : -std::numeric_limits<double>::infinity();
    const auto values = table.values(z);
    for (Eigen::Index k = 0; k < n; ++k)
      parameters[std::size_t(k)][s] = values[std::size_t(k)];
    for (Eigen::Index i = 0; i < n_predictions; ++i)
      predictions[std::size_t(i)][s] = predicted[i];
  }
  const double greatest = *std::max_element(log_weights.begin(), log_weights.end());
  Sampled      sampled;
  if (!std::isfinite(greatest))
    return sampled;
  double sum = 0, sum_squares = 0;
  for (std::size_t s = 0; s < n_samples; ++s)
  {
    weights[s] = std::exp(log_weights[s] - greatest);
    sum += weights[s];
    sum_squares += weights[s] * weights[s];
  }
  sampled.effective_share = sum * sum / sum_squares / double(n_samples);
  for (const auto &values : parameters)
    sampled.parameters.push_back(weighted_band(values, weights));
  for (const auto &values : predictions)
    sampled.predictions.push_back(weighted_band(values, weights));
  return sampled;
}
} // namespace solemech::settle
