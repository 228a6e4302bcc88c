// SPDX-License-Identifier: Apache-2.0
// Heights of cells along one column of a stack of layers.
#pragma once

#include "geometry/sole/outline.h"

#include <vector>

namespace solemech::geometry
{
/// Heights between which cells lie, through all layers, even within each [m].
/// @param interfaces  of the layers at this place, from the underside up [m]
/// @param n_cells     of each layer
/// Throws InvalidGeometry where a layer has no thickness.
std::vector<double> column_heights(const std::vector<double>   &interfaces,
                                   const std::vector<unsigned> &n_cells, const PlanPoint &place);

/// The layer of each row of cells, from the ground up.
std::vector<unsigned> layers_of_rows(const std::vector<unsigned> &n_cells);
} // namespace solemech::geometry
