// SPDX-License-Identifier: Apache-2.0
// The outline of a sole in plan, as callipers give it: half widths from the line heel centre - toe tip.
// x runs from the rearmost point of the heel (0) to the tip of the toe (L), y to the lateral side. With
// x = L/2 (1 - cos phi) the signed half width is a periodic cubic of phi that is zero at both ends: round
// ends, and no radius to measure.
#pragma once

#include "geometry/sole/periodic_cubic.h"

#include <array>
#include <vector>

namespace solemech::geometry
{
/// Point of the plan (x, y) [m].
using PlanPoint = std::array<double, 2>;

/// Where half widths are measured, from the heel [share of the length].
inline constexpr std::array<double, 7> outline_stations{0.06, 0.16, 0.35, 0.50, 0.64, 0.74, 0.90};

/// Distances of the two edges from the line heel centre - toe tip at the stations [m].
struct HalfWidths
{
  std::array<double, 7> medial{}, lateral{};
};

/// From edge to edge across the foot at one x [m]; there is nothing unless low < high.
struct Span
{
  double low = 0, high = 0; ///< y, medial edge first
  double width() const { return high - low; }
};

class Outline
{
public:
  /// Throws InvalidGeometry unless length and half widths are positive.
  Outline(double length, const HalfWidths &half_widths);

  /// Through points of the edge: x in (0, L), rising along the lateral and falling along the medial side.
  Outline(double length, const std::vector<PlanPoint> &lateral, const std::vector<PlanPoint> &medial);

  double length() const { return length_; }

  /// The closed curve: phi from 0 (heel) over the lateral side to pi (toe tip) and back to 2 pi [rad].
  PlanPoint at(double phi) const;
  /// Its derivative by phi [m/rad].
  PlanPoint along(double phi) const;

  /// phi of the lateral side at x [rad]; the medial one has 2 pi less that.
  double phi_of(double x) const;

  /// Edges at x; nothing beyond the ends.
  Span across(double x) const;

  /// Area inside [m2].
  double area() const;

  /// x where the two edges touch or cross between the ends [m]; < 0: nowhere.
  double crossing() const;

private:
  double        length_;
  PeriodicCubic y_;
};

/// `n` points round the outline, from the heel along the lateral side.
std::vector<PlanPoint> points_round(const Outline &outline, unsigned n);
} // namespace solemech::geometry
