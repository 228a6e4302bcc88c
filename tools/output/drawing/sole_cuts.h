// SPDX-License-Identifier: Apache-2.0
// Cuts through a sole as polygons: along the foot and across it, each piece with what fills it, and the
// pieces of a layer in plan. Lengths in mm, for drawing.
#pragma once

#include "geometry/sole/sole_body.h"
#include "tools/output/picture/looks.h"

#include <vector>

namespace solemech::tools
{
/// A piece of a cut. `layer` is the one whose material fills it.
struct CutPiece
{
  enum class Kind { material, pocket, gap };
  Kind        kind = Kind::material;
  std::size_t layer = 0;
  Polygon     outline; ///< [mm]
};

/// Along the foot at a distance y from the middle line: x, and height above a flat floor.
std::vector<CutPiece> cut_along(const geometry::SoleBody &body, double y);

/// Across the foot at x, seen from behind, so that the outer side of a left sole lies to the left: -y, and
/// height above the lower face there.
std::vector<CutPiece> cut_across(const geometry::SoleBody &body, double x);

/// A layer in plan, slots left out: areas, and lines along its edges, x and y.
struct PlanPieces
{
  std::vector<Polygon> areas, edges;
};
PlanPieces plan_pieces(const geometry::PlanRegion &region);

Polygon in_millimetres(const std::vector<geometry::PlanPoint> &points);
} // namespace solemech::tools
