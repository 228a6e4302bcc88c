// SPDX-License-Identifier: Apache-2.0
// A whole sole ready for drawing and meshing: its outline, where each layer lies in plan, how thick it is,
// how high its faces lie, which material fills which place. Heights are those of the flat stack; `bottom`
// lifts and turns them.
#pragma once

#include "geometry/sole/monotone_curve.h"
#include "geometry/sole/sole_shape.h"

#include <vector>

namespace solemech::geometry
{
/// The line about which the foot bends, from the medial to the lateral edge.
struct BallLine
{
  PlanPoint medial{}, lateral{};
  double    x_at(double y) const;
  double    centre() const { return x_at(0); } ///< x where it crosses the line heel centre - toe tip [m]
};

/// The outline of the measurements: half widths, or a trace laid on its longest line. Throws InvalidGeometry.
Outline outline_of(const OutlineShape &shape);

BallLine ball_line_of(const Outline &outline, const OutlineShape &shape);

/// The bottom line of the measurements; a toe spring without a start begins 5 mm behind the ball.
BottomShape bottom_of(const SoleShape &shape, double ball);

/// x of the five stations of thickness, and of the four zones of an inset [m].
std::array<double, 5> thickness_stations(double length, double ball);
std::array<double, 4> inset_zones(double length, double ball);

class SoleBody
{
public:
  /// Throws InvalidGeometry with the first of `flaws`.
  explicit SoleBody(const SoleShape &shape);

  const SoleShape  &shape() const { return shape_; }
  const Outline    &outline() const { return outline_; }
  const BallLine   &ball_line() const { return ball_line_; }
  const BottomLine &bottom() const { return bottom_; }
  double            length() const { return outline_.length(); }

  std::size_t       n_layers() const { return regions_.size(); }
  const PlanRegion &region(std::size_t layer) const { return regions_[layer]; }
  double            thickness(std::size_t layer, double x) const { return thickness_[layer](x); }

  /// Heights of the faces of a layer above the lower face of the sole, before it is lifted [m].
  double lower_face(std::size_t layer, double x) const;
  double upper_face(std::size_t layer, double x) const;
  double height(double x) const { return upper_face(0, x); }

  /// The layer whose material is at a place of `layer`: its own, or its host's.
  std::size_t filled_by(std::size_t layer, const PlanPoint &point) const;
  std::size_t host(std::size_t layer) const;

  /// How much of the tread is missing above the ground there [m]; fine patterns in their mean.
  double missing_tread(const PlanPoint &point) const;

  /// Volume of the material of each layer, where it fills others too, less pockets and missing tread [m3].
  /// Of the flat stack: a curved toe changes it by less than a per cent.
  std::vector<double> volumes() const;

private:
  SoleShape                  shape_;
  Outline                    outline_;
  BallLine                   ball_line_;
  BottomLine                 bottom_;
  std::vector<MonotoneCurve> thickness_;
  std::vector<PlanRegion>    regions_;
};
} // namespace solemech::geometry
