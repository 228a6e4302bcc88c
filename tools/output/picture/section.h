// SPDX-License-Identifier: Apache-2.0
// Drawing geometry of the stack's cross-section at one instant: both halves, outline polygons of the parts,
// closed cavities, and a hatch that is drawn on the undeformed stack and moves with it, so that the drawing
// itself shows the deformation. All lengths in mm, x across, y up.
#pragma once

#include "tools/output/picture/looks.h"

#include <vector>

namespace solemech::tools
{
struct PartDrawing
{
  int                  part = 0; ///< index into Picture::part_names
  Look                 look;
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

/// @param looks  one for each part of the picture
SectionDrawing draw_section(const solver::Picture &picture, const solver::Snapshot &shot,
                            const std::vector<Look> &looks);
} // namespace solemech::tools
