// SPDX-License-Identifier: Apache-2.0
#include "solver/contributions/self_contact.h"

#include "solver/rig_parts.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

namespace solemech::solver
{
namespace
{
constexpr double reach_share =
  0.5; // of a face's length: how near another one has to be to count, and the deepest hit
constexpr double lost_share = 0.25;        // of a face's length: what is deeper inside is on its way through
constexpr double facing_each_other = -0.2; // cosine of their normals, at most

using Edge = std::array<Point, 3>;

Edge edge_at(const SurfacePoint &point, const Vector &x)
{
  Edge edge = point.node;
  for (unsigned i = 0; i < 6; ++i)
    if (point.dof[i] >= 0)
      edge[i / 2][i % 2] += x[point.dof[i]];
  return edge;
}

double chord(const Edge &edge)
{
  return std::hypot(edge[2][0] - edge[0][0], edge[2][1] - edge[0][1]);
}

Point combined(const Edge &edge, const std::array<double, 3> &weights)
{
  Point sum{};
  for (unsigned a = 0; a < 3; ++a)
    for (unsigned c = 0; c < 2; ++c)
      sum[c] += weights[a] * edge[a][c];
  return sum;
}

/// Place on a quadratic edge nearest to a point, in [0, 1]; none when the nearest is beyond an end.
std::optional<double> nearest_place(const Edge &edge, const Point &point)
{
  const double length = chord(edge);
  const Point  along{edge[2][0] - edge[0][0], edge[2][1] - edge[0][1]};
  double s = ((point[0] - edge[0][0]) * along[0] + (point[1] - edge[0][1]) * along[1]) / (length * length);
  for (int i = 0; i < 6; ++i)
  {
    const auto  shapes = edge_shapes(std::clamp(s, -0.2, 1.2));
    const Point here = combined(edge, shapes.value), slope = combined(edge, shapes.slope);
    s = std::clamp(s, -0.2, 1.2) + ((point[0] - here[0]) * slope[0] + (point[1] - here[1]) * slope[1]) /
                                     (slope[0] * slope[0] + slope[1] * slope[1]);
  }
  return s >= 0 && s <= 1 ? std::optional(s) : std::nullopt;
}

struct Box
{
  Point low, high;

  Box(const Edge &edge, double margin)
  {
    for (unsigned c = 0; c < 2; ++c)
    {
      low[c] = std::min({edge[0][c], edge[1][c], edge[2][c]}) - margin;
      high[c] = std::max({edge[0][c], edge[1][c], edge[2][c]}) + margin;
    }
  }
  bool meets(const Box &other) const
  {
    return low[0] < other.high[0] && other.low[0] < high[0] && low[1] < other.high[1] &&
           other.low[1] < high[1];
  }
};
} // namespace

SelfContact::SelfContact(const Discretisation &mesh, double penalty) : mesh_(&mesh), penalty_(penalty)
{
  using geometry::BoundaryId;
  // Top and side in the order of travel, surroundings on the left: each face starts where another one ends.
  std::map<unsigned, unsigned> starting;
  std::set<unsigned>           ends;
  const auto                  &faces = mesh.mesh().faces;
  for (unsigned i = 0; i < faces.size(); ++i)
    if (faces[i].id == static_cast<int>(BoundaryId::top) || faces[i].id == static_cast<int>(BoundaryId::side))
    {
      const auto nodes = mesh.edge(faces[i]);
      starting[nodes[0]] = i;
      ends.insert(nodes[2]);
    }
  unsigned n_lines = 0;
  for (const auto &[node, face] : starting)
    if (!ends.contains(node))
    {
      std::vector<unsigned> line{face};
      for (auto next = starting.find(mesh.edge(faces[face])[2]); next != starting.end();
           next = starting.find(mesh.edge(faces[next->second])[2]))
        line.push_back(next->second);
      add_line(line, std::vector<bool>(line.size(), false), n_lines++);
    }
  for (const auto &chamber : mesh.mesh().chambers)
  {
    std::vector<bool> piles;
    for (const unsigned face : chamber.wetted_faces)
      piles.push_back(std::any_of(chamber.facing.begin(), chamber.facing.end(), [&](const auto &pair) {
        return pair.first == face || pair.second == face;
      }));
    add_line(chamber.wetted_faces, piles, n_lines++);
  }
}

void SelfContact::add_line(const std::vector<unsigned> &faces, const std::vector<bool> &piles, unsigned line)
{
  for (unsigned i = 0; i < faces.size(); ++i)
    faces_.push_back({faces[i], line, i, piles[i], surface_points(*mesh_, {mesh_->mesh().faces[faces[i]]})});
}

void SelfContact::begin_step(const Vector &x, double)
{
  std::vector<Box>   boxes;
  std::vector<Point> normals;
  for (const auto &face : faces_)
  {
    const auto   edge = edge_at(face.points.front(), x);
    const double length = chord(edge);
    boxes.emplace_back(edge, reach_share * length);
    normals.push_back({-(edge[2][1] - edge[0][1]) / length, (edge[2][0] - edge[0][0]) / length});
  }
  near_.clear();
  for (unsigned i = 0; i < faces_.size(); ++i)
    for (unsigned j = i + 2; j < faces_.size() && faces_[j].line == faces_[i].line; ++j)
      if (boxes[i].meets(boxes[j]) && !(faces_[i].piles && faces_[j].piles) &&
          normals[i][0] * normals[j][0] + normals[i][1] * normals[j][1] < facing_each_other)
        near_.push_back({i, j}), near_.push_back({j, i});
}

template <typename Action>
void SelfContact::for_hits(const Vector &x, const Action &action) const
{
  for (const auto &[one, other] : near_)
  {
    const auto  &met = faces_[other].points.front();
    const auto   edge = edge_at(met, x);
    const double whole = chord(edge);
    for (const auto &point : faces_[one].points)
    {
      const Point here = position(point, x);
      const auto  place = nearest_place(edge, here);
      if (!place)
        continue;
      const auto   shapes = edge_shapes(*place);
      const Point  foot = combined(edge, shapes.value), slope = combined(edge, shapes.slope);
      const double length = std::hypot(slope[0], slope[1]);
      const Point  normal{-slope[1] / length, slope[0] / length};
      const double depth = -((here[0] - foot[0]) * normal[0] + (here[1] - foot[1]) * normal[1]);
      if (depth > 0 && depth < reach_share * whole)
        action(Hit{&faces_[one], &faces_[other], &point, &met, here, shapes.value, normal, depth, whole});
    }
  }
}

bool SelfContact::add(const Vector &x, Vector &force, Tangent *tangent) const
{
  for_hits(x, [&](const Hit &hit) {
    // Both faces have points that look at the other one: each stands for half of the area.
    const double area = 0.5 * hit.point->area;
    Vector       slope = Vector::Zero(mesh_->n_unknowns()); // of the depth
    for (unsigned i = 0; i < 6; ++i)
    {
      if (hit.point->dof[i] >= 0)
        slope[hit.point->dof[i]] -= hit.point->shape[i / 2] * hit.normal[i % 2];
      if (hit.edge->dof[i] >= 0)
        slope[hit.edge->dof[i]] += hit.shape[i / 2] * hit.normal[i % 2];
    }
    force.head(mesh_->n_unknowns()) += penalty_ * hit.depth * hit.depth * area * slope;
    if (tangent)
      tangent->rank_one.push_back({std::move(slope), 2 * penalty_ * hit.depth * area});
  });
  return true;
}

void SelfContact::accept(const Vector &x, double)
{
  stored_ = 0;
  for_hits(x, [&](const Hit &hit) {
    stored_ += 0.5 * hit.point->area * penalty_ * std::pow(hit.depth, 3) / 3;
    if (lost_.empty() && hit.depth > lost_share * hit.length)
      lost_ = words(hit);
  });
  met_ = met_ || stored_ > 0;
}

std::string SelfContact::words(const Hit &hit) const
{
  const auto name = [this](const Face &face) {
    const auto &boundary = mesh_->mesh().faces[face.number];
    const auto &part = mesh_->mesh().part_names[mesh_->mesh().cells[boundary.cell].part];
    const char *kind = boundary.id == static_cast<int>(geometry::BoundaryId::top)    ? "top"
                       : boundary.id == static_cast<int>(geometry::BoundaryId::side) ? "side"
                                                                                     : "inner face";
    return fmt::format("the {} of {}", kind, part);
  };
  return fmt::format("{} folds into {} {:.1f} mm from the {}, {:.1f} mm above the ground", name(*hit.from),
                     name(*hit.to), 1e3 * hit.place[0],
                     mesh_->section() == MeshSection::axisymmetric ? "axis" : "middle", 1e3 * hit.place[1]);
}

void SelfContact::energies(std::vector<EnergyEntry> &entries) const
{
  if (met_)
    entries.push_back({rig_part::stack, "contact", EnergyKind::stored, stored_});
}
} // namespace solemech::solver
