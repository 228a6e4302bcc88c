// SPDX-License-Identifier: Apache-2.0
// Quadrilaterals of a long section of a sole, (along the foot, upwards): columns through the same interfaces
// as those of column_mesh.h, on given lines.
#pragma once

#include "geometry/sole_mesh/column_mesh.h"

#include <string>

namespace solemech::geometry
{
/// Heights of all interfaces along the section, from the underside up [m].
using SectionHeights = std::function<std::vector<double>(double)>;

/// The part that fills a layer, counted from the ground up, at a place along the section.
using SectionParts = std::function<int(unsigned, double)>;

/// Faces: base and top; axis and side are the ends at the heel and at the toe. Strips are the layers.
/// @param x        lines, increasing [m]
/// @param n_cells  of each layer, from the ground up
/// Throws InvalidGeometry where a layer has no thickness or a cell is folded over.
PlugMesh make_section_mesh(const std::vector<double> &x, const SectionHeights &heights,
                           const std::vector<unsigned> &n_cells, const std::vector<std::string> &part_names,
                           const SectionParts &parts, const CarriedBy &carried = {});

/// Lines between two ends through all stops between them, closer in finer stretches (plan_mesh.h).
std::vector<double> section_lines(double from, double to, double size, const std::vector<FinerStretch> &finer,
                                  std::vector<double> stops = {});
} // namespace solemech::geometry
