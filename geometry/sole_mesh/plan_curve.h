// SPDX-License-Identifier: Apache-2.0
// A closed curve in plan as rings need it: what lies nearest and inside, its normal, where it meets others.
// Only the sources of plan_mesh.h include it.
#pragma once

#include "geometry/sole_mesh/plan_sketch.h"

#include <algorithm>
#include <vector>

namespace solemech::geometry::plan
{
/// A closed curve: what lies nearest, what lies inside.
class Curve
{
public:
  explicit Curve(const ClosedCurve &curve) : curve_(curve)
  {
    for (unsigned i = 0; i < n_samples; ++i)
      samples_.push_back(at(static_cast<double>(i) / n_samples));
  }

  PlanPoint at(double place) const { return curve_(place - std::floor(place)); }

  PlanPoint outwards(double place) const
  {
    const auto along = slope([this](double p) { return at(p); }, place);
    return (1 / length(along)) * PlanPoint{along[1], -along[0]};
  }

  PlanPoint centre() const
  {
    PlanPoint sum{};
    for (const auto &sample : samples_)
      sum = sum + sample;
    return (1.0 / n_samples) * sum;
  }

  double nearest(const PlanPoint &p) const
  {
    const auto best = std::min_element(samples_.begin(), samples_.end(), [&](const auto &a, const auto &b) {
      return length(a - p) < length(b - p);
    });
    return static_cast<double>(best - samples_.begin()) / n_samples;
  }

  /// By the number of turns that the curve makes round the point.
  bool holds(const PlanPoint &p) const
  {
    bool inside = false;
    for (unsigned i = 0; i < n_samples; ++i)
    {
      const auto &a = samples_[i], &b = samples_[(i + 1) % n_samples];
      if ((a[1] > p[1]) != (b[1] > p[1]) && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0]))
        inside = !inside;
    }
    return inside;
  }

private:
  static constexpr unsigned n_samples = 256;
  ClosedCurve               curve_;
  std::vector<PlanPoint>    samples_;
};

/// Where a rail and a curve meet, by Newton's method from a guess for both parameters; false when they do
/// not.
inline bool meet(const Rail &rail, double &on_rail, const Rail &curve, double &on_curve)
{
  for (unsigned i = 0; i < 30; ++i)
  {
    const auto gap = curve(on_curve) - rail(on_rail);
    if (length(gap) < 1e-10)
      return true;
    const auto   a = slope(rail, on_rail), b = slope(curve, on_curve);
    const double determinant = cross(a, b);
    if (std::abs(determinant) < 1e-3 * length(a) * length(b)) // they run along each other
      return false;
    const double forward = cross(gap, b) / determinant, round = cross(gap, a) / determinant;
    const double most = 0.05 / std::max({std::abs(round), 0.05});
    on_rail += most * forward, on_curve += most * round;
  }
  return false;
}
} // namespace solemech::geometry::plan
