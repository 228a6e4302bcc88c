// SPDX-License-Identifier: Apache-2.0
// Points of a loaded surface: five Gauss points on each quadratic boundary face, each standing for a share of
// the reference area. Five and not three, so that the edge of a contact moves over a face in small steps.
#pragma once

#include "solver/mesh/discretisation.h"

#include <array>
#include <vector>

namespace solemech::solver
{
struct SurfacePoint
{
  std::array<int, 6>    dof;          ///< x, z of the three nodes; -1 where held
  std::array<Point, 3>  node;         ///< positions at rest [m]
  std::array<double, 3> shape, slope; ///< of the three nodes, and derivatives along the face
  Point                 at_rest;      ///< [m]
  double area; ///< reference area it stands for [m2]; per depth of one metre in a plane section [m]
};

/// Points of the faces, in their order.
std::vector<SurfacePoint> surface_points(const Discretisation                      &mesh,
                                         const std::vector<geometry::BoundaryFace> &faces);

/// Where a point of the surface is at the unknowns x [m].
inline Point position(const SurfacePoint &point, const Vector &x)
{
  Point place = point.at_rest;
  for (unsigned i = 0; i < 6; ++i)
    if (point.dof[i] >= 0)
      place[i % 2] += point.shape[i / 2] * x[point.dof[i]];
  return place;
}

/// Stretch of the surface at a point, counted along x: current length along x over reference length [-].
double reach(const SurfacePoint &point, const Vector &x);
} // namespace solemech::solver
