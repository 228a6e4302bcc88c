// SPDX-License-Identifier: Apache-2.0
// Drawing geometry of the stack's cross-section at one instant: both halves, outline polygons of the parts,
// closed cavities, and hatch lines that are drawn straight on the undeformed stack and move with it, so that
// the drawing itself shows the deformation. All lengths in mm, x across, y up.
#pragma once

#include "solver/results/result.h"

#include <array>
#include <vector>

namespace solemech::tools
{
using Point = std::array<double, 2>;
using Polygon = std::vector<Point>;

/// Directions of a family of hatch lines.
enum class Hatch { rising, falling, level, upright, crossed };

struct PartDrawing
{
  int                  part = 0; ///< index into Picture::part_names
  std::vector<Polygon> outlines; ///< outer boundaries
  std::vector<Polygon> hatch;    ///< short strokes
  double               area = 0; ///< of the greatest outline [mm2]
};

struct SectionDrawing
{
  std::vector<PartDrawing> parts;    ///< greatest first, so that enclosed parts are drawn on top
  std::vector<Polygon>     cavities; ///< air inside the stack
  Polygon                  tup;      ///< closed at the top by a stub of the shank; empty when there is none
  double                   width = 0, height = 0; ///< of the stack [mm]
  double                   touch = 0;             ///< height of the tup's lowest point [mm]
};

/// Hatch of a part and the distance of its lines [mm]; parts that follow each other differ.
Hatch  hatch_of(int part);
double hatch_distance(int part);

SectionDrawing draw_section(const solver::Picture &picture, const solver::Snapshot &shot);
} // namespace solemech::tools
