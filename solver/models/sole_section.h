// SPDX-License-Identifier: Apache-2.0
// A whole sole cut along the line heel centre - toe tip: layers as thick as they are there, each as wide as
// it is at that place of the foot, the material of its host beside it. A laminate or a plate that was bent as
// a whole counts with what it resists to bending along the foot. Pockets take away their width; the gas in
// them and the pattern of the tread are left out.
#pragma once

#include "geometry/sole_mesh/sole_mesh.h"
#include "solver/models/section_model.h"
#include "solver/sole.h"

namespace solemech::solver
{
/// @param stops  places of mesh lines besides those of the sizes and the ball [m]
LongSection long_section(const Sole &sole, const geometry::SoleBody &body, const geometry::SoleSizes &sizes,
                         const std::vector<double> &stops = {});

/// A layer of plies, or one that was bent as a whole, as the isotropic plate that resists as much to bending
/// along the foot where it cannot contract across it; others as they are.
materials::Material material_in_section(const SoleLayer &layer);
} // namespace solemech::solver
