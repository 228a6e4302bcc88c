// SPDX-License-Identifier: Apache-2.0
// Quadrilateral mesh of a lug section (lug_outline.h): a block for the lug, one for the skin under it, one
// for the skin beside it on either side. The lug's block is a harmonic map of its four sides, started from
// their transfinite interpolation (Gordon & Hall, Numer. Math. 21, 1973). Finest at the rounded edges, where
// the pressure has its peak. Faces: base = bonded plane, axis and side = left and right end of the cell
// (joined when neighbours are periodic), top = everything that can touch the court: walls and face of the
// lug, then the open skin.
#pragma once

#include "geometry/lug_outline.h"
#include "geometry/plug_mesh.h"

namespace solemech::geometry
{
struct LugMesh
{
  PlugMesh mesh; ///< parts: "skin", "lug"

  /// Indices into mesh.faces, all from left to right: faces that were drawn as the lug's face (edge arcs'
  /// upper halves included), and walls.
  std::vector<unsigned> face, left_wall, right_wall;

  /// Where the mid nodes of curved faces belong: index into mesh.faces, place on the outline [m].
  std::vector<std::pair<unsigned, std::array<double, 2>>> on_curves;
};

/// @param level  cell size is proportional to 1/level; at 1 an edge arc has four cells
/// Throws InvalidGeometry for an outline that cannot be built.
LugMesh make_lug_mesh(const LugOutline &outline, double level);
} // namespace solemech::geometry
