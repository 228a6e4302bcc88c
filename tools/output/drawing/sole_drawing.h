// SPDX-License-Identifier: Apache-2.0
// The drawing of a sole to scale: from above, along its middle line, across heel and ball, with dimensions in
// mm and what each layer is made of.
#pragma once

#include "geometry/sole/sole_body.h"
#include "solver/sole.h"
#include "tools/output/drawing/sole_facts.h"

#include <string>

namespace solemech::tools
{
/// In the head of every drawing; a file without it is not ours.
inline constexpr const char *drawing_mark = "drawn by solemech draw";

/// The drawing as SVG, one unit a millimetre.
std::string sole_drawing(const solver::Sole &sole, const geometry::SoleBody &body, const SoleFacts &facts);
} // namespace solemech::tools
