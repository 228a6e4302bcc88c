// SPDX-License-Identifier: Apache-2.0
#include "solver/models/section_line.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace solemech::solver
{
namespace
{
/// Both Gauss points of a face.
constexpr std::array<double, 2> gauss{0.21132486540518712, 0.78867513459481288};

constexpr EdgeNumbers lower_nodes{0, 1, 2}, upper_nodes{6, 7, 8}; ///< of a cell of nine
} // namespace

SectionLine::SectionLine(const Discretisation &mesh, const std::vector<std::size_t> &cells, Side side)
  : mesh_(&mesh)
{
  const auto &nodes = side == Side::lower ? lower_nodes : upper_nodes;
  for (const auto cell : cells)
    edges_.push_back(
      {mesh.cells()[cell][nodes[0]], mesh.cells()[cell][nodes[1]], mesh.cells()[cell][nodes[2]]});
  sort();
}

SectionLine::SectionLine(const Discretisation &mesh, Side side) : mesh_(&mesh)
{
  const auto wanted = side == Side::lower ? geometry::BoundaryId::base : geometry::BoundaryId::top;
  for (const auto &face : mesh.mesh().faces)
    if (face.id == static_cast<int>(wanted))
      edges_.push_back(mesh.edge(face));
  sort();
}

void SectionLine::sort()
{
  if (edges_.empty())
    throw std::invalid_argument("a line of a section has faces");
  const auto &nodes = mesh_->nodes();
  for (auto &edge : edges_)
    if (nodes[edge[0]][0] > nodes[edge[2]][0])
      std::swap(edge[0], edge[2]);
  std::ranges::sort(edges_, {}, [&](const EdgeNumbers &edge) { return nodes[edge[1]][0]; });
}

Point SectionLine::displacement(const Vector &x, unsigned node) const
{
  Point way{};
  for (unsigned c = 0; c < 2; ++c)
    if (const int dof = mesh_->dof(node, c); dof >= 0)
      way[c] = x[dof];
  return way;
}

std::vector<SectionLine::At> SectionLine::at(const Vector &x) const
{
  std::vector<At> line;
  double          way = 0;
  for (const auto &edge : edges_)
  {
    double length = 0;
    for (const double s : gauss)
    {
      const auto shapes = edge_shapes(s);
      Point      place{}, drawn{}, now{};
      for (unsigned a = 0; a < 3; ++a)
      {
        const Point &node = mesh_->nodes()[edge[a]];
        const Point  moved = displacement(x, edge[a]);
        for (unsigned c = 0; c < 2; ++c)
        {
          place[c] += shapes.value[a] * node[c];
          drawn[c] += shapes.slope[a] * node[c];
          now[c] += shapes.slope[a] * (node[c] + moved[c]);
        }
      }
      const double before = std::hypot(drawn[0], drawn[1]);
      length += 0.5 * before;
      line.push_back(
        {place[0], std::log(std::hypot(now[0], now[1]) / before),
         std::atan2(drawn[0] * now[1] - drawn[1] * now[0], drawn[0] * now[0] + drawn[1] * now[1]),
         way + s * before});
    }
    way += length;
  }
  return line;
}

Point SectionLine::displacement(const Vector &x, double place) const
{
  const auto &nodes = mesh_->nodes();
  const auto  found =
    std::ranges::find_if(edges_, [&](const EdgeNumbers &edge) { return nodes[edge[2]][0] >= place; });
  const auto  &edge = found == edges_.end() ? edges_.back() : *found;
  const double first = nodes[edge[0]][0], last = nodes[edge[2]][0];
  const auto   shapes = edge_shapes(std::clamp((place - first) / (last - first), 0.0, 1.0));
  Point        way{};
  for (unsigned a = 0; a < 3; ++a)
    for (unsigned c = 0; c < 2; ++c)
      way[c] += shapes.value[a] * displacement(x, edge[a])[c];
  return way;
}

std::vector<Point> SectionLine::drawn() const
{
  constexpr unsigned n_per_face = 32;
  std::vector<Point> places;
  for (const auto &edge : edges_)
    for (unsigned k = 0; k <= n_per_face; ++k)
    {
      const auto shapes = edge_shapes(double(k) / n_per_face);
      Point      place{};
      for (unsigned a = 0; a < 3; ++a)
        for (unsigned c = 0; c < 2; ++c)
          place[c] += shapes.value[a] * mesh_->nodes()[edge[a]][c];
      places.push_back(place);
    }
  return places;
}

double most_bent(const std::vector<SectionLine::At> &line, double window)
{
  double most = -1, where = line.front().x;
  for (std::size_t first = 0, last = 0; first < line.size(); ++first)
  {
    while (last + 1 < line.size() && line[last].way - line[first].way < window)
      ++last;
    if (line[last].way - line[first].way < 0.5 * window)
      break;
    const double bent = std::abs(line[last].turn - line[first].turn) / (line[last].way - line[first].way);
    if (bent > most)
      most = bent, where = 0.5 * (line[first].x + line[last].x);
  }
  return where;
}
} // namespace solemech::solver
