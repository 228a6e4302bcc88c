// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/periodic_cubic.h"

#include <Eigen/Dense>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace solemech::geometry
{
PeriodicCubic::PeriodicCubic(std::vector<double> knots, std::vector<double> values, double period)
  : knots_(std::move(knots)), values_(std::move(values)), period_(period)
{
  const auto n = knots_.size();
  assert(n >= 3 && values_.size() == n && knots_.back() - knots_.front() < period);
  const auto width = [&](std::size_t i) {
    return i + 1 < n ? knots_[i + 1] - knots_[i] : knots_[0] + period_ - knots_[i];
  };
  // Slopes agree at every knot: three second derivatives a row, the ends joined.
  Eigen::MatrixXd rows = Eigen::MatrixXd::Zero(static_cast<int>(n), static_cast<int>(n));
  Eigen::VectorXd kinks(static_cast<int>(n));
  for (std::size_t i = 0; i < n; ++i)
  {
    const std::size_t before = (i + n - 1) % n, after = (i + 1) % n;
    const double      h = width(before), k = width(i);
    const auto        row = static_cast<int>(i);
    rows(row, static_cast<int>(before)) += h / 6;
    rows(row, row) += (h + k) / 3;
    rows(row, static_cast<int>(after)) += k / 6;
    kinks(row) = (values_[after] - values_[i]) / k - (values_[i] - values_[before]) / h;
  }
  const Eigen::VectorXd bending = rows.partialPivLu().solve(kinks);
  bending_.assign(bending.begin(), bending.end());
}

PeriodicCubic::Place PeriodicCubic::place(double t) const
{
  const double      turns = std::floor((t - knots_.front()) / period_);
  const double      inside = t - turns * period_;
  const auto        next = std::upper_bound(knots_.begin() + 1, knots_.end(), inside);
  const std::size_t left = static_cast<std::size_t>(next - knots_.begin()) - 1;
  const bool        is_last = next == knots_.end();
  const double      end = is_last ? knots_.front() + period_ : *next;
  return {left, is_last ? 0 : left + 1, end - knots_[left], inside - knots_[left], end - inside};
}

double PeriodicCubic::value(double t) const
{
  const auto [i, j, h, a, b] = place(t);
  return (bending_[i] * b * b * b + bending_[j] * a * a * a) / (6 * h) +
         (values_[i] / h - bending_[i] * h / 6) * b + (values_[j] / h - bending_[j] * h / 6) * a;
}

double PeriodicCubic::slope(double t) const
{
  const auto [i, j, h, a, b] = place(t);
  return (bending_[j] * a * a - bending_[i] * b * b) / (2 * h) + (values_[j] - values_[i]) / h -
         (bending_[j] - bending_[i]) * h / 6;
}
} // namespace solemech::geometry
