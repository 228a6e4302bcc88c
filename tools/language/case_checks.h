// SPDX-License-Identifier: Apache-2.0
// What no single entry can tell: whether the parts of a case fit together. All slips at once, before any
// solve.
#pragma once

#include "solver/case.h"
#include "tools/language/problem.h"

#include <toml++/toml.h>

#include <string>
#include <vector>

namespace solemech::tools
{
/// The blocks that the parts of a case were read from, for positions; nullptr where there is none.
struct CaseBlocks
{
  std::vector<const toml::table *> layers;
  const toml::table               *plug = nullptr;
  const toml::table               *rig = nullptr;
  std::string                      rig_name;
};

/// Checks layers, air units, plug and rig against each other.
void check_case(const solver::Case &data, const CaseBlocks &blocks, materials::Problems &problems);

/// Greatest pressure that the film of a unit is taken to hold [Pa]. With fibres the side wall is an arc of
/// half the chamber height, hoop stress p r/t; without them the faces are taken as a sphere of the unit's
/// diameter, p d/(4 t) (thin-walled vessel formulas). Allowed stress 10 MPa: a third of the 30 MPa tensile
/// strength of a soft TPU (from memory).
double film_pressure_limit(const solver::Layer &layer);

/// Energy [J] that the stack can store before its weakest foam locks up: homogeneous layers in series, each
/// compressed upright with the lateral strain of its network, on the loaded area, the striker plus half the
/// stack height all round (at most the plug). An estimate for refusing hopeless drops only; infinity without
/// a foam layer.
double energy_capacity(const solver::Case &data);
} // namespace solemech::tools
