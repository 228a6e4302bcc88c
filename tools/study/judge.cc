// SPDX-License-Identifier: Apache-2.0
#include "tools/study/judge.h"

#include "tools/study/residual.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace solemech::settle
{
namespace
{
constexpr double outside_99 = 2.5758293035489004; // normal distribution, two-sided
constexpr double pair_limit = 13.815510557964274; // -2 ln 0.001: chi-square of two degrees of freedom

/// Band of half width `half` doubts around a misfit, as values of the reading.
Band in_units(const Observation &observation, double misfit, double half)
{
  const auto unit = [&](double r) {
    return observation.by_ratio ? observation.value * std::exp(r * observation.doubt / observation.value)
                                : observation.value + r * observation.doubt;
  };
  return {unit(misfit), unit(misfit - half), unit(misfit + half)};
}

Verdict verdict_of(const Observation &observation, double misfit, double variance)
{
  const double together = std::sqrt(1 + variance);
  if (observation.meaning == Meaning::at_least && misfit >= 0)
    return Verdict::agree;
  if (std::abs(misfit) > outside_99 * together)
    return Verdict::disagree;
  const bool says_much =
    doubts_in_half_band * together * observation.doubt <= 0.5 * std::abs(observation.value);
  return std::abs(misfit) <= doubts_in_half_band * together && says_much ? Verdict::agree
                                                                         : Verdict::cannot_tell;
}

/// Squared distance, over its variance, of readings `which` from what the priors alone predict.
double distance(const Linear &linear, const Eigen::VectorXd &z, const std::vector<Eigen::Index> &which)
{
  const auto      n = Eigen::Index(which.size());
  Eigen::VectorXd d(n);
  Eigen::MatrixXd rows(n, linear.rows.cols());
  for (Eigen::Index i = 0; i < n; ++i)
  {
    rows.row(i) = linear.rows.row(which[std::size_t(i)]);
    d[i] = linear.misfit[which[std::size_t(i)]] - rows.row(i).dot(z);
  }
  const Eigen::MatrixXd variance = rows * rows.transpose() + Eigen::MatrixXd::Identity(n, n);
  return d.dot(variance.ldlt().solve(d));
}
} // namespace

void judge(const std::vector<Observation> &observations, const Linear &linear,
           const Eigen::VectorXd &predictions, std::vector<SettledObservation> &judged)
{
  for (std::size_t i = 0; i < observations.size(); ++i)
  {
    const auto  &observation = observations[i];
    auto        &answer = judged[i];
    const auto   row = linear.rows.row(Eigen::Index(i));
    const double misfit = linear.misfit[Eigen::Index(i)], weight = linear.weight[Eigen::Index(i)];
    const double q = row * linear.covariance * row.transpose();
    const double others = std::max(1 - weight * q, 1e-12);

    answer.name = observation.name;
    answer.held_out = observation.held_out;
    const auto counted = residual(observation, predictions[Eigen::Index(i)]);
    answer.misfit = counted ? counted->value : 0;
    answer.weight = observation.held_out || answer.misfit == 0 ? 1 : weight;
    answer.measured = in_units(observation, 0, doubts_in_half_band);
    answer.predicted = in_units(observation, misfit, doubts_in_half_band * std::sqrt(q));
    answer.without_it = in_units(observation, misfit / others, doubts_in_half_band * std::sqrt(q / others));
    answer.verdict = verdict_of(observation, misfit / others, q / others);
  }
}

void find_contradictions(const std::vector<Observation> &observations, const Linear &at_start,
                         const Linear &at_end, const Eigen::VectorXd &start, const Eigen::VectorXd &end,
                         std::vector<SettledObservation> &judged)
{
  std::vector<Eigen::Index> usable; // pull on the model, and are within reach one by one
  for (std::size_t i = 0; i < observations.size(); ++i)
  {
    const auto k = Eigen::Index(i);
    const bool holds = observations[i].meaning == Meaning::at_least && judged[i].misfit == 0;
    const auto reached = [&](const Linear &linear, const Eigen::VectorXd &z) {
      return distance(linear, z, {k}) <= outside_99 * outside_99;
    };
    if (holds || observations[i].held_out)
      continue;
    judged[i].beyond_assumptions = !reached(at_start, start) && !reached(at_end, end);
    if (!judged[i].beyond_assumptions)
      usable.push_back(k);
  }
  for (std::size_t a = 0; a < usable.size(); ++a)
    for (std::size_t b = a + 1; b < usable.size(); ++b)
    {
      const std::vector<Eigen::Index> pair{usable[a], usable[b]};
      if (distance(at_start, start, pair) <= pair_limit || distance(at_end, end, pair) <= pair_limit)
        continue;
      judged[std::size_t(pair[0])].contradicts.push_back(std::size_t(pair[1]));
      judged[std::size_t(pair[1])].contradicts.push_back(std::size_t(pair[0]));
    }
}
} // namespace solemech::settle
