// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/surface_points.h"

#include <Eigen/Geometry>
#include <deal.II/base/quadrature_lib.h>

#include <cmath>

namespace solemech::solver
{
namespace
{
constexpr unsigned points_along = 5;

/// Nodes with their unknowns; where the point is.
template <int dim, typename Nodes>
void stand_on(SurfacePointOf<dim> &point, const QuadraticMesh<dim> &mesh, const Nodes &nodes)
{
  point.at_rest = {};
  for (unsigned a = 0; a < point.n_nodes; ++a)
  {
    point.node[a] = mesh.nodes()[nodes[a]];
    for (unsigned c = 0; c < dim; ++c)
    {
      point.dof[dim * a + c] = mesh.dof(nodes[a], c);
      point.at_rest[c] += point.shape[a] * point.node[a][c];
    }
  }
}

/// Tangent along the face: of the drawn shape, or of the one at the unknowns x.
template <int dim>
Eigen::Matrix<double, dim, 1> tangent(const SurfacePointOf<dim> &point, unsigned along,
                                      const Vector *x = nullptr)
{
  Eigen::Matrix<double, dim, 1> out = Eigen::Matrix<double, dim, 1>::Zero();
  for (unsigned i = 0; i < point.n_dofs; ++i)
  {
    const double moved = x && point.dof[i] >= 0 ? (*x)[point.dof[i]] : 0.0;
    out[i % dim] += point.slope[along][i / dim] * (point.node[i / dim][i % dim] + moved);
  }
  return out;
}
} // namespace

std::vector<SurfacePoint> surface_points(const Discretisation                      &mesh,
                                         const std::vector<geometry::BoundaryFace> &faces)
{
  const dealii::QGauss<1>   rule(points_along);
  std::vector<SurfacePoint> points;
  for (const auto &face : faces)
    for (unsigned q = 0; q < points_along; ++q)
    {
      const auto   shapes = edge_shapes(rule.point(q)[0]);
      SurfacePoint point{};
      point.shape = shapes.value, point.slope[0] = shapes.slope;
      stand_on<2>(point, mesh, mesh.edge(face));
      point.area = rule.weight(q) * tangent(point, 0).norm() * mesh.around(point.at_rest[0]);
      points.push_back(point);
    }
  return points;
}

std::vector<SurfacePointOf<3>> surface_points(const QuadraticMesh<3>       &mesh,
                                              const std::vector<SolidFace> &faces)
{
  const dealii::QGauss<1>        rule(points_along);
  std::vector<SurfacePointOf<3>> points;
  for (const auto &face : faces)
    for (unsigned q = 0; q < points_along * points_along; ++q)
    {
      const unsigned    first = q % points_along, second = q / points_along;
      const auto        s = edge_shapes(rule.point(first)[0]), t = edge_shapes(rule.point(second)[0]);
      SurfacePointOf<3> point{};
      for (unsigned a = 0; a < point.n_nodes; ++a)
      {
        point.shape[a] = s.value[a % 3] * t.value[a / 3];
        point.slope[0][a] = s.slope[a % 3] * t.value[a / 3];
        point.slope[1][a] = s.value[a % 3] * t.slope[a / 3];
      }
      stand_on(point, mesh, face_nodes(mesh, face));
      point.area =
        rule.weight(first) * rule.weight(second) * tangent(point, 0).cross(tangent(point, 1)).norm();
      points.push_back(point);
    }
  return points;
}

double reach(const SurfacePoint &point, const Vector &x)
{
  return std::abs(tangent(point, 0, &x)[0]) / tangent(point, 0).norm();
}

double reach(const SurfacePointOf<3> &point, const Vector &x)
{
  return std::abs(tangent(point, 0, &x).cross(tangent(point, 1, &x))[2]) /
         tangent(point, 0).cross(tangent(point, 1)).norm();
}
} // namespace solemech::solver
