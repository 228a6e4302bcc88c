// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/cell_shares.h"

#include <algorithm>

namespace solemech::geometry
{
namespace
{
using Quad = std::array<PlanPoint, 4>; ///< corners as in PlanCell

PlanPoint middle(const PlanPoint &a, const PlanPoint &b)
{
  return {0.5 * (a[0] + b[0]), 0.5 * (a[1] + b[1])};
}

double area_of(const std::vector<PlanPoint> &polygon)
{
  double twice = 0;
  for (std::size_t i = 0; i < polygon.size(); ++i)
  {
    const auto &a = polygon[i], &b = polygon[(i + 1) % polygon.size()];
    twice += a[0] * b[1] - a[1] * b[0];
  }
  return 0.5 * twice;
}

std::vector<PlanPoint> as_polygon(const Quad &q)
{
  return {q[0], q[1], q[3], q[2]};
}

/// Where the edge of the shape crosses the way from a to b, which lie on either side of it.
PlanPoint crossing(PlanPoint a, PlanPoint b, const PlanShape &covers)
{
  const bool at_a = covers(a);
  for (unsigned i = 0; i < 10; ++i)
  {
    const auto half = middle(a, b);
    (covers(half) == at_a ? a : b) = half;
  }
  return middle(a, b);
}

/// The part that is covered, bounded by straight lines.
double covered_piece(const Quad &quad, const PlanShape &covers)
{
  const auto             corners = as_polygon(quad);
  std::vector<PlanPoint> kept;
  for (std::size_t i = 0; i < corners.size(); ++i)
  {
    const auto &a = corners[i], &b = corners[(i + 1) % corners.size()];
    const bool  at_a = covers(a);
    if (at_a)
      kept.push_back(a);
    if (at_a != covers(b))
      kept.push_back(crossing(a, b, covers));
  }
  return area_of(kept);
}

double covered(const Quad &quad, const PlanShape &covers, unsigned depth)
{
  constexpr unsigned least_depth = 2, greatest_depth = 5;
  if (depth == greatest_depth)
    return covered_piece(quad, covers);
  const auto bottom = middle(quad[0], quad[1]), top = middle(quad[2], quad[3]);
  const auto left = middle(quad[0], quad[2]), right = middle(quad[1], quad[3]);
  const auto centre = middle(bottom, top);
  if (depth >= least_depth)
  {
    unsigned n_covered = 0;
    for (const auto &p : {quad[0], quad[1], quad[2], quad[3], bottom, top, left, right, centre})
      n_covered += covers(p);
    if (n_covered == 0 || n_covered == 9)
      return n_covered == 0 ? 0 : area_of(as_polygon(quad));
  }
  double area = 0;
  for (const Quad &quarter : {Quad{quad[0], bottom, left, centre}, Quad{bottom, quad[1], centre, right},
                              Quad{left, centre, quad[2], top}, Quad{centre, right, top, quad[3]}})
    area += covered(quarter, covers, depth + 1);
  return area;
}
} // namespace

std::vector<double> cell_shares(const PlanMesh &mesh, const PlanShape &shape)
{
  std::vector<double> shares;
  for (unsigned c = 0; c < mesh.cells.size(); ++c)
  {
    Quad quad;
    for (unsigned v = 0; v < 4; ++v)
      quad[v] = mesh.vertices[mesh.cells[c].vertices[v]];
    shares.push_back(std::clamp(covered(quad, shape, 0) / cell_area(mesh, c), 0.0, 1.0));
  }
  return shares;
}
} // namespace solemech::geometry
