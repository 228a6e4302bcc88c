// SPDX-License-Identifier: Apache-2.0
// Quadratic nine-node quadrilaterals on a plug mesh: nodes, unknowns, matrix pattern, element groups, faces.
// deal.II supplies the triangulation and the numbering of the nodes; the arrays made here feed the kernels.
#pragma once

#include "geometry/chamber.h"
#include "geometry/plug_mesh.h"
#include "solver/kernels/element_group.h"

#include <Eigen/Sparse>

#include <array>
#include <functional>
#include <vector>

namespace solemech::solver
{
using Vector = Eigen::VectorXd;
using SparseMatrix = Eigen::SparseMatrix<double, Eigen::ColMajor, int>;
using MeshSection = geometry::Section;
using Point = std::array<double, 2>;

/// Which displacements are held at a boundary face: radial, vertical.
using Held = std::function<std::array<bool, 2>(const geometry::BoundaryFace &)>;

/// Three nodes along an edge.
using EdgeNumbers = std::array<unsigned, 3>;

class Discretisation
{
public:
  Discretisation(const geometry::PlugMesh &mesh, MeshSection section, const Held &held);

  MeshSection section() const { return section_; }

  /// What a line in the section at this radius stands for: the way round the axis, or a depth of one (two for
  /// a half section, which is counted twice) [m].
  double around(double radius) const;

  std::size_t n_nodes() const { return nodes_.size(); }
  int         n_unknowns() const { return n_unknowns_; }

  /// Unknown of a node (component 0 radial, 1 vertical), or -1 where held.
  int dof(unsigned node, unsigned component) const { return dof_[2 * node + component]; }

  /// Positions at zero unknowns [m].
  const std::vector<Point> &nodes() const { return nodes_; }
  void                      move_nodes(const std::vector<Point> &displacement);

  const std::vector<std::array<unsigned, 9>> &cells() const { return cells_; } ///< 3 x 3, r fastest
  const geometry::PlugMesh                   &mesh() const { return mesh_; }

  /// Nodes of a boundary face in the direction of geometry::face_vertices.
  EdgeNumbers edge(const geometry::BoundaryFace &face) const;

  /// Lower triangle of the pattern; values all zero.
  const SparseMatrix &pattern() const { return pattern_; }

  /// Place of an entry of the lower triangle (row >= column) among the values.
  int slot(int row, int column) const;

  /// Adds to an entry of the lower triangle.
  void add_entry(std::vector<double> &values, int row, int column, double value) const
  {
    values[slot(row, column)] += value;
  }

  /// Elements of a part. `positions` are the node positions of its stress-free shape; `offset` the
  /// displacement of that shape into the drawn one, or empty.
  ElementGroup group(int part, unsigned n_branches, const std::vector<Point> &positions,
                     const std::vector<Point> &offset) const;

  /// Adds the consistent mass of a group to the values of a matrix of this pattern [kg].
  void add_mass(const ElementGroup &group, double density, double *values) const;

private:
  const geometry::PlugMesh             mesh_;
  MeshSection                          section_;
  std::vector<Point>                   nodes_;
  std::vector<std::array<unsigned, 9>> cells_;
  std::vector<int>                     dof_;
  int                                  n_unknowns_ = 0;
  SparseMatrix                         pattern_;

  void number_nodes();
  void make_pattern();
  void place(ElementBatch &batch, unsigned lane, std::size_t cell) const;
};

/// Quadratic shape functions and their slopes at s in [0, 1].
struct EdgeShapes
{
  std::array<double, 3> value, slope;
};
EdgeShapes edge_shapes(double s);
} // namespace solemech::solver
