// SPDX-License-Identifier: Apache-2.0
#include "solver/free_faces.h"

#include "geometry/meeting.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

namespace solemech::solver
{
namespace
{
/// Faces count as meeting when they come closer than this share of the shorter half of a cell face there:
/// what is left of the gap is far below what the mesh can show.
constexpr double   closeness = 0.05;
constexpr unsigned segments_a_face = 2; // from node to node; a face bends little between three nodes
} // namespace

const char *const cure_of_meeting_faces = "Faces that touch each other are not in the model: try less load "
                                          "or energy, a rounder striker or one of another "
                                          "width, firmer layers, or a wrapped side";

FreeFaces::FreeFaces(const Discretisation &mesh, const Contact &striker) : mesh_(&mesh), striker_(&striker)
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
  for (const auto &[node, face] : starting)
    if (!ends.contains(node))
    {
      std::vector<unsigned> chain{face};
      for (auto next = starting.find(mesh.edge(faces[face])[2]); next != starting.end();
           next = starting.find(mesh.edge(faces[next->second])[2]))
        chain.push_back(next->second);
      lines_.push_back(joined(std::move(chain)));
    }
  for (const auto &chamber : mesh.mesh().chambers)
  {
    auto line = joined(chamber.wetted_faces);
    for (std::size_t i = 0; i < line.faces.size(); ++i)
      line.piles[i] = std::any_of(chamber.facing.begin(), chamber.facing.end(), [&](const auto &pair) {
        return pair.first == line.faces[i] || pair.second == line.faces[i];
      });
    lines_.push_back(std::move(line));
  }
}

FreeFaces::Line FreeFaces::joined(std::vector<unsigned> faces) const
{
  Line line;
  for (const unsigned face : faces)
  {
    const auto nodes = mesh_->edge(mesh_->mesh().faces[face]);
    if (line.nodes.empty())
      line.nodes.push_back(nodes[0]);
    line.nodes.push_back(nodes[1]);
    line.nodes.push_back(nodes[2]);
  }
  line.piles.assign(faces.size(), false);
  line.faces = std::move(faces);
  return line;
}

std::string FreeFaces::face_name(unsigned face) const
{
  const auto &boundary = mesh_->mesh().faces[face];
  const auto &part = mesh_->mesh().part_names[mesh_->mesh().cells[boundary.cell].part];
  const char *kind = boundary.id == static_cast<int>(geometry::BoundaryId::top)    ? "top"
                     : boundary.id == static_cast<int>(geometry::BoundaryId::side) ? "side"
                                                                                   : "inner face";
  return fmt::format("the {} of {}", kind, part);
}

Point FreeFaces::place(unsigned node, const Vector &x) const
{
  Point place = mesh_->nodes()[node];
  for (unsigned c = 0; c < 2; ++c)
    if (const int dof = mesh_->dof(node, c); dof >= 0)
      place[c] += x[dof];
  return place;
}

bool FreeFaces::touches_striker(unsigned face, const Vector &x) const
{
  if (mesh_->mesh().faces[face].id != static_cast<int>(geometry::BoundaryId::top))
    return false;
  const auto         nodes = mesh_->edge(mesh_->mesh().faces[face]);
  constexpr unsigned n_samples = 9;
  for (unsigned i = 0; i < n_samples; ++i)
  {
    const auto shapes = edge_shapes(i / (n_samples - 1.0));
    Point      point{};
    for (unsigned a = 0; a < nodes.size(); ++a)
      for (unsigned c = 0; c < 2; ++c)
        point[c] += shapes.value[a] * place(nodes[a], x)[c];
    if (striker_->distance(point, x) < 0)
      return true;
  }
  return false;
}

FaceMeeting FreeFaces::words(const Point &place, const std::string &what) const
{
  return {place,
          fmt::format("{} {:.1f} mm from the {}, {:.1f} mm above the ground", what, 1e3 * place[0],
                      mesh_->section() == MeshSection::axisymmetric ? "axis" : "middle", 1e3 * place[1])};
}

std::optional<FaceMeeting> FreeFaces::side_on_striker(const Vector &x) const
{
  const auto &line = lines_.front();
  for (std::size_t i = 0; i < line.faces.size(); ++i)
  {
    if (mesh_->mesh().faces[line.faces[i]].id != static_cast<int>(geometry::BoundaryId::side))
      continue;
    // From the middle of the face on: its first node may be the rim, which belongs to the top as well.
    for (std::size_t node = segments_a_face * i + 1; node <= segments_a_face * (i + 1); ++node)
    {
      const auto here = place(line.nodes[node], x), before = place(line.nodes[node - 1], x);
      if (striker_->distance(here, x) < -closeness * std::hypot(here[0] - before[0], here[1] - before[1]))
        return words(here, face_name(line.faces[i]) + " meets the striker");
    }
  }
  return {};
}

std::optional<FaceMeeting> FreeFaces::meeting(const Vector &x) const
{
  if (const auto met = side_on_striker(x))
    return met;
  std::vector<Point> points;
  for (const auto &line : lines_)
  {
    points.clear();
    for (const unsigned node : line.nodes)
      points.push_back(place(node, x));
    const auto found = geometry::find_meeting(points, closeness, [&](std::size_t i, std::size_t j) {
      i /= segments_a_face, j /= segments_a_face;
      return (line.piles[i] && line.piles[j]) ||
             (touches_striker(line.faces[i], x) && touches_striker(line.faces[j], x));
    });
    if (!found)
      continue;
    const auto first = face_name(line.faces[found->first / segments_a_face]);
    const auto second = face_name(line.faces[found->second / segments_a_face]);
    return words(found->place, first == second ? first + " folds onto itself" : first + " meets " + second);
  }
  return {};
}
} // namespace solemech::solver
