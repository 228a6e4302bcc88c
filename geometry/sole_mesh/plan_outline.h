// SPDX-License-Identifier: Apache-2.0
// A closed outline with its two sides and two ends: what stands where along the foot, lengths along it.
// Only the sources of plan_mesh.h include it.
#pragma once

#include "geometry/sole_mesh/plan_sketch.h"

namespace solemech::geometry::plan
{
/// An outline that every line x = const between its ends meets twice.
class Outline
{
public:
  /// Throws InvalidGeometry when it turns back along the foot or holds no area.
  explicit Outline(const ClosedCurve &curve);

  double x_least() const { return samples_.front()[0]; }
  double x_most() const { return samples_[toe_][0]; }
  double widest() const; ///< greatest distance between the sides [m]

  /// Round once counter-clockwise from 0 to 1, with the least x at 0; of period 1.
  PlanPoint at(double place) const;

  double low_place(double x) const;  ///< where the side of smaller y is at x
  double high_place(double x) const; ///< and that of greater y

  /// The place at a share of the way from one place to a later one.
  double on_the_way(double from, double to, double share) const;

private:
  ClosedCurve            curve_;
  double                 start_ = 0, sense_ = 1; ///< parameter of the curve at place 0, and its direction
  std::vector<PlanPoint> samples_;               ///< even places, the first one again at the end
  std::vector<double>    length_;                ///< from place 0 [m]
  std::size_t            toe_ = 0;

  double length_to(double place) const;
};
} // namespace solemech::geometry::plan
