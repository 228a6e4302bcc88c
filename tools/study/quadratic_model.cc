// SPDX-License-Identifier: Apache-2.0
#include "tools/study/quadratic_model.h"

#include "tools/study/residual.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>

namespace solemech::settle
{
namespace
{
constexpr double greatest_log_step = 0.35;
/// Shorter arms than this share of the wanted one measure rounding and solver noise instead of curvature.
constexpr double shortest_arm = 0.1;

/// Longest way from `centre` along `direction` up to `wanted` that stays within the limits.
double room(const PredictionTable &table, const Eigen::VectorXd &centre, const Eigen::VectorXd &direction,
            double wanted)
{
  for (Eigen::Index k = 0; k < centre.size(); ++k)
    if (direction[k] != 0)
    {
      const double limit = direction[k] > 0 ? table.highest()[k] : table.lowest()[k];
      wanted = std::min(wanted, std::max(0.0, (limit - centre[k]) / direction[k]));
    }
  return wanted;
}
/// Numbers of the parameters of each part. Minor parameters keep an axis of their own, straight and without
/// runs.
std::map<int, std::vector<Eigen::Index>> major_of_parts(const std::vector<Parameter> &parameters)
{
  std::map<int, std::vector<Eigen::Index>> parts;
  for (std::size_t k = 0; k < parameters.size(); ++k)
    if (!parameters[k].minor)
      parts[parameters[k].part].push_back(Eigen::Index(k));
  return parts;
}

/// Principal axes and standard deviations along them of some of the parameters, the others as they are.
void lay_out_axes(const std::vector<Eigen::Index> &some, const Eigen::MatrixXd &covariance,
                  Eigen::MatrixXd &axes, Eigen::VectorXd &lengths)
{
  const Eigen::MatrixXd                                block = covariance(some, some);
  const Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd> eigen(block);
  for (std::size_t a = 0; a < some.size(); ++a)
  {
    lengths[some[a]] = std::sqrt(std::max(0.0, eigen.eigenvalues()[Eigen::Index(a)]));
    for (std::size_t b = 0; b < some.size(); ++b)
      axes(some[b], some[a]) = eigen.eigenvectors()(Eigen::Index(b), Eigen::Index(a));
  }
}
} // namespace

Eigen::VectorXd QuadraticModel::predict(const Eigen::VectorXd &z) const
{
  const Eigen::VectorXd t = axes.transpose() * (z - centre);
  Eigen::VectorXd       y = base + slope * t + 0.5 * curvature * t.cwiseAbs2();
  for (Eigen::Index i = 0; i < y.size(); ++i)
    if (logarithmic[std::size_t(i)])
      y[i] = std::exp(y[i]);
  return y;
}

Eigen::MatrixXd QuadraticModel::jacobian() const
{
  Eigen::MatrixXd jacobian = slope * axes.transpose();
  for (Eigen::Index i = 0; i < jacobian.rows(); ++i)
    if (logarithmic[std::size_t(i)])
      jacobian.row(i) *= std::exp(base[i]);
  return jacobian;
}

QuadraticModel QuadraticModel::about(const Eigen::VectorXd &z) const
{
  const Eigen::VectorXd t = axes.transpose() * (z - centre);
  QuadraticModel        moved = *this;
  moved.centre = z;
  moved.base = base + slope * t + 0.5 * curvature * t.cwiseAbs2();
  moved.slope = slope + curvature * t.asDiagonal();
  return moved;
}

double posterior_cost(const std::vector<Observation> &observations, const Eigen::VectorXd &predictions,
                      const Eigen::VectorXd &z, double robust_at)
{
  double sum = z.squaredNorm();
  for (std::size_t i = 0; i < observations.size(); ++i)
    if (!observations[i].held_out)
    {
      const auto r = residual(observations[i], predictions[Eigen::Index(i)]);
      if (!r)
        return std::numeric_limits<double>::infinity();
      sum += wild_loss(r->value * r->value, robust_at).value;
    }
  return sum;
}

Eigen::VectorXd least_cost(const QuadraticModel &model, const std::vector<Observation> &observations,
                           const PredictionTable &table, double robust_at)
{
  constexpr int   n_steps = 10; // Gauss-Newton on a smooth model close to its least cost: two or three matter
  Eigen::VectorXd z = model.centre;
  for (int step = 0; step < n_steps; ++step)
  {
    const auto            here = model.about(z);
    const Linear          linear = linearise(observations, here.predict(z), here.jacobian(), robust_at);
    const Eigen::VectorXd gradient = z + linear.rows.transpose() * linear.weight.cwiseProduct(linear.misfit);
    Eigen::VectorXd       next =
      (z - linear.covariance * gradient).cwiseMax(table.lowest()).cwiseMin(table.highest());
    const Eigen::VectorXd move = next - model.centre;
    const double          deviations = std::sqrt(move.dot(move + linear.fisher * move));
    if (deviations > 1)
      next = model.centre + move / deviations;
    z = next;
  }
  return z;
}

Linear linearise(const std::vector<Observation> &observations, const Eigen::VectorXd &predictions,
                 const Eigen::MatrixXd &jacobian, double robust_at)
{
  const auto n = Eigen::Index(observations.size()), n_parameters = jacobian.cols();
  Linear     linear{
    Eigen::VectorXd::Zero(n), Eigen::VectorXd::Zero(n), Eigen::MatrixXd::Zero(n, n_parameters), {}, {}};
  for (Eigen::Index i = 0; i < n; ++i)
  {
    const auto &observation = observations[std::size_t(i)];
    const auto  r = two_sided_residual(observation, predictions[i]);
    if (!r)
      continue;
    linear.misfit[i] = r->value;
    linear.rows.row(i) = r->slope * jacobian.row(i);
    const bool holds = observation.meaning == Meaning::at_least && r->value >= 0;
    linear.weight[i] = observation.held_out || holds ? 0 : wild_loss(r->value * r->value, robust_at).first;
  }
  linear.fisher = linear.rows.transpose() * linear.weight.asDiagonal() * linear.rows;
  linear.covariance = (Eigen::MatrixXd::Identity(n_parameters, n_parameters) + linear.fisher).inverse();
  return linear;
}

QuadraticModel quadratic_model(PredictionTable &table, const std::vector<Parameter> &parameters,
                               const std::vector<Observation> &observations, const Eigen::VectorXd &centre,
                               const Eigen::MatrixXd &jacobian, const Linear &first,
                               const std::vector<Eigen::VectorXd>          &more,
                               std::vector<std::optional<Eigen::VectorXd>> &more_answers)
{
  const auto     n = centre.size();
  QuadraticModel model;
  model.centre = centre;
  model.axes = Eigen::MatrixXd::Identity(n, n);
  Eigen::VectorXd lengths = Eigen::VectorXd::Zero(n);
  for (const auto &[part, of_part] : major_of_parts(parameters))
    lay_out_axes(of_part, first.covariance, model.axes, lengths);
  for (const auto &observation : observations)
    model.logarithmic.push_back(observation.by_ratio);
  model.curvature = Eigen::MatrixXd::Zero(jacobian.rows(), n);

  struct Arm
  {
    Eigen::Index axis;
    double       length;
  };
  std::vector<Arm>             arms;
  std::vector<Eigen::VectorXd> points{centre};
  for (Eigen::Index k = 0; k < n; ++k)
  {
    if (parameters[std::size_t(k)].minor)
      continue;
    const Eigen::VectorXd axis = model.axes.col(k);
    double                wanted = lengths[k];
    for (Eigen::Index j = 0; j < n; ++j)
      if (axis[j] != 0)
        wanted = std::min(wanted, greatest_log_step / std::abs(parameters[std::size_t(j)].spread * axis[j]));
    for (const double side : {1.0, -1.0})
      if (const double length = room(table, centre, side * axis, wanted); length > shortest_arm * wanted)
      {
        arms.push_back({k, side * length});
        points.push_back(centre + side * length * axis);
      }
  }
  points.insert(points.end(), more.begin(), more.end());
  const auto answers = table.ask(points);
  more_answers.assign(answers.end() - std::ptrdiff_t(more.size()), answers.end());
  // As compared: by ratio, logarithms. A prediction that has none leaves its run out.
  const auto compared = [&](const std::optional<Eigen::VectorXd> &y) {
    auto c = y;
    for (std::size_t i = 0; c && i < observations.size(); ++i)
      if (auto &entry = (*c)[Eigen::Index(i)]; observations[i].by_ratio)
      {
        if (entry <= 0)
          return std::optional<Eigen::VectorXd>();
        entry = std::log(entry);
      }
    return c;
  };
  model.base = *compared(answers[0]);
  model.slope = jacobian * model.axes;
  for (Eigen::Index i = 0; i < model.slope.rows(); ++i)
    if (observations[std::size_t(i)].by_ratio)
      model.slope.row(i) /= (*answers[0])[i];

  for (Eigen::Index k = 0; k < n; ++k)
  {
    std::vector<std::pair<double, Eigen::VectorXd>> chords; // arm, change per length
    for (std::size_t i = 0; i < arms.size(); ++i)
      if (arms[i].axis == k)
        if (const auto y = compared(answers[i + 1]))
          chords.emplace_back(arms[i].length, (*y - model.base) / arms[i].length);
    if (chords.size() == 1)
      model.curvature.col(k) = 2 * (chords[0].second - model.slope.col(k)) / chords[0].first;
    if (chords.size() == 2)
    {
      // The parabola through three points: chord(t) = slope + curvature t / 2.
      const auto &[a, chord_a] = chords[0];
      const auto &[b, chord_b] = chords[1];
      model.curvature.col(k) = 2 * (chord_a - chord_b) / (a - b);
      model.slope.col(k) = chord_a - 0.5 * model.curvature.col(k) * a;
    }
  }
  return model;
}
} // namespace solemech::settle
