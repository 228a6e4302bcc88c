// SPDX-License-Identifier: Apache-2.0
// How far the sole is lifted off a flat floor along its length: heel bevel behind, toe spring in front. Each
// is an arc that touches the floor where it starts; a toe spring may have a rocker radius of its own and then
// goes on straight to its rise at the tip. The whole stack is carried along, its columns turned by the slope.
#pragma once

#include <array>

namespace solemech::geometry
{
struct BottomShape
{
  double heel_bevel_start = 0; ///< x where the bevel begins, seen from the toe [m]
  double heel_bevel_rise = 0;  ///< at the rearmost point [m]; 0: none
  double toe_spring_start = 0; ///< x where the toe begins to lift [m]; 0: just behind the ball
  double toe_spring_rise = 0;  ///< at the tip [m]; 0: none
  double rocker_radius = 0;    ///< of the toe spring [m]; 0: one arc from its start to the tip
};

class BottomLine
{
public:
  /// Throws InvalidGeometry for arcs that do not fit.
  BottomLine(double length, const BottomShape &shape);

  double lift(double x) const;  ///< height of the lower face above the floor [m]
  double slope(double x) const; ///< d lift/dx [-]

  /// Where a place of the flat stack comes to lie: x along it, z above its lower face [m].
  std::array<double, 2> placed(double x, double z) const;

  /// Greatest rocker radius that still reaches a rise within a run [m].
  static double greatest_radius(double run, double rise);

private:
  /// Arc from the floor, then straight.
  struct Rise
  {
    double start = 0, radius = 0, turned = 0; ///< [m], [m], angle of the arc [rad]
    double lift(double run) const;
    double slope(double run) const;
  };
  static Rise rise(double start, double run, double height, double radius);

  Rise heel_, toe_;
};
} // namespace solemech::geometry
