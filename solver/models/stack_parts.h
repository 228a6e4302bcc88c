// SPDX-License-Identifier: Apache-2.0
// The parts of a stack and their drawing: layers, rings, films, a wall round the side.
#pragma once

#include "geometry/plug_mesh.h"
#include "solver/case.h"

#include <string>
#include <vector>

namespace solemech::solver
{
/// One part of the mesh.
struct Part
{
  std::string         name;
  materials::Material material;
  double              area_share = 1;
  bool                film = false;
};

std::vector<Part> parts_of(const Case &input);

/// Number of the film of a layer among the parts.
int film_of(const std::vector<Part> &parts, const Layer &layer);

/// The drawing of the stack for a mesh that is fine where this striker touches.
geometry::PlugOutline outline_of(const Case &input, const std::vector<Part> &parts, const Tup &tup);
} // namespace solemech::solver
