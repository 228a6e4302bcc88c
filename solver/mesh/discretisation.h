// SPDX-License-Identifier: Apache-2.0
// A plug mesh with quadratic elements: what is held, which faces are joined, nodes along faces, parts.
#pragma once

#include "geometry/chamber.h"
#include "geometry/plug_mesh.h"
#include "solver/mesh/quadratic_mesh.h"

#include <functional>

namespace solemech::solver
{
using MeshSection = geometry::Section;
using Point = std::array<double, 2>;

/// Which displacements are held at a boundary face: radial, vertical.
using Held = std::function<std::array<bool, 2>(const geometry::BoundaryFace &)>;

/// Three nodes along an edge.
using EdgeNumbers = std::array<unsigned, 3>;

class Discretisation : public QuadraticMesh<2>
{
public:
  Discretisation(const geometry::PlugMesh &mesh, MeshSection section, const Held &held);

  MeshSection               section() const { return section_; }
  const geometry::PlugMesh &mesh() const { return mesh_; }

  /// Nodes of a boundary face in the direction of geometry::face_vertices.
  EdgeNumbers edge(const geometry::BoundaryFace &face) const;

  using QuadraticMesh::group;
  /// Elements of a part (`positions`, `offset`: as in QuadraticMesh::group).
  ElementGroup group(int part, unsigned n_branches, const std::vector<Point> &positions,
                     const std::vector<Point> &offset) const;

private:
  const geometry::PlugMesh mesh_;
  MeshSection              section_;
};

/// Quadratic shape functions and their slopes at s in [0, 1].
struct EdgeShapes
{
  std::array<double, 3> value, slope;
};
EdgeShapes edge_shapes(double s);
} // namespace solemech::solver
