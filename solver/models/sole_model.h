// SPDX-License-Identifier: Apache-2.0
// From the mesh of a whole sole to a solid: its hexahedra, its outer faces, and a part for each layer that
// fills the cells, or shares of them, that the mesh gives it.
#pragma once

#include "geometry/sole_mesh/sole_mesh.h"
#include "solver/models/solid_model.h"
#include "solver/sole.h"

#include <functional>

namespace solemech::solver
{
QuadraticMesh<3> solid_of(const geometry::ColumnMesh &columns);

/// Outer faces of the solid on one side of the sole.
std::vector<SolidFace> faces_on(const geometry::ColumnMesh &columns, geometry::SoleSide side);

/// The law of a layer, over its whole area.
using LayerKernel = std::function<std::unique_ptr<SolidKernelOf<3>>(const SoleLayer &)>;

/// Parts of the layers that fill something, foot side first.
std::vector<SolidPart> parts_of(const Sole &sole, const geometry::SoleMesh &mesh, const LayerKernel &kernel);
} // namespace solemech::solver
