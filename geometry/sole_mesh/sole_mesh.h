// SPDX-License-Identifier: Apache-2.0
// Meshes of a whole sole: hexahedra in columns over its outline, or a long section of it. Every layer is
// there everywhere; what fills a cell, its own material or that of its host, is told by shares.
#pragma once

#include "geometry/sole/sole_body.h"
#include "geometry/sole_mesh/column_mesh.h"
#include "geometry/sole_mesh/section_mesh.h"

namespace solemech::geometry
{
struct SoleSizes
{
  PlanSizes             plan;    ///< the ball line is always one of its lines
  std::vector<unsigned> n_cells; ///< through each layer, foot side first
};

/// Sizes for an error of bending, flexion and tilt of this size; a drop wants a ring along the edge of its
/// striker besides. 24 x 9 cells at 3 %, 32 x 12 at 1 %, lines at most 9 mm apart where the foot bends.
/// From runs on blocks as large as a sole, error against count of cells; other soles differ.
SoleSizes sole_sizes(const SoleBody &body, double error);

/// Rows of cells along the edge of a striker for a drop with an error of this size: 3 mm wide at 2 %.
PlanRing striker_ring(const PlanPoint &centre, double radius, double error);

/// A share of a cell that the material of a layer fills.
struct Filling
{
  unsigned layer = 0; ///< foot side first, as in a SoleBody
  double   share = 0; ///< of area, 0 to 1
};

struct SoleMesh
{
  PlanMesh   plan;
  ColumnMesh columns; ///< layers of its cells count from the ground up

  /// Of each layer (foot side first) and plan cell; shares add up to 1.
  std::vector<std::vector<std::vector<Filling>>> fillings;

  const std::vector<Filling> &filling(const HexCell &cell) const
  {
    return fillings[fillings.size() - 1 - cell.layer][cell.plan_cell];
  }
};

/// Pockets are not cut out and tread is whole. Throws InvalidGeometry.
SoleMesh make_sole_mesh(const SoleBody &body, const SoleSizes &sizes);

/// Section along y = 0, from heel to toe tip less `end` at either, since the ends are round. Parts are the
/// layers, foot side first, or their hosts where these fill them.
/// @param stops  places of lines besides those of sizes and the ball [m]
PlugMesh make_sole_section(const SoleBody &body, const SoleSizes &sizes,
                           const std::vector<std::string> &layer_names, double end,
                           const std::vector<double> &stops = {});
} // namespace solemech::geometry
