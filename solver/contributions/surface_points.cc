// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/surface_points.h"

#include <deal.II/base/quadrature_lib.h>

#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr unsigned points_per_face = 5;
}

std::vector<SurfacePoint> surface_points(const Discretisation                      &mesh,
                                         const std::vector<geometry::BoundaryFace> &faces)
{
  const dealii::QGauss<1>   rule(points_per_face);
  std::vector<SurfacePoint> points;
  for (const auto &face : faces)
  {
    const auto nodes = mesh.edge(face);
    for (unsigned q = 0; q < points_per_face; ++q)
    {
      const auto   shapes = edge_shapes(rule.point(q)[0]);
      SurfacePoint point{};
      double       tangent[2] = {};
      for (unsigned a = 0; a < 3; ++a)
      {
        point.node[a] = mesh.nodes()[nodes[a]];
        for (unsigned c = 0; c < 2; ++c)
        {
          point.dof[2 * a + c] = mesh.dof(nodes[a], c);
          tangent[c] += shapes.slope[a] * point.node[a][c];
          point.at_rest[c] += shapes.value[a] * point.node[a][c];
        }
      }
      point.shape = shapes.value, point.slope = shapes.slope;
      point.area = rule.weight(q) * std::hypot(tangent[0], tangent[1]) * mesh.around(point.at_rest[0]);
      points.push_back(point);
    }
  }
  return points;
}

double reach(const SurfacePoint &point, const Vector &x)
{
  double along = 0, drawn[2] = {};
  for (unsigned a = 0; a < 3; ++a)
  {
    const int dof = point.dof[2 * a];
    along += point.slope[a] * (point.node[a][0] + (dof >= 0 ? x[dof] : 0.0));
    for (unsigned c = 0; c < 2; ++c)
      drawn[c] += point.slope[a] * point.node[a][c];
  }
  return std::abs(along) / std::hypot(drawn[0], drawn[1]);
}
} // namespace solemech::solver
