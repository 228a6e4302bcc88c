// SPDX-License-Identifier: Apache-2.0
// A solid of hexahedra: parts of given laws, held nodes, masses. A part may fill a share of a cell only, as a
// plate does whose outline runs through it; energies and masses of the parts of a cell are added by share.
#pragma once

#include "solver/contributions/solid_body.h"
#include "solver/contributions/solid_contact.h"
#include "solver/model.h"

#include <functional>

namespace solemech::solver
{
/// Part of a solid.
struct SolidPart
{
  std::string                       name;
  std::vector<std::size_t>          cells;
  std::vector<double>               shares; ///< of each cell that the part fills, 0..1; empty: all of it
  std::unique_ptr<SolidKernelOf<3>> kernel;
  double                            density = 0; ///< [kg/m3]; 0: without mass
};

/// Takes an element as filled by a part of it only.
void fill_shares(ElementGroupOf<3> &group, const std::vector<double> &shares);

struct SolidModel : ModelOf<QuadraticMesh<3>>
{
  using Place = QuadraticMesh<3>::Point;
  /// Which components are held at a node, by its place.
  using HeldAt = std::function<std::array<bool, 3>(const Place &)>;

  /// @param solid  its unknowns not numbered yet
  SolidModel(QuadraticMesh<3> solid, std::vector<SolidPart> parts, const HeldAt &held);

  std::vector<SolidBodyOf<3> *> bodies; ///< one a part
};
} // namespace solemech::solver
