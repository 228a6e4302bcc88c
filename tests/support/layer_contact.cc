// SPDX-License-Identifier: Apache-2.0
#include "tests/support/layer_contact.h"

#include <Eigen/Dense>

#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace solemech::tests
{
namespace
{
using std::numbers::pi;

/// Gauss-Legendre points and weights on (0, 1), by Newton on the Legendre polynomial.
std::vector<std::pair<double, double>> gauss_points(int n)
{
  std::vector<std::pair<double, double>> points;
  for (int i = 0; i < n; ++i)
  {
    double x = std::cos(pi * (i + 0.75) / (n + 0.5)), slope = 0;
    for (int k = 0; k < 100; ++k)
    {
      double p0 = 1, p1 = x;
      for (int j = 2; j <= n; ++j)
        p0 = std::exchange(p1, ((2 * j - 1) * x * p1 - (j - 1) * p0) / j);
      slope = n * (x * p1 - p0) / (x * x - 1);
      const double change = p1 / slope;
      x -= change;
      if (std::abs(change) < 1e-15)
        break;
    }
    points.emplace_back((1 + x) / 2, 1 / ((1 - x * x) * slope * slope));
  }
  return points;
}

/// 1 - L(s): the share by which a layer is stiffer than a half-space at the wave number s/h.
double stiffening(double s, double nu, LayerBase base)
{
  const double e2 = std::exp(-2 * s), e4 = e2 * e2; // hyperbolic functions scaled by exp(-2 s)
  if (base == LayerBase::sliding)
    return 1 - (1 + e4 - 2 * e2) / (1 - e4 + 4 * s * e2);
  const double k = 3 - 4 * nu;
  return 1 - (k * (1 - e4) - 4 * s * e2) / (k * (1 + e4) + (1 + k * k + 4 * s * s) * e2);
}

/// Solves for w at the Gauss points with two right-hand sides, 1 and t^2.
struct LayerEquation
{
  std::vector<std::pair<double, double>> points = gauss_points(40);
  double                                 ratio, nu;
  LayerBase                              base;
  std::vector<double>                    wave, weight;

  LayerEquation(double a_over_h, double poisson, LayerBase b) : ratio(a_over_h), nu(poisson), base(b)
  {
    // 1 - L falls as s^2 exp(-2 s): twenty-five is as good as infinity.
    constexpr int    panels = 25;
    constexpr double end = 25;
    for (int p = 0; p < panels; ++p)
      for (const auto &[x, w] : gauss_points(12))
      {
        const double s = end * (p + x) / panels;
        wave.push_back(s);
        weight.push_back(end / panels * w * stiffening(s, nu, base));
      }
  }

  double kernel(double t, double s) const
  {
    double sum = 0;
    for (std::size_t i = 0; i < wave.size(); ++i)
      sum += weight[i] * (std::cos(wave[i] * ratio * (t + s)) + std::cos(wave[i] * ratio * (t - s)));
    return ratio / pi * sum;
  }

  Eigen::MatrixXd solve() const
  {
    const int       n = static_cast<int>(points.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Identity(n, n), right(n, 2);
    for (int i = 0; i < n; ++i)
    {
      right(i, 0) = 1;
      right(i, 1) = points[i].first * points[i].first;
      for (int j = 0; j < n; ++j)
        matrix(i, j) -= points[j].second * kernel(points[i].first, points[j].first);
    }
    return matrix.lu().solve(right);
  }

  /// Value at t = 1 and integral over (0, 1) of one of the two solutions.
  std::pair<double, double> edge_and_integral(const Eigen::MatrixXd &solution, int column) const
  {
    double edge = 1, integral = 0;
    for (std::size_t j = 0; j < points.size(); ++j)
    {
      edge += points[j].second * kernel(1, points[j].first) * solution(j, column);
      integral += points[j].second * solution(j, column);
    }
    return {edge, integral};
  }
};
} // namespace

double flat_punch_factor(double a_over_h, double nu, LayerBase base)
{
  const LayerEquation equation(a_over_h, nu, base);
  return equation.edge_and_integral(equation.solve(), 0).second;
}

BallOnLayer ball_on_layer(double E, double nu, double R, double h, double a, LayerBase base)
{
  // On a half-space the profile r^2/(2 R) gives w = sink - t^2 a^2/R; the edge of the contact is free of
  // stress where w(1) = 0, which fixes the sink.
  const LayerEquation equation(a / h, nu, base);
  const auto          solution = equation.solve();
  const auto [edge_1, integral_1] = equation.edge_and_integral(solution, 0);
  const auto [edge_t2, integral_t2] = equation.edge_and_integral(solution, 1);
  const double sink = a * a / R * edge_t2 / edge_1;
  return {sink, 2 * a * E / (1 - nu * nu) * (sink * integral_1 - a * a / R * integral_t2)};
}
} // namespace solemech::tests
