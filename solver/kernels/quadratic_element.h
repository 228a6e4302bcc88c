// SPDX-License-Identifier: Apache-2.0
// The quadratic element in two or three dimensions: counts, shape functions and the Gauss rule on [0, 1]^dim.
// Nodes and integration points lie on 3 x 3 (x 3) places, the first direction fastest.
#pragma once

#include <array>

namespace solemech::solver
{
/// Quadrilateral of nine nodes, hexahedron of twenty-seven.
template <int dim>
struct QuadraticElement
{
  static constexpr unsigned n_nodes = dim == 2 ? 9 : 27;
  static constexpr unsigned n_points = n_nodes;     ///< integration points
  static constexpr unsigned n_dofs = dim * n_nodes; ///< node by node: r, z or x, y, z
  static constexpr unsigned n_entries = dim * dim * n_nodes * (n_nodes + 1) / 2; ///< blocks of nodes a >= b
  static constexpr unsigned n_components = dim == 2 ? 4 : 6; ///< of a symmetric tensor: rr, zz, tt, rz or
                                                             ///< xx, yy, zz, xy, yz, zx
  static constexpr unsigned n_modes = dim + 1;               ///< of the linear pressure (mixed element)
};

/// Place 0, 1 or 2 of a node or point along a direction.
constexpr unsigned place_along(unsigned node, unsigned direction)
{
  return (direction == 0 ? node : direction == 1 ? node / 3 : node / 9) % 3;
}

/// Three-point Gauss rule on [0, 1].
inline constexpr std::array<double, 3> gauss_abscissae{0.1127016653792583, 0.5, 0.8872983346207417};
inline constexpr std::array<double, 3> gauss_weights{5.0 / 18, 8.0 / 18, 5.0 / 18};

/// Quadratic Lagrange polynomials on [0, 1] with nodes 0, 1/2, 1.
constexpr double quadratic_shape(unsigned node, double s)
{
  return node == 0 ? (2 * s - 1) * (s - 1) : node == 1 ? 4 * s * (1 - s) : s * (2 * s - 1);
}

constexpr double quadratic_slope(unsigned node, double s)
{
  return node == 0 ? 4 * s - 3 : node == 1 ? 4 - 8 * s : 4 * s - 1;
}

namespace detail
{
template <int dim>
constexpr auto make_point_shapes()
{
  constexpr unsigned                   n = QuadraticElement<dim>::n_nodes;
  std::array<std::array<double, n>, n> table{};
  for (unsigned q = 0; q < n; ++q)
    for (unsigned a = 0; a < n; ++a)
    {
      table[q][a] = 1;
      for (unsigned d = 0; d < dim; ++d)
        table[q][a] *= quadratic_shape(place_along(a, d), gauss_abscissae[place_along(q, d)]);
    }
  return table;
}
template <int dim>
inline constexpr auto point_shapes = make_point_shapes<dim>();
} // namespace detail

/// Shape function of node `a` at integration point `q`.
template <int dim>
constexpr double point_shape(unsigned q, unsigned a)
{
  return detail::point_shapes<dim>[q][a];
}

/// Its derivative along direction `d` of the unit cell.
template <int dim>
constexpr double point_slope(unsigned q, unsigned a, unsigned d)
{
  double slope = 1;
  for (unsigned e = 0; e < dim; ++e)
  {
    const double s = gauss_abscissae[place_along(q, e)];
    slope *= e == d ? quadratic_slope(place_along(a, e), s) : quadratic_shape(place_along(a, e), s);
  }
  return slope;
}

template <int dim>
constexpr double point_weight(unsigned q)
{
  double weight = 1;
  for (unsigned d = 0; d < dim; ++d)
    weight *= gauss_weights[place_along(q, d)];
  return weight;
}

/// Linear pressure fields 1, s - 1/2, t - 1/2 (and so on) of the mixed element.
constexpr double pressure_shape(unsigned q, unsigned m)
{
  return m == 0 ? 1.0 : gauss_abscissae[place_along(q, m - 1)] - 0.5;
}
} // namespace solemech::solver
