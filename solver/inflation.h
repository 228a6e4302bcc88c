// SPDX-License-Identifier: Apache-2.0
// Inflating the air units: each unit alone is brought to its gauge pressure, with fibres whose rest length
// balances the flat faces; its side wall finds its bulge. The other parts are then taken as bonded, free of
// stress, to that shape.
#pragma once

#include "solver/case.h"
#include "solver/discretisation.h"
#include "solver/kernels/solid_kernel.h"

#include <vector>

namespace solemech::solver
{
/// One unit to inflate.
struct UnitToInflate
{
  unsigned       chamber;   ///< number in the mesh, from the ground
  int            film_part;
  const AirUnit *unit;
  double         height;    ///< between the films [m]
};

/// Rest length of the fibres that balances the flat faces at this gauge pressure [m].
double fibre_rest_length(const AirUnit &unit, double height);

/// Displacement of every node from the drawn to the inflated shape: film nodes as computed, the others smoothly
/// in between. Throws std::runtime_error when a unit cannot be inflated.
std::vector<Point> inflate(const Discretisation &mesh, const std::vector<UnitToInflate> &units, const Case &input);
} // namespace solemech::solver
