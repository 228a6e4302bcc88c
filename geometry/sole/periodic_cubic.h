// SPDX-License-Identifier: Apache-2.0
// The periodic cubic spline through given points: value, first and second derivative join up at every knot
// and over the end of the period (C. de Boor, A Practical Guide to Splines, 1978, chapter IV).
#pragma once

#include <vector>

namespace solemech::geometry
{
class PeriodicCubic
{
public:
  /// @param knots   rising, at least three; the first one comes again after `period`
  /// @param values  at the knots
  PeriodicCubic(std::vector<double> knots, std::vector<double> values, double period);

  double value(double t) const;
  double slope(double t) const;

private:
  struct Place
  {
    std::size_t left, right;
    double      width, from_left, from_right;
  };
  Place place(double t) const;

  std::vector<double> knots_, values_, bending_; ///< second derivatives at the knots
  double              period_;
};
} // namespace solemech::geometry
