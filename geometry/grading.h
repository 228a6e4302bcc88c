// SPDX-License-Identifier: Apache-2.0
// Mesh lines of a plug from one number. A cell-size field h(r) (and h(z)) is divided by the resolution level
// and equidistributed, so that every level is an image of the same field and errors shrink regularly.
// Field: finest from about 0.3 striker radii inside the striker's rim to half its edge radius outside, linear
// growth towards axis and plug edge; finer to the top. Common practice, no source; cell counts were fixed on
// a foam cylinder of 40 mm radius and 25 mm height under a striker of 22.5 mm radius and 2 mm edge radius.
#pragma once

#include "geometry/stack_outline.h"

#include <vector>

namespace solemech::geometry
{
/// How fine a mesh is: cell size is proportional to 1/level. Level 1 gives about 8 x 5 cells on the cylinder
/// above, 1.5 about 12 x 8, 2.5 about 20 x 13.
class MeshSize
{
public:
  /// Throws InvalidGeometry unless 0.5 <= level <= 32.
  explicit MeshSize(double level);
  double level() const { return level_; }

private:
  double level_;
};

/// Lines of a tensor grid, strictly increasing. r.front() is the axis, z.front() the ground [m].
struct GridLines
{
  std::vector<double> r;
  std::vector<double> z;
};

/// Radii where the part changes somewhere in the stack, increasing; equal ones (to rounding) once. The last
/// one is that of the plug, wall included.
std::vector<double> part_radii(const PlugOutline &outline);

/// Lines through every radius and height where the part changes, graded between them. Thin strips and film
/// get one cell through their thickness; r-lines are then dense enough for an aspect ratio of 8 in them.
/// Throws InvalidGeometry when the outline cannot be built.
GridLines graded_lines(const PlugOutline &outline, MeshSize size);

/// Every interval halved: for convergence studies.
GridLines halved(const GridLines &lines);
} // namespace solemech::geometry
