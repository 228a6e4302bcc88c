// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_mesh.h"

#include "geometry/errors.h"
#include "geometry/sole_mesh/plan_grid.h"
#include "geometry/sole_mesh/plan_rings.h"
#include "geometry/sole_mesh/plan_shaping.h"

#include <algorithm>
#include <map>
#include <numbers>
#include <set>

namespace solemech::geometry
{
namespace
{
using plan::Sketch;

std::vector<PlanEdge> rim_of(const std::vector<PlanCell> &cells)
{
  constexpr unsigned corners[4][2] = {{0, 2}, {1, 3}, {0, 1}, {2, 3}}; // by FaceNumber
  std::map<std::set<unsigned>, std::vector<PlanEdge>> edges;
  for (unsigned c = 0; c < cells.size(); ++c)
    for (unsigned face = 0; face < 4; ++face)
      edges[{cells[c].vertices[corners[face][0]], cells[c].vertices[corners[face][1]]}].push_back({c, face});
  std::vector<PlanEdge> rim;
  for (const auto &[ends, owners] : edges)
    if (owners.size() == 1)
      rim.push_back(owners.front());
  return rim;
}

PlanMesh finished(const Sketch &sketch, std::vector<bool> rings_fitted)
{
  PlanMesh mesh;
  for (const auto &node : sketch.nodes)
    mesh.vertices.push_back(node.at);
  for (const auto &cell : sketch.cells)
    mesh.cells.push_back({cell.corners});
  mesh.rim = rim_of(mesh.cells);
  mesh.rings_fitted = std::move(rings_fitted);
  return mesh;
}

double area_of(const Sketch &sketch)
{
  double area = 0;
  for (const auto &cell : sketch.cells)
  {
    const auto at = [&](unsigned k) { return sketch.nodes[cell.corners[k]].at; };
    area += 0.5 * plan::cross(plan::operator-(at(3), at(0)), plan::operator-(at(2), at(1)));
  }
  return area;
}

/// On the curve as drawn, or drawn in by more and more where it passes the outline closely.
bool fit(Sketch &sketch, const PlanRing &ring)
{
  const double          area = area_of(sketch);
  std::vector<PlanRing> trials{ring};
  for (const double n_rows : {0.5, 2.5, 4.5})
    trials.push_back(plan::kept_inside(sketch, ring, (ring.n_outside + n_rows) * ring.width));
  for (const auto &tried : trials)
    if (Sketch trial = sketch; plan::let_in(trial, tried))
    {
      plan::shape(trial);
      if (plan::corner_quality(trial) > least_corner && area_of(trial) > 0.99 * area)
      {
        sketch = std::move(trial);
        return true;
      }
    }
  return false;
}

PlanMesh with_rings(Sketch sketch, const std::vector<PlanRing> &rings)
{
  std::vector<bool> fitted;
  for (const auto &ring : rings)
    fitted.push_back(fit(sketch, ring));
  return finished(sketch, std::move(fitted));
}
} // namespace

PlanRing ring_along_circle(const PlanPoint &centre, double radius, double width)
{
  return {.curve =
            [=](double place) {
              const double angle = 2 * std::numbers::pi * place;
              return PlanPoint{centre[0] + radius * std::cos(angle), centre[1] + radius * std::sin(angle)};
            },
          .width = width};
}

PlanMesh make_plan_mesh(const ClosedCurve &outline, const PlanSizes &sizes)
{
  Sketch sketch = plan::sketch_of_sole(plan::Outline(outline), sizes);
  plan::shape(sketch);
  if (const double quality = plan::corner_quality(sketch); !(quality > least_corner))
    throw InvalidGeometry("least corner of the cells in plan", quality, "",
                          "more than 0.3; a rounder outline, or lines of the mesh farther apart");
  return with_rings(std::move(sketch), sizes.rings);
}

PlanMesh make_rectangle_plan(const std::vector<double> &x, const std::vector<double> &y,
                             const std::vector<PlanRing> &rings)
{
  return with_rings(plan::sketch_of_rectangle(x, y), rings);
}

double corner_quality(const PlanMesh &mesh)
{
  Sketch sketch;
  for (const auto &vertex : mesh.vertices)
    sketch.nodes.push_back({.at = vertex});
  for (const auto &cell : mesh.cells)
    sketch.cells.push_back({cell.vertices, {}});
  return plan::corner_quality(sketch);
}

double cell_area(const PlanMesh &mesh, unsigned cell)
{
  const auto &v = mesh.cells[cell].vertices;
  const auto diagonal = plan::operator-(mesh.vertices[v[3]], mesh.vertices[v[0]]);
  return 0.5 * plan::cross(diagonal, plan::operator-(mesh.vertices[v[2]], mesh.vertices[v[1]]));
}
} // namespace solemech::geometry
