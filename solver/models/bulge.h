// SPDX-License-Identifier: Apache-2.0
// How a mesh follows the side wall of an inflated unit that bulges into the parts beside it.
#pragma once

#include "solver/mesh/discretisation.h"

#include <vector>

namespace solemech::solver
{
/// Displacements between fixed nodes follow as a harmonic field, so that narrow cells move like wide ones
/// beside them: the five-point Laplacian of a grid with lines at unequal distances, an edge weighed by what
/// lies across it over its length (finite volumes). Outer faces stay as given, but for the axis.
/// @param fixed                 nodes whose displacement is known
/// @param[in,out] displacement  of each node [m]
void follow_bulge(const Discretisation &mesh, std::vector<bool> fixed, std::vector<Point> &displacement);

/// Whether every quarter of a cell beside the films keeps its orientation. The films themselves are drawn
/// flat and have moved as their law says.
bool keeps_cells(const Discretisation &mesh, const std::vector<bool> &on_film,
                 const std::vector<Point> &displacement);
} // namespace solemech::solver
