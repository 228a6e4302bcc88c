// SPDX-License-Identifier: Apache-2.0
#include "solver/results/metrics.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
Crest crest_between(double x0, double v0, double x1, double v1, double dt)
{
  // The speed on the cubic is a parabola in the share s: a s^2 + b s + m0.
  const double m0 = v0 * dt, m1 = v1 * dt, way = x1 - x0;
  const double a = 3 * (m0 + m1 - 2 * way), b = 2 * (3 * way - 2 * m0 - m1);
  // m0 and m1 differ in sign, so that one root lies within the step: this form has it without cancellation.
  const double root = std::sqrt(std::max(b * b - 4 * a * m0, 0.0)), below = m0 > 0 ? root - b : -root - b;
  const double share = below != 0 ? std::clamp(2 * m0 / below, 0.0, 1.0) : 0.0;
  return {share, on_cubic(share, x0, m0, x1, m1)};
}

Peak peak_of(std::span<const double> t, std::span<const double> y)
{
  const auto top = static_cast<std::size_t>(std::max_element(y.begin(), y.end()) - y.begin());
  if (top == 0 || top + 1 >= y.size())
    return {t[top], y[top]};
  const double left = t[top] - t[top - 1], right = t[top + 1] - t[top];
  const double rise = (y[top] - y[top - 1]) / left, fall = (y[top] - y[top + 1]) / right;
  const double curvature = (rise + fall) / (left + right); // minus half the second derivative
  if (curvature <= 0)
    return {t[top], y[top]};
  const double slope = (rise * right - fall * left) / (left + right), wait = 0.5 * slope / curvature;
  return {t[top] + wait, y[top] + 0.5 * slope * wait};
}

double smoothed_peak(std::span<const double> t, std::span<const double> y, double half_window)
{
  const auto               peak = std::max_element(y.begin(), y.end()) - y.begin();
  const double             centre = t[peak];
  std::vector<std::size_t> inside;
  for (std::size_t i = 0; i < t.size(); ++i)
    if (std::abs(t[i] - centre) <= half_window)
      inside.push_back(i);
  if (inside.size() < 6)
    return y[peak];
  Eigen::MatrixXd a(inside.size(), 5);
  Eigen::VectorXd b(inside.size());
  for (std::size_t row = 0; row < inside.size(); ++row)
  {
    const auto i = inside[row];
    // Each point counts for the time it stands for: steps are not equal.
    const double before = i > 0 ? t[i] - t[i - 1] : 0, after = i + 1 < t.size() ? t[i + 1] - t[i] : 0;
    const double weight = std::sqrt(0.5 * (before + after)), s = (t[i] - centre) / half_window;
    for (int k = 0; k < 5; ++k)
      a(row, k) = weight * std::pow(s, k);
    b[row] = weight * y[i];
  }
  const Eigen::VectorXd c = a.colPivHouseholderQr().solve(b);
  double                best = -1e300;
  const double          first = (t[inside.front()] - centre) / half_window,
               last = (t[inside.back()] - centre) / half_window;
  constexpr int n_samples = 2000;
  for (int i = 0; i <= n_samples; ++i)
  {
    const double s = first + (last - first) * i / n_samples;
    best = std::max(best, (((c[4] * s + c[3]) * s + c[2]) * s + c[1]) * s + c[0]);
  }
  return best;
}

LoopAreas loop_areas(std::span<const double> way, std::span<const double> force)
{
  LoopAreas  areas;
  const auto top = std::max_element(way.begin(), way.end()) - way.begin();
  for (std::size_t i = 1; i < way.size(); ++i)
  {
    const double work = 0.5 * (force[i] + force[i - 1]) * (way[i] - way[i - 1]);
    if (static_cast<std::ptrdiff_t>(i) <= top)
      areas.loading += work;
    else
      areas.unloading -= work;
  }
  return areas;
}
} // namespace solemech::solver
