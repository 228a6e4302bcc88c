// SPDX-License-Identifier: Apache-2.0
// Points of a loaded surface: five Gauss points on each quadratic boundary face of a section, five by five on
// one of a solid, each standing for a share of the reference area. Five and not three, so that the edge of a
// contact moves over a face in small steps.
#pragma once

#include "solver/mesh/discretisation.h"
#include "solver/mesh/solid_faces.h"

#include <array>
#include <vector>

namespace solemech::solver
{
template <int dim>
struct SurfacePointOf
{
  static constexpr unsigned n_nodes = dim == 2 ? 3 : 9, n_dofs = dim * n_nodes;
  static constexpr unsigned n_of_face = dim == 2 ? 5 : 25; ///< points of a face
  using At = std::array<double, dim>;

  std::array<int, n_dofs>                          dof;     ///< components of each node; -1 where held
  std::array<At, n_nodes>                          node;    ///< positions at rest [m]
  std::array<double, n_nodes>                      shape;   ///< of the nodes
  std::array<std::array<double, n_nodes>, dim - 1> slope;   ///< derivatives along the face
  At                                               at_rest; ///< [m]
  double area; ///< reference area it stands for [m2]; per depth of one metre in a plane section [m]
};

using SurfacePoint = SurfacePointOf<2>;

/// Points of the faces, in their order.
std::vector<SurfacePoint>      surface_points(const Discretisation                      &mesh,
                                              const std::vector<geometry::BoundaryFace> &faces);
std::vector<SurfacePointOf<3>> surface_points(const QuadraticMesh<3>       &mesh,
                                              const std::vector<SolidFace> &faces);

/// Where a point of the surface is at the unknowns x [m].
template <int dim>
std::array<double, dim> position(const SurfacePointOf<dim> &point, const Vector &x)
{
  auto place = point.at_rest;
  for (unsigned i = 0; i < point.n_dofs; ++i)
    if (point.dof[i] >= 0)
      place[i % dim] += point.shape[i / dim] * x[point.dof[i]];
  return place;
}

/// Stretch of the surface at a point, seen from above: current length along x, or area over the ground, over
/// the reference one [-].
double reach(const SurfacePoint &point, const Vector &x);
double reach(const SurfacePointOf<3> &point, const Vector &x);
} // namespace solemech::solver
