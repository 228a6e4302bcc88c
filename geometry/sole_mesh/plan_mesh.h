// SPDX-License-Identifier: Apache-2.0
// Quadrilaterals in plan inside a closed outline: a core of lines from side to side, a rim of cells along the
// outline, rings of cells along curves inside it (the edge of a striker, a pocket). Built coarse to fine: a
// sketch of nodes and of the curves they may slide on (plan_sketch.h), sheets of cells let in along the
// curves (plan_rings.h), then shaped (plan_shaping.h).
#pragma once

#include "geometry/plug_mesh.h"
#include "geometry/sole/outline.h"

#include <array>
#include <functional>
#include <vector>

namespace solemech::geometry
{
/// A closed curve without crossings: place [m] over a parameter that goes round once from 0 to 1. Smooth
/// enough for its tangent, and of period 1.
using ClosedCurve = std::function<PlanPoint(double)>;

struct PlanCell
{
  std::array<unsigned, 4> vertices{}; ///< 2 x 2, the first direction fastest, seen from above
};

struct PlanEdge
{
  unsigned cell = 0;
  unsigned face = 0; ///< FaceNumber
};

struct PlanMesh
{
  std::vector<PlanPoint> vertices; ///< [m], all used
  std::vector<PlanCell>  cells;
  std::vector<PlanEdge>  rim;            ///< edges with a cell on one side only
  std::vector<bool>      rings_fitted{}; ///< of each ring asked for, in its order
};

/// A line of the mesh from side to side, given by where it meets the outline.
struct CrossLine
{
  double low = 0, high = 0; ///< along the foot, on the side of smaller and of greater y [m]
};

/// Lines between these places are no farther apart along the foot than this, before cells are shaped.
struct FinerStretch
{
  double from = 0, to = 0, size = 0; ///< [m]
};

/// Cells that follow a closed curve, counter-clockwise seen from above: rows of nodes stand on it and on its
/// offsets. Where it leaves the outline they end at the outline; where it grazes the outline they are drawn
/// in.
struct PlanRing
{
  ClosedCurve curve;
  double      width = 3e-3; ///< of one row of cells [m]
  unsigned    n_inside = 2, n_outside = 1;
};

PlanRing ring_along_circle(const PlanPoint &centre, double radius, double width);

struct PlanSizes
{
  double                    along = 12e-3, across = 10e-3; ///< of cells, at most [m]
  unsigned                  n_rim = 2;                     ///< rows of cells along the outline
  std::vector<CrossLine>    lines{};
  std::vector<FinerStretch> finer{};
  std::vector<PlanRing>     rings{};
};

/// Least corner quality that a mesh is handed out with: sine of the angle between two edges, negative where
/// they cross over.
constexpr double least_corner = 0.3;

/// Mesh inside an outline that is longer than wide, every line x = const meets twice and has round ends.
/// A ring that would leave cells worse than `least_corner` or cut into the outline, mostly one that leaves it
/// at a flat angle, is left out (rings_fitted). Throws InvalidGeometry for an outline or lines that leave no
/// such mesh.
PlanMesh make_plan_mesh(const ClosedCurve &outline, const PlanSizes &sizes);

/// Mesh of a rectangle on given lines, increasing [m], with rings.
PlanMesh make_rectangle_plan(const std::vector<double> &x, const std::vector<double> &y,
                             const std::vector<PlanRing> &rings = {});

/// Smallest sine between two edges of a cell at a corner, over all corners.
double corner_quality(const PlanMesh &mesh);

/// Area of a cell with straight edges [m2].
double cell_area(const PlanMesh &mesh, unsigned cell);
} // namespace solemech::geometry
