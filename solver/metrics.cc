// SPDX-License-Identifier: Apache-2.0
#include "solver/metrics.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
double smoothed_peak(std::span<const double> t, std::span<const double> y, double half_window)
{
  const auto   peak = std::max_element(y.begin(), y.end()) - y.begin();
  const double centre = t[peak];
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
  const double first = (t[inside.front()] - centre) / half_window, last = (t[inside.back()] - centre) / half_window;
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
  LoopAreas areas;
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
