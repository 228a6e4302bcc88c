// SPDX-License-Identifier: Apache-2.0
// Quadratic elements on quadrilaterals or hexahedra: nodes, unknowns, matrix pattern, element groups. deal.II
// supplies the triangulation and the numbering of the nodes; the arrays made here feed the kernels.
#pragma once

#include "solver/kernels/element_group.h"
#include "solver/mesh/numbering.h"

#include <array>
#include <numbers>
#include <string>
#include <vector>

namespace solemech::solver
{
/// What a point of a section stands for: the way round the axis, or a depth [m]. A solid has a depth of one.
struct Depth
{
  bool   round = false;
  double plane = 1; ///< where it is not round [m]

  double at(double radius) const { return round ? 2 * std::numbers::pi * radius : plane; }
};

template <int dim>
class QuadraticMesh : public Numbering
{
public:
  using Element = QuadraticElement<dim>;
  using Point = std::array<double, dim>;
  using Corners = std::array<unsigned, 1 << dim>; ///< 2 x 2 (x 2), the first direction fastest
  using Cell = std::array<unsigned, Element::n_nodes>;

  /// Numbers the nodes; edges and faces are straight.
  QuadraticMesh(const std::vector<Point> &vertices, const std::vector<Corners> &cells, Depth depth = {});

  /// Numbers the unknowns and lays out the matrix.
  /// @param held     for each component of each node
  /// @param owner    of each node the one whose unknowns it takes, mostly itself
  /// @param coupled  sets of nodes that no element joins, but a contribution
  void number_unknowns(const std::vector<bool> &held, const std::vector<unsigned> &owner,
                       const std::vector<std::vector<unsigned>> &coupled = {});

  std::size_t n_nodes() const { return nodes_.size(); }

  /// Unknown of a node, or -1 where held. Components: radial, vertical, or x, y, z.
  int dof(unsigned node, unsigned component) const { return dof_[dim * node + component]; }

  /// Positions at zero unknowns [m].
  const std::vector<Point> &nodes() const { return nodes_; }
  void                      move_nodes(const std::vector<Point> &displacement);

  const std::vector<Cell> &cells() const { return cells_; } ///< 3 x 3 (x 3), the first direction fastest

  /// What a line in the section at this radius stands for: the way round the axis, or a depth [m].
  double around(double radius) const { return depth_.at(radius); }

  /// Elements of a part, given by the numbers of its cells. `positions` are the node positions of its
  /// stress-free shape; `offset` the displacement of that shape into the drawn one, or empty.
  ElementGroupOf<dim> group(const std::string &part, const std::vector<std::size_t> &cells,
                            unsigned n_branches, const std::vector<Point> &positions,
                            const std::vector<Point> &offset) const;

  /// Adds the consistent mass of a group to the values of a matrix of this pattern [kg].
  void add_mass(const ElementGroupOf<dim> &group, double density, double *values) const;

private:
  Depth              depth_;
  std::vector<Point> nodes_;
  std::vector<Cell>  cells_;
  std::vector<int>   dof_;

  void make_pattern(const std::vector<std::vector<unsigned>> &coupled);
  void place(ElementBatch<dim> &batch, unsigned lane, std::size_t cell) const;
  void measure(ElementBatch<dim> &batch, unsigned lane, const std::vector<Point> &positions) const;
};
} // namespace solemech::solver
