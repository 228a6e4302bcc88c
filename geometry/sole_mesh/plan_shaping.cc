// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_shaping.h"

#include <algorithm>
#include <limits>

namespace solemech::geometry::plan
{
namespace
{
/// Value, gradient and Hessian (xx, xy, yy) over the place of one node.
struct Expansion
{
  double                value = 0;
  PlanPoint             gradient{};
  std::array<double, 3> hessian{};
};

/// A corner that a node takes part in: its cell, its number there, and what the node is to it.
struct Corner
{
  unsigned cell, corner;
  enum Part { self, first_end, second_end } part;
};

double turn_of(unsigned corner)
{
  return corner == 1 || corner == 2 ? -1.0 : 1.0;
}

/// Edges of a corner over the sides wanted, and D.
struct Edges
{
  PlanPoint first, second;
  double    l1, l2, determinant;
};

Edges edges_at(const Sketch &sketch, unsigned cell, unsigned corner)
{
  const auto &[corners, wanted] = sketch.cells[cell];
  const auto &p = sketch.nodes[corners[corner]].at;
  const auto  e1 = sketch.nodes[corners[corner ^ 1]].at - p, e2 = sketch.nodes[corners[corner ^ 2]].at - p;
  return {e1, e2, wanted[0], wanted[1], turn_of(corner) * cross(e1, e2) / (wanted[0] * wanted[1])};
}

void add_corner(Expansion &sum, const Sketch &sketch, const Corner &at, double unfolding)
{
  const auto [e1, e2, l1, l2, d] = edges_at(sketch, at.cell, at.corner);
  const double a1 = 1 / (l1 * l1), a2 = 1 / (l2 * l2), turn = turn_of(at.corner) / (l1 * l2);
  const double n = a1 * dot(e1, e1) + a2 * dot(e2, e2);
  PlanPoint    dn, dd;
  double       ddn;
  if (at.part == Corner::self)
  {
    dn = -2 * a1 * e1 - 2 * a2 * e2, ddn = 2 * (a1 + a2);
    dd = turn * PlanPoint{e1[1] - e2[1], e2[0] - e1[0]};
  }
  else if (at.part == Corner::first_end)
    dn = 2 * a1 * e1, ddn = 2 * a1, dd = turn * PlanPoint{e2[1], -e2[0]};
  else
    dn = 2 * a2 * e2, ddn = 2 * a2, dd = turn * PlanPoint{-e1[1], e1[0]};

  const double root = std::sqrt(d * d + unfolding * unfolding);
  const double area = unfolding > 0 ? 0.5 * (d + root) : d;
  if (!(area > 0))
  {
    sum.value = std::numeric_limits<double>::infinity();
    return;
  }
  const double slope = unfolding > 0 ? 0.5 * (1 + d / root) : 1;
  const double bend = unfolding > 0 ? 0.5 * unfolding * unfolding / (root * root * root) : 0;
  const double f = n / (2 * area);
  const double by_d = -n * slope / (2 * area * area);
  const double by_dd = n * (slope * slope / area - 0.5 * bend) / (area * area);
  const double mixed = -slope / (2 * area * area);
  PlanPoint    df = (1 / (2 * area)) * dn + by_d * dd;
  const auto   second = [&](unsigned i, unsigned j) {
    const double ddf =
      (i == j ? ddn / (2 * area) : 0) + mixed * (dn[i] * dd[j] + dn[j] * dd[i]) + by_dd * dd[i] * dd[j];
    return 2 * (df[i] * df[j] + f * ddf);
  };
  sum.value += f * f;
  sum.gradient = sum.gradient + 2 * f * df;
  sum.hessian[0] += second(0, 0), sum.hessian[1] += second(0, 1), sum.hessian[2] += second(1, 1);
}

class Shaping
{
public:
  explicit Shaping(Sketch &sketch) : sketch_(sketch), corners_of_(sketch.nodes.size())
  {
    for (unsigned cell = 0; cell < sketch.cells.size(); ++cell)
      for (unsigned corner = 0; corner < 4; ++corner)
      {
        const auto &corners = sketch.cells[cell].corners;
        corners_of_[corners[corner]].push_back({cell, corner, Corner::self});
        corners_of_[corners[corner ^ 1]].push_back({cell, corner, Corner::first_end});
        corners_of_[corners[corner ^ 2]].push_back({cell, corner, Corner::second_end});
      }
  }

  /// One round over the nodes; the longest way of a node over the edges there.
  double sweep()
  {
    set_unfolding();
    double longest = 0;
    for (unsigned node = 0; node < sketch_.nodes.size(); ++node)
      if (!sketch_.nodes[node].fixed)
        longest = std::max(longest, move(node));
    return longest;
  }

private:
  Sketch                          &sketch_;
  std::vector<std::vector<Corner>> corners_of_;
  double                           unfolding_ = 0;

  void set_unfolding()
  {
    double least = std::numeric_limits<double>::infinity();
    for (unsigned cell = 0; cell < sketch_.cells.size(); ++cell)
      for (unsigned corner = 0; corner < 4; ++corner)
        least = std::min(least, edges_at(sketch_, cell, corner).determinant);
    // Common practice, no source: a tenth of a cell beyond the worst fold.
    unfolding_ = least > 1e-3 ? 0 : std::sqrt(1e-2 + 0.04 * least * least);
  }

  Expansion expand(unsigned node) const
  {
    Expansion sum;
    for (const auto &corner : corners_of_[node])
      add_corner(sum, sketch_, corner, unfolding_);
    return sum;
  }

  /// A step of Newton's method on what is convex of the sum, halved until the sum falls.
  double move(unsigned number)
  {
    Node      &node = sketch_.nodes[number];
    const Node old = node;
    const auto here = expand(number);
    const auto [xx, xy, yy] = here.hessian;
    const auto &g = here.gradient;
    PlanPoint   along{}, step{};
    double      way = 0;
    if (node.rail != no_rail)
    {
      along = slope(sketch_.rails[node.rail], node.place);
      const double curvature =
        xx * along[0] * along[0] + 2 * xy * along[0] * along[1] + yy * along[1] * along[1];
      way = -dot(g, along) / std::max(std::abs(curvature), 1e-300);
      step = way * along;
    }
    else
    {
      const double middle = 0.5 * (xx + yy), spread = std::hypot(0.5 * (xx - yy), xy);
      const double shift = std::max(0.0, spread - 0.9 * middle); // smallest eigenvalue a tenth of the mean
      const double a = xx + shift, b = yy + shift, determinant = a * b - xy * xy;
      step = {(-g[0] * b + g[1] * xy) / determinant, (-g[1] * a + g[0] * xy) / determinant};
    }
    const double edge = edge_at(number);
    double       share = std::min(1.0, edge / std::max(length(step), 1e-300));
    for (unsigned halving = 0; halving < 12; ++halving, share *= 0.5)
    {
      node.place = old.place + share * way;
      node.at = node.rail != no_rail ? sketch_.rails[node.rail](node.place) : old.at + share * step;
      if (expand(number).value < here.value)
        return length(node.at - old.at) / edge;
    }
    node = old;
    return 0;
  }

  /// Mean edge of the cells there.
  double edge_at(unsigned node) const
  {
    double sum = 0, n = 0;
    for (const auto &[cell, corner, part] : corners_of_[node])
      if (part == Corner::self)
        for (const unsigned other : {1u, 2u})
          sum +=
            length(sketch_.nodes[sketch_.cells[cell].corners[corner ^ other]].at - sketch_.nodes[node].at),
            ++n;
    return sum / n;
  }
};
} // namespace

void shape(Sketch &sketch)
{
  constexpr unsigned n_most = 150;
  constexpr double   settled = 2e-3; // of an edge
  Shaping            shaping(sketch);
  for (unsigned i = 0; i < n_most; ++i)
    if (shaping.sweep() < settled)
      break;
}
} // namespace solemech::geometry::plan
