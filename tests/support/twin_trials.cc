// SPDX-License-Identifier: Apache-2.0
#include "tests/support/twin_trials.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <cmath>
#include <random>

namespace solemech::tests
{
namespace
{
constexpr double half_band = 1.6448536; // 90 % of a normal distribution, in standard deviations

bool holds(const settle::Band &band, double truth)
{
  return band.low <= truth && truth <= band.high;
}
} // namespace

std::string TwinCount::text() const
{
  return fmt::format(
    "{} trials: parameters in band {:.0f} % (sampled {:.0f} %), predictions {:.0f} %, lean {:.2f} half bands "
    "(chance {:.2f}), {} of {} readings disagree, {:.1f} runs of the model a trial, {} not converged",
    n_trials, 100 * parameters_share(), 100 * sampled_share(), 100 * predictions_share(),
    fmt::join(lean, " "), fmt::join(lean_noise, " "), n_disagree, n_predictions,
    double(n_evaluations) / n_trials, n_not_converged);
}

TwinCount twin_trials(const TwinBench &bench, int n_trials, unsigned seed,
                      const std::function<void(const TwinCount &)> &told)
{
  std::mt19937_64                  random(seed);
  std::normal_distribution<double> normal;
  const auto                       n = bench.parameters.size();
  TwinCount                        count;
  std::vector<double>              sum(n, 0), squares(n, 0);
  for (int trial = 0; trial < n_trials; ++trial)
  {
    std::vector<double> truth;
    for (const auto &p : bench.parameters)
      truth.push_back(p.median * std::exp(p.spread * normal(random)));
    const auto                       exact = bench.predict({truth}).at(0);
    std::vector<settle::Observation> readings;
    for (std::size_t i = 0; i < exact.size(); ++i)
    {
      const double doubt = bench.doubts[i] * (bench.relative ? exact[i] : 1);
      readings.push_back({"reading " + std::to_string(i + 1), exact[i] + doubt * normal(random), doubt});
    }
    settle::Wish wish;
    wish.n_samples = 1000;
    const auto answer = settle::settle(bench.parameters, readings, bench.predict, wish);
    count.n_trials = trial + 1;
    count.n_evaluations += answer.n_evaluations;
    count.n_not_converged += !answer.converged;
    for (std::size_t k = 0; k < n; ++k)
    {
      ++count.n_parameters;
      count.n_parameters_in += holds(answer.parameters[k].band, truth[k]);
      count.n_sampled_in += holds(answer.parameters[k].sampled, truth[k]);
      const double off =
        std::log(answer.values[k] / truth[k]) / (half_band * std::sqrt(answer.covariance[k][k]));
      sum[k] += off;
      squares[k] += off * off;
    }
    for (std::size_t i = 0; i < exact.size(); ++i)
    {
      ++count.n_predictions;
      count.n_predictions_in += holds(answer.observations[i].predicted, exact[i]);
      count.n_disagree += answer.observations[i].verdict == settle::Verdict::disagree;
    }
    count.lean.assign(n, 0);
    count.lean_noise.assign(n, 0);
    for (std::size_t k = 0; k < n; ++k)
    {
      count.lean[k] = sum[k] / count.n_trials;
      count.lean_noise[k] =
        std::sqrt(squares[k] / count.n_trials - count.lean[k] * count.lean[k]) / std::sqrt(count.n_trials);
    }
    if (told)
      told(count);
  }
  return count;
}
} // namespace solemech::tests
