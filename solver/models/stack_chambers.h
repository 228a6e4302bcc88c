// SPDX-License-Identifier: Apache-2.0
// The air units of a stack: gas and fibres of each, what is to be inflated before and in the finished stack,
// and what a person is told about them.
#pragma once

#include "solver/contributions/fibre_bundle.h"
#include "solver/contributions/gas_chamber.h"
#include "solver/models/inflation.h"
#include "solver/models/stack_parts.h"
#include "solver/time/equation_of_motion.h"

#include <string>
#include <vector>

namespace solemech::solver
{
/// An air unit in the model.
struct Chamber
{
  std::string    layer;
  const AirUnit *unit = nullptr;
  double         height = 0;    ///< between the films [m]
  GasChamber    *gas = nullptr; ///< nullptr: open
  FibreBundle   *fibres = nullptr;

  bool is_inflated() const { return unit->state != ChamberState::open && unit->gauge_pressure > 0; }
};

/// Gas of any of them flows out.
bool leaks(const std::vector<Chamber> &chambers);

/// In the order of the mesh; neither gas nor fibres yet.
std::vector<Chamber> drawn_chambers(const Case &input, const geometry::PlugMesh &mesh);

/// Those that get their pressure before they are built in: pulled flat by fibres.
std::vector<UnitToInflate> units_to_inflate(const std::vector<Chamber> &chambers, const Case &input,
                                            const std::vector<Part> &parts);

/// Fills them, in the shape that the mesh has now.
void fill(std::vector<Chamber> &chambers, const Case &input, const Discretisation &mesh,
          EquationOfMotion &equation);

/// Brings those without fibres to their pressure in the finished stack.
/// @param away  level that keeps the striker off the stack [m]
/// @return displacements of the mesh's unknowns; empty: there was nothing to do
Vector inflate_in_place(const std::vector<Chamber> &chambers, EquationOfMotion &equation, double away,
                        InflationFacts &facts);

/// @param x  the stack at rest
ChamberFacts facts_of(const Chamber &chamber, const geometry::ChamberMesh &drawn, const Case &input,
                      const Discretisation &mesh, const Vector &x);
} // namespace solemech::solver
