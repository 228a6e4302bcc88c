// SPDX-License-Identifier: Apache-2.0
// What a change costs in room: stack height, heel-to-toe drop, depth of the counter, volume inside the shoe.
#pragma once

#include "solver/case.h"
#include "tools/output/report/report_blocks.h"
#include "tools/output/results/summary.h"

#include <string>
#include <vector>

namespace solemech::tools
{
enum class ShoePart { heel, forefoot, unknown };

/// The part of the shoe that a case is about, by the words of its label, else of its title.
ShoePart shoe_part(const solver::Case &data);

/// Thickness [m] that lies in the shoe, above the lasting board; without a board what is called insert,
/// footbed or sockliner.
double thickness_inside(const solver::Case &data);

/// Area [m2] that an insert is assumed to cover: 45 cm2 under a heel, 75 cm2 under a forefoot, 190 cm2 full
/// length (EU 42; from memory, no source).
double assumed_area(ShoePart part);

struct GeometryCost
{
  double   height = 0; ///< of the stack [m], higher is positive
  double   inside = 0; ///< of what lies in the shoe [m]: the foot sits so much higher in the upper
  double   volume = 0; ///< that the foot loses [m3]
  ShoePart part = ShoePart::unknown;
};

GeometryCost geometry_cost(const solver::Case &now, const solver::Case &changed);

using report::GeometryLine;

/// Height, drop, counter, volume; what stays as it is is left out, unless nothing changes at all.
std::vector<GeometryLine> geometry_lines(const GeometryCost &cost, Lengths lengths = Lengths::millimetre);
} // namespace solemech::tools
