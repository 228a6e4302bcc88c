// SPDX-License-Identifier: Apache-2.0
// The face of a lug as wear takes it down: a depth over the fresh face at equally spaced places across the
// bar. Beyond the edges the fresh face goes on along a straight line, so that the worn one meets the walls
// where it cuts them.
#pragma once

#include "geometry/lug_outline.h"

#include <vector>

namespace solemech::geometry
{
class WornProfile
{
public:
  /// @param fresh     outline without a worn face
  /// @param n_places  across the root of the lug; odd, so that one lies in the middle
  WornProfile(const LugOutline &fresh, unsigned n_places);

  /// Equally spaced, from left to right, symmetric about 0 [m].
  const std::vector<double> &places() const { return places_; }
  double                     spacing() const { return places_[1] - places_[0]; }

  /// Takes a depth off at each place, measured along z [m].
  /// Throws InvalidGeometry when less than the least skin would be left anywhere on the lug.
  void take(const std::vector<double> &depth);

  /// The lug now: the fresh one until something was taken.
  LugOutline outline() const;

  /// Where the face meets the walls [m].
  std::pair<double, double> ends() const;

  /// Section lost so far [m2].
  double lost_section() const;

  /// Depth taken at each place [m]; beyond the ends what lies nearest counts.
  const std::vector<double> &depth() const { return depth_; }

  /// Depth taken, mean over the face [m].
  double mean_depth() const;

  /// Least height that is left of the lug above its skin [m].
  double least_height() const;

private:
  double face(std::size_t i) const; ///< height of the worn face at a place, walls aside [m]
  double face_at(double x) const;
  double end(double direction) const;

  double section_above() const; ///< between fresh surface and face, as far as the face lies below [m2]

  LugOutline          fresh_;
  std::vector<double> places_, cap_, depth_;
  double              drawn_ = 0; ///< section_above() while fresh: what straight pieces cut off the arcs [m2]
  bool                is_worn_ = false;
};
} // namespace solemech::geometry
