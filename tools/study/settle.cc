// SPDX-License-Identifier: Apache-2.0
#include "tools/study/settle.h"

#include "tools/study/fit.h"
#include "tools/study/judge.h"
#include "tools/study/open_directions.h"
#include "tools/study/sampling.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::settle
{
std::string shown(const std::function<std::string(double)> &how, double value)
{
  return how ? how(value) : fmt::format("{:.4g}", value);
}

namespace
{
Band log_normal_band(const Parameter &p, double z, double deviation)
{
  const auto at = [&](double x) {
    return std::clamp(p.median * std::exp(p.spread * x), p.lowest, p.highest);
  };
  return {at(z), at(z - doubts_in_half_band * deviation), at(z + doubts_in_half_band * deviation)};
}

std::vector<SettledParameter> settled_parameters(const std::vector<Parameter> &parameters,
                                                 const PredictionTable &table, const Eigen::VectorXd &z,
                                                 const Eigen::MatrixXd &covariance)
{
  std::vector<SettledParameter> answers;
  for (std::size_t k = 0; k < parameters.size(); ++k)
  {
    const auto       i = Eigen::Index(k);
    const double     deviation = std::sqrt(covariance(i, i));
    SettledParameter answer;
    answer.name = parameters[k].name;
    answer.band = log_normal_band(parameters[k], z[i], deviation);
    answer.before = log_normal_band(parameters[k], 0, 1);
    answer.sampled = answer.band;
    answer.doubt_left = std::min(1.0, deviation);
    answer.settled = answer.doubt_left <= 0.5;
    answer.at_limit = z[i] <= table.lowest()[i] || z[i] >= table.highest()[i];
    answers.push_back(answer);
  }
  return answers;
}

/// Greatest difference of the ends of two bands, in half widths of the first.
double difference(const Band &linear, const Band &sampled)
{
  const double half = 0.5 * (linear.high - linear.low);
  return half > 0 ? std::max(std::abs(linear.low - sampled.low), std::abs(linear.high - sampled.high)) / half
                  : 0;
}

void take_samples(Settled &settled, const Sampled &sampled, double model_error, int n_check_runs)
{
  auto &check = settled.check;
  check.done = true;
  check.surrogate_error = model_error;
  check.effective_share = sampled.effective_share;
  check.n_check_runs = n_check_runs;
  if (sampled.parameters.empty())
  {
    check.words = "The bands could not be checked by sampling.";
    return;
  }
  for (std::size_t k = 0; k < settled.parameters.size(); ++k)
  {
    auto &parameter = settled.parameters[k];
    parameter.sampled = sampled.parameters[k];
    check.linear_error = std::max(check.linear_error, difference(parameter.band, parameter.sampled));
  }
  for (std::size_t i = 0; i < settled.observations.size(); ++i)
  {
    auto &observation = settled.observations[i];
    observation.sampled = sampled.predictions[i];
    check.linear_error = std::max(check.linear_error, difference(observation.predicted, observation.sampled));
  }
  const bool good = check.linear_error < 0.25 && check.surrogate_error < 0.5 && check.effective_share > 0.3;
  check.words = fmt::format(
    "{} against {} sampled cases: the ends of the bands differ by up to {:.0f} % of a half band. The quick "
    "model behind the samples is off by up to {:.2g} standard errors of a reading in {} runs.",
    good ? "The bands hold" : "The bands are rough", "all", 100 * check.linear_error, check.surrogate_error,
    n_check_runs);
}

void add_remarks(Settled &settled, const std::vector<Parameter> &parameters,
                 const std::vector<Observation> &observations)
{
  auto &remarks = settled.remarks;
  for (std::size_t k = 0; k < settled.parameters.size(); ++k)
    if (const auto &parameter = settled.parameters[k]; parameter.at_limit)
      remarks.push_back(fmt::format("{} was pulled to its limit, {}: a reading or an assumption is wrong.",
                                    parameter.name, shown(parameters[k].shown, parameter.band.value)));
  for (std::size_t i = 0; i < settled.observations.size(); ++i)
  {
    const auto &o = settled.observations[i];
    const auto &how = observations[i].shown;
    if (o.beyond_assumptions)
      remarks.push_back(fmt::format("{}: no likely value of the unknowns gives {}. Before any reading the "
                                    "model said {} ({} to {}). Check the reading, its unit and the stack.",
                                    o.name, shown(how, observations[i].value), shown(how, o.predicted_before),
                                    shown(how, o.before.low), shown(how, o.before.high)));
    for (const auto j : o.contradicts)
      if (j > i)
        remarks.push_back(fmt::format("{} and {} cannot both be right: no likely value of the unknowns gives "
                                      "both {} and {}. Repeat one of the two readings.",
                                      o.name, observations[j].name, shown(how, observations[i].value),
                                      shown(observations[j].shown, observations[j].value)));
    if (o.weight < 1)
      remarks.push_back(
        fmt::format("{} is {:.1f} standard errors from what fits the rest, so it counts only {:.0f} %.",
                    o.name, std::abs(o.misfit), 100 * o.weight));
  }
}

/// Goes on to where the quadratic model has its least cost, when a run there confirms it but for noise. A fit
/// that was still moving had arrived when that is less than half a standard deviation away.
void polish(const std::vector<Observation> &observations, PredictionTable &table, const Wish &wish,
            const Linear &first, Fit &best, QuadraticModel &model, Eigen::VectorXd &base)
{
  constexpr double      noise_of_cost = 0.04; // a fifth of a doubt, squared
  const Eigen::VectorXd z = least_cost(model, observations, table, wish.robust_at), move = z - best.z;
  const auto            there = table.ask({z})[0];
  if (!there || posterior_cost(observations, *there, z, wish.robust_at) >
                  posterior_cost(observations, base, best.z, wish.robust_at) + noise_of_cost)
    return;
  if (!best.converged && move.dot(move + first.fisher * move) < 0.25)
  {
    best.converged = true;
    best.why_not.clear();
  }
  model = model.about(z);
  base = *there;
  best.z = z;
}

/// Minor numbers to a power of ten below a fifth of their standard error: further digits come from the noise
/// of the runs, and would tell two equal parts apart.
void round_minor(const std::vector<Parameter> &parameters, const Eigen::VectorXd &deviation,
                 std::vector<double> &values)
{
  for (std::size_t k = 0; k < values.size(); ++k)
    if (const auto &p = parameters[k]; p.minor)
    {
      const double step =
        std::pow(10, std::floor(std::log10(0.2 * deviation[Eigen::Index(k)] * p.spread * values[k])));
      values[k] = std::clamp(std::round(values[k] / step) * step, p.lowest, p.highest);
    }
}

std::vector<std::vector<double>> rows_of(const Eigen::MatrixXd &matrix)
{
  std::vector<std::vector<double>> rows(matrix.rows(), std::vector<double>(matrix.cols()));
  for (Eigen::Index i = 0; i < matrix.rows(); ++i)
    for (Eigen::Index j = 0; j < matrix.cols(); ++j)
      rows[std::size_t(i)][std::size_t(j)] = matrix(i, j);
  return rows;
}
} // namespace

Settled settle(const std::vector<Parameter> &parameters, const std::vector<Observation> &observations,
               const Predict &predict, const Wish &wish)
{
  check_inputs(parameters, observations, wish.predict_only);
  const auto      n = Eigen::Index(parameters.size());
  PredictionTable table(parameters, observations.size(), predict);

  Fit        best = fit(observations, table, wish);
  const auto jacobian = table.jacobian(best.z, wish.relative_step);
  auto       base = table.ask({best.z})[0];
  if (!jacobian || !base)
    throw PredictionFailed("The model cannot be computed at the values that fit best.");
  const Linear first = linearise(observations, *base, *jacobian, wish.robust_at);

  std::vector<Eigen::VectorXd>                check_points;
  std::vector<std::optional<Eigen::VectorXd>> check_answers;
  if (wish.check_by_sampling)
    check_points = draw_check_points(table, best.z, first, wish.n_check_runs, wish.seed);
  QuadraticModel model;
  if (wish.check_by_sampling)
    model =
      quadratic_model(table, parameters, observations, best.z, *jacobian, first, check_points, check_answers);
  if (wish.check_by_sampling)
    polish(observations, table, wish, first, best, model, *base);
  const Eigen::MatrixXd final_jacobian = wish.check_by_sampling ? model.jacobian() : *jacobian;
  const Linear          last = linearise(observations, *base, final_jacobian, wish.robust_at);

  Settled settled;
  settled.parameters = settled_parameters(parameters, table, best.z, last.covariance);
  settled.observations.resize(observations.size());
  judge(observations, last, *base, settled.observations);
  const Linear start = linearise(observations, best.start_predictions, best.start_jacobian, wish.robust_at);
  const Eigen::VectorXd medians = Eigen::VectorXd::Zero(n).cwiseMax(table.lowest()).cwiseMin(table.highest());
  find_contradictions(observations, start, last, medians, best.z, settled.observations);
  double sum = 0;
  int    n_used = 0;
  for (Eigen::Index i = 0; i < best.start_predictions.size(); ++i)
  {
    auto        &o = settled.observations[std::size_t(i)];
    const double y = best.start_predictions[i];
    const double half = doubts_in_half_band * best.start_jacobian.row(i).norm();
    o.predicted_before = y;
    o.before = {y, y - half, y + half};
    o.sampled = o.predicted;
    if (!o.held_out)
    {
      sum += o.misfit * o.misfit;
      ++n_used;
    }
  }
  settled.misfit = n_used > 0 ? std::sqrt(sum / n_used) : 0;
  settled.open = open_directions(parameters, last);
  if (wish.check_by_sampling)
    take_samples(settled, sample(table, observations, model, last, wish),
                 model_error(model, observations, check_points, check_answers), int(check_points.size()));

  Eigen::VectorXd spread(n);
  for (Eigen::Index k = 0; k < n; ++k)
    spread[k] = parameters[std::size_t(k)].spread;
  const Eigen::VectorXd deviation = last.covariance.diagonal().cwiseSqrt();
  settled.values = table.values(best.z);
  round_minor(parameters, deviation, settled.values);
  settled.predictions.assign(base->data(), base->data() + base->size());
  settled.jacobian = rows_of(final_jacobian * spread.cwiseInverse().asDiagonal());
  settled.covariance = rows_of(spread.asDiagonal() * last.covariance * spread.asDiagonal());
  settled.correlation =
    rows_of(deviation.cwiseInverse().asDiagonal() * last.covariance * deviation.cwiseInverse().asDiagonal());
  settled.converged = best.converged;
  settled.why_not = best.why_not;
  settled.n_evaluations = table.n_evaluations();
  add_remarks(settled, parameters, observations);
  settled.remarks.insert(settled.remarks.end(), table.notes().begin(), table.notes().end());
  return settled;
}
} // namespace solemech::settle
