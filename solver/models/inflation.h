// SPDX-License-Identifier: Apache-2.0
// Inflating the air units. One with fibres: alone it is brought to its gauge pressure, with fibres whose rest
// length balances the flat faces; its side wall finds its bulge. The other parts are then taken as bonded,
// free of stress, to that shape. Without fibres nothing holds the faces but what they are bonded to: such a
// unit is drawn slack and brought to its pressure in the finished stack, which arches and is under stress
// before anything touches it.
#pragma once

#include "solver/case.h"
#include "solver/contributions/fibre_bundle.h"
#include "solver/contributions/gas_chamber.h"
#include "solver/kernels/solid_kernel.h"
#include "solver/mesh/discretisation.h"
#include "solver/time/generalised_alpha.h"

#include <vector>

namespace solemech::solver
{
/// Strides of pressure that inflating took, and what they cost.
struct InflationFacts
{
  std::size_t steps = 0, repeated = 0, iterations = 0, descents = 0;

  void add(const TimeIntegrator &integrator);
};

/// One unit to inflate.
struct UnitToInflate
{
  unsigned       chamber; ///< number in the mesh, from the ground
  int            film_part;
  const AirUnit *unit;
  double         height; ///< between the films [m]
};

/// Rest length of the fibres that balances the flat faces at this gauge pressure [m].
double fibre_rest_length(const AirUnit &unit, double height);

/// Its fibres, of that rest length, and the pile that they and the films make: films pile up without fibres
/// too.
/// @param height  between the films [m]
materials::TensileFibres fibres_of(const AirUnit &unit, double height);

/// Displacement of every node from the drawn to the inflated shape: film nodes as computed, the others
/// smoothly in between. Throws NoBalance when a unit cannot be inflated.
std::vector<Point> inflate(const Discretisation &mesh, const std::vector<UnitToInflate> &units,
                           const Case &input, InflationFacts &facts);

/// A chamber of the finished stack.
struct ChamberToFill
{
  GasChamber *gas;
  double      gauge_pressure; ///< [Pa]
  bool        slack;          ///< drawn without pressure; otherwise drawn in balance with it
};

/// Brings slack chambers to their pressure in the finished stack, all its slow branches relaxed, and seals
/// all chambers.
/// @param away  level that keeps the striker off the stack [m]
/// @return displacements of the mesh's unknowns. Throws NoBalance when there is no balance.
Vector inflate_in_place(EquationOfMotion &equation, const std::vector<ChamberToFill> &chambers, double away,
                        InflationFacts &facts);
} // namespace solemech::solver
