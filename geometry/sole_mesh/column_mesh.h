// SPDX-License-Identifier: Apache-2.0
// Hexahedra in columns over a plan mesh: from the ground up through the layers of a stack whose interfaces
// have a height at each place in plan. Eight corners and straight edges; quadratic nodes, if wanted, lie
// halfway between corners. Volumes are exact: the determinant of a trilinear map is of second degree along
// each direction, which two Gauss points take.
#pragma once

#include "geometry/sole_mesh/plan_mesh.h"

#include <functional>
#include <vector>

namespace solemech::geometry
{
using SolidPoint = std::array<double, 3>; ///< along the foot, lateral, upwards [m]

/// Heights of all interfaces at a place in plan, from the underside up, one more than layers [m].
using InterfaceHeights = std::function<std::vector<double>(const PlanPoint &)>;

/// Where a place of the flat stack comes to lie: along the foot and height, before and after [m]. Empty: as
/// it is. Toe spring and heel bevel carry the stack along.
using CarriedBy = std::function<std::array<double, 2>(double, double)>;

enum class SoleSide { bottom = 0, top = 1, side = 2 };

struct HexCell
{
  std::array<unsigned, 8> vertices{}; ///< 2 x 2 x 2, the first direction fastest, the last one upwards
  unsigned                layer = 0;  ///< from the ground up
  unsigned                plan_cell = 0;
};

struct HexFace
{
  unsigned cell = 0;
  unsigned face = 0; ///< low and high end along the first direction (0, 1), the second, the third
  SoleSide side = SoleSide::side;
};

struct ColumnMesh
{
  std::vector<SolidPoint> vertices; ///< [m], all used
  std::vector<HexCell>    cells;    ///< plan cells fastest, from the ground up
  std::vector<HexFace>    faces;    ///< every face that has a cell on one side only
};

/// Corners of a face, counter-clockwise seen from outside the cell.
std::array<unsigned, 4> face_vertices(const HexCell &cell, unsigned face);

/// @param n_cells  of each layer, from the ground up
/// Throws InvalidGeometry, with the place, where a layer has no thickness or a column is folded over.
ColumnMesh make_column_mesh(const PlanMesh &plan, const InterfaceHeights &heights,
                            const std::vector<unsigned> &n_cells, const CarriedBy &carried = {});

/// Volume of a cell with straight edges [m3].
double cell_volume(const ColumnMesh &mesh, unsigned cell);
} // namespace solemech::geometry
