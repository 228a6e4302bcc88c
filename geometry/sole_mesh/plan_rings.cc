// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/plan_rings.h"

#include "geometry/sole_mesh/plan_curve.h"

#include <algorithm>
#include <map>
#include <set>

namespace solemech::geometry::plan
{
namespace
{
using Edge = std::pair<unsigned, unsigned>; ///< with its cell on the left

std::vector<Edge> edges_of(const Cell &cell)
{
  std::vector<Edge> edges;
  for (unsigned i = 0; i < 4; ++i)
    edges.emplace_back(cell.corners[around[i]], cell.corners[around[(i + 1) % 4]]);
  return edges;
}

std::map<Edge, unsigned> cells_by_edge(const Sketch &sketch)
{
  std::map<Edge, unsigned> cells;
  for (unsigned c = 0; c < sketch.cells.size(); ++c)
    for (const auto &edge : edges_of(sketch.cells[c]))
      cells[edge] = c;
  return cells;
}

/// Cells inside the curve, with those that lie in their re-entrant corners, since a row of cells cannot be
/// bent round these without harm.
std::set<unsigned> cells_inside(const Sketch &sketch, const Curve &curve)
{
  std::set<unsigned>                 inside;
  std::vector<std::vector<unsigned>> cells_at(sketch.nodes.size());
  const auto                         by_edge = cells_by_edge(sketch);
  for (unsigned c = 0; c < sketch.cells.size(); ++c)
  {
    PlanPoint centre{};
    for (const unsigned node : sketch.cells[c].corners)
    {
      centre = centre + 0.25 * sketch.nodes[node].at;
      cells_at[node].push_back(c);
    }
    bool within = curve.holds(centre);
    // where the curve cuts off more than the middle of an edge of the outline, rows must end there
    for (const auto &[a, b] : edges_of(sketch.cells[c]))
      within = within || (!by_edge.contains({b, a}) &&
                          curve.holds(between(sketch.nodes[a].at, sketch.nodes[b].at, 0.5)));
    if (within)
      inside.insert(c);
  }
  for (bool grown = true; grown;)
  {
    grown = false;
    for (const auto &cells : cells_at)
    {
      const auto n_inside =
        std::count_if(cells.begin(), cells.end(), [&](unsigned c) { return inside.contains(c); });
      const auto n_outside = static_cast<std::ptrdiff_t>(cells.size()) - n_inside;
      const bool re_entrant = cells.size() > 2 && n_outside == 1;
      bool       apart = cells.size() == 4 && n_inside == 2; // two cells that touch at a corner only
      if (apart)
        for (const unsigned c : cells)
          for (const auto &[a, b] : edges_of(sketch.cells[c]))
            if (const auto beyond = by_edge.find({b, a});
                inside.contains(c) && beyond != by_edge.end() && inside.contains(beyond->second) &&
                std::count(cells.begin(), cells.end(), beyond->second))
              apart = false;
      if (n_outside > 0 && (re_entrant || apart))
        inside.insert(cells.begin(), cells.end()), grown = true;
    }
  }
  return inside;
}

/// Edges between inside and outside, with the inside on the left.
std::vector<Edge> border(const Sketch &sketch, const std::set<unsigned> &inside)
{
  const auto        by_edge = cells_by_edge(sketch);
  std::vector<Edge> edges;
  for (const unsigned c : inside)
    for (const auto &[a, b] : edges_of(sketch.cells[c]))
      if (const auto beyond = by_edge.find({b, a});
          beyond != by_edge.end() && !inside.contains(beyond->second))
        edges.emplace_back(a, b);
  return edges;
}

/// Stacks of nodes across the rows, each from outside inwards; the first is the node that stays. Nodes slide
/// on the curve and on its offsets, the innermost ones excepted, which round the corners of the cells inside.
/// Where the curve meets a line or the outline the node stands fixed; rows beside it end freely there.
class Rows
{
public:
  Rows(Sketch &sketch, const PlanRing &ring, const std::vector<Edge> &edges)
    : sketch_(sketch), ring_(ring), curve_(ring.curve)
  {
    for (unsigned row = 0; row <= n_rows(); ++row)
    {
      rails_.push_back(static_cast<unsigned>(sketch_.rails.size()));
      sketch_.rails.emplace_back([curve = curve_, outwards = outwards(row)](double place) {
        return curve.at(place) + outwards * curve.outwards(place);
      });
    }
    std::map<unsigned, std::vector<unsigned>> neighbours;
    std::set<unsigned>                        along_a_rail;
    for (const auto &[a, b] : edges)
    {
      neighbours[a].push_back(b), neighbours[b].push_back(a);
      if (const unsigned rail = sketch_.nodes[a].rail; rail != no_rail && rail == sketch_.nodes[b].rail)
        along_a_rail.insert({a, b});
    }
    const auto is_end = [&](unsigned node) { return neighbours[node].size() == 1; };
    for (const auto &[node, beside] : neighbours)
      fitted_ = fitted_ && add_stack(node, {.is_end = is_end(node),
                                            .near_end = std::any_of(beside.begin(), beside.end(), is_end),
                                            .crosses = !along_a_rail.contains(node)});
  }

  bool fitted() const { return fitted_; }

  const std::vector<unsigned> &ends() const { return ends_; } ///< of rows at the outline

  unsigned n_rows() const { return ring_.n_outside + ring_.n_inside; }

  unsigned node(unsigned outer, unsigned row) const { return stacks_.at(outer)[row]; }

private:
  struct Stack
  {
    bool is_end, near_end; ///< of rows that end at the outline
    bool crosses;          ///< the rail of the node, if it has one
  };

  Sketch                                   &sketch_;
  const PlanRing                           &ring_;
  Curve                                     curve_;
  std::vector<unsigned>                     rails_; ///< by row
  std::map<unsigned, std::vector<unsigned>> stacks_;
  std::vector<unsigned>                     ends_;
  bool                                      fitted_ = true;

  double outwards(unsigned row) const { return ring_.width * (static_cast<double>(ring_.n_outside) - row); }

  bool add_stack(unsigned number, const Stack &stack)
  {
    const Node old = sketch_.nodes[number];
    if (stack.is_end && old.rail == no_rail)
      return false;
    if (stack.is_end)
      ends_.push_back(number);
    const double nearest = curve_.nearest(old.at);
    Node         on_curve{.rail = rails_[ring_.n_outside], .place = nearest};
    if (old.rail != no_rail && stack.crosses && !pin(on_curve, old, stack.is_end) && stack.is_end)
      return false;
    on_curve.at = sketch_.rails[on_curve.rail](on_curve.place);
    for (unsigned row = 0; row <= n_rows(); ++row)
    {
      Node node = on_curve;
      if (row != ring_.n_outside && stack.is_end)
      {
        const auto along = slope(sketch_.rails[node.rail], node.place);
        const bool outwards_is_on = dot(along, curve_.outwards(curve_.nearest(on_curve.at))) > 0;
        node.fixed = false;
        node.place += (outwards_is_on ? 1 : -1) * outwards(row) / length(along);
      }
      else if (row != ring_.n_outside)
      {
        node = {.rail = rails_[row], .place = nearest};
        if (old.rail != no_rail && stack.crosses)
          pin(node, old, false);
      }
      node.at = sketch_.rails[node.rail](node.place);
      if (row != ring_.n_outside && !stack.is_end && (stack.near_end || row == n_rows()))
        node = {.at = node.at};
      if (row > 0)
        sketch_.nodes.push_back(node);
      else
        sketch_.nodes[number] = node;
      stacks_[number].push_back(row > 0 ? static_cast<unsigned>(sketch_.nodes.size()) - 1 : number);
    }
    return true;
  }

  /// Puts a node where its rail meets that of the old node; on the rail of that one if asked.
  bool pin(Node &node, const Node &old, bool on_old) const
  {
    double on_rail = old.place;
    node.fixed = meet(sketch_.rails[old.rail], on_rail, sketch_.rails[node.rail], node.place);
    if (node.fixed && on_old)
      node.rail = old.rail, node.place = on_rail;
    return node.fixed;
  }
};

/// Moves nodes of the outline out of the way of rows that end there, in their order.
void make_room(Sketch &sketch, const Rows &rows)
{
  std::map<unsigned, std::vector<unsigned>> beside;
  const auto                                by_edge = cells_by_edge(sketch);
  for (const auto &[edge, cell] : by_edge)
    if (!by_edge.contains({edge.second, edge.first}))
      beside[edge.first].push_back(edge.second), beside[edge.second].push_back(edge.first);
  const auto push = [&](unsigned before, unsigned from) {
    for (;;)
    {
      const auto  &last = sketch.nodes[from];
      const auto  &around = beside.at(from);
      const auto   next = around[0] == before ? around[1] : around[0];
      auto        &node = sketch.nodes[next];
      const double sense = last.place > sketch.nodes[before].place ? 1 : -1;
      const double needed = last.place + 0.5 * (last.place - sketch.nodes[before].place);
      if (node.fixed || node.rail != last.rail || sense * (node.place - needed) > 0)
        return;
      node.place = needed, node.at = sketch.rails[node.rail](needed);
      before = from, from = next;
    }
  };
  for (const unsigned end : rows.ends())
  {
    push(rows.node(end, rows.n_rows() - 1), rows.node(end, rows.n_rows()));
    push(rows.node(end, 1), rows.node(end, 0));
  }
}

/// What gives way to the new rows, the cells inside and two rows outside, wants to be square.
void loosen_sides(Sketch &sketch, std::set<unsigned> cells)
{
  std::vector<bool> reached(sketch.nodes.size());
  for (unsigned row = 0; row < 3; ++row)
  {
    for (const unsigned c : cells)
      for (const unsigned node : sketch.cells[c].corners)
        reached[node] = true;
    for (unsigned c = 0; c < sketch.cells.size(); ++c)
      for (const unsigned node : sketch.cells[c].corners)
        if (reached[node])
          cells.insert(c);
  }
  for (const unsigned c : cells)
    sketch.cells[c].wanted.fill(std::sqrt(sketch.cells[c].wanted[0] * sketch.cells[c].wanted[1]));
}
} // namespace

bool let_in(Sketch &sketch, const PlanRing &ring)
{
  const Curve curve(ring.curve);
  const auto  inside = cells_inside(sketch, curve);
  const auto  edges = border(sketch, inside);
  if (edges.empty())
    return false;
  const Rows rows(sketch, ring, edges);
  if (!rows.fitted())
    return false;
  std::set<unsigned> on_border;
  for (const auto &[a, b] : edges)
    on_border.insert({a, b});
  for (const unsigned c : inside)
    for (unsigned &corner : sketch.cells[c].corners)
      if (on_border.contains(corner))
        corner = rows.node(corner, rows.n_rows());
  loosen_sides(sketch, inside);
  for (const auto &[a, b] : edges)
    for (unsigned row = 0; row < rows.n_rows(); ++row)
    {
      const Cell cell{{rows.node(a, row), rows.node(b, row), rows.node(a, row + 1), rows.node(b, row + 1)}};
      const auto side = sketch.nodes[cell.corners[1]].at - sketch.nodes[cell.corners[0]].at;
      // the innermost row makes up for the corners of the cells inside, in whatever shape suits them
      const bool   innermost = row + 1 == rows.n_rows() && row > ring.n_outside;
      const double along = std::max(length(side), ring.width);
      sketch.cells.push_back({cell.corners, {along, innermost ? along : ring.width}});
    }
  make_room(sketch, rows);
  return true;
}

PlanRing kept_inside(const Sketch &sketch, const PlanRing &ring, double margin)
{
  const Curve            curve(ring.curve);
  const auto             centre = curve.centre();
  std::vector<PlanPoint> from, way;
  const auto             by_edge = cells_by_edge(sketch);
  for (const auto &[edge, cell] : by_edge)
    if (!by_edge.contains({edge.second, edge.first}))
    {
      from.push_back(sketch.nodes[edge.first].at - centre);
      way.push_back(sketch.nodes[edge.second].at - sketch.nodes[edge.first].at);
    }
  PlanRing kept = ring;
  kept.curve = [=, drawn = ring.curve](double place) {
    const auto arm = drawn(place) - centre;
    double     share = 1;
    for (std::size_t i = 0; i < from.size(); ++i)
    {
      const double determinant = cross(arm, way[i]);
      const double reach = cross(from[i], way[i]) / determinant, along = cross(from[i], arm) / determinant;
      if (reach > 0 && along >= 0 && along <= 1)
        share = std::min(share, reach - margin / length(arm));
    }
    return centre + share * arm;
  };
  return kept;
}
} // namespace solemech::geometry::plan
