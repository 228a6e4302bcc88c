// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole_mesh/sole_mesh.h"

#include "geometry/errors.h"
#include "geometry/sole_mesh/cell_shares.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace solemech::geometry
{
namespace
{
std::vector<double> interfaces(const SoleBody &body, double x)
{
  std::vector<double> heights;
  for (std::size_t layer = body.n_layers(); layer-- > 0;)
    heights.push_back(body.lower_face(layer, x));
  heights.push_back(body.upper_face(0, x));
  return heights;
}

CarriedBy carried_by(const SoleBody &body)
{
  return [&body](double x, double z) { return body.bottom().placed(x, z); };
}

std::vector<unsigned> from_the_ground(const std::vector<unsigned> &n_cells)
{
  return {n_cells.rbegin(), n_cells.rend()};
}

double greatest_thickness(const SoleBody &body, std::size_t layer)
{
  double greatest = 0;
  for (unsigned i = 0; i <= 50; ++i)
    greatest = std::max(greatest, body.thickness(layer, body.length() * i / 50));
  return greatest;
}

/// Quadratic cells: one for a skin or a plate, two for a foam, three for a thick one. Common practice, no
/// source.
unsigned n_cells_through(double thickness)
{
  return thickness > 15e-3 ? 3 : thickness > 3.5e-3 ? 2 : 1;
}

/// Layers whose material is found somewhere in a layer: itself, its host, the host of that.
std::set<std::size_t> possible_fillings(const SoleBody &body, std::size_t layer)
{
  std::set<std::size_t> found;
  while (found.insert(layer).second)
    layer = body.host(layer);
  return found;
}

/// The place, or the nearest one across the foot that is inside: chords of a hollow outline, at the waist,
/// lie outside it.
PlanPoint inside(const Outline &outline, const PlanPoint &p)
{
  constexpr double rounding = 1e-7; // [m]
  const double     x = std::clamp(p[0], rounding, outline.length() - rounding);
  const auto       across = outline.across(x);
  const double     room = std::min(rounding, across.width() / 2);
  return {x, std::clamp(p[1], across.low + room, across.high - room)};
}

std::vector<std::vector<Filling>> fillings_of(const SoleBody &body, const PlanMesh &plan, std::size_t layer)
{
  std::vector<std::vector<Filling>> fillings(plan.cells.size());
  for (const std::size_t filling : possible_fillings(body, layer))
  {
    const auto shares = cell_shares(
      plan, [&](const PlanPoint &p) { return body.filled_by(layer, inside(body.outline(), p)) == filling; });
    for (std::size_t c = 0; c < shares.size(); ++c)
      if (shares[c] > 0)
        fillings[c].push_back({static_cast<unsigned>(filling), shares[c]});
  }
  // where three meet in a cell, each is right to a thousandth
  for (auto &cell : fillings)
  {
    double sum = 0;
    for (const auto &part : cell)
      sum += part.share;
    for (auto &part : cell)
      part.share /= sum;
  }
  return fillings;
}

double width_of(const Outline &outline)
{
  double widest = 0;
  for (unsigned i = 1; i < 50; ++i)
    widest = std::max(widest, outline.across(outline.length() * i / 50).width());
  return widest;
}
} // namespace

SoleSizes sole_sizes(const SoleBody &body, double error)
{
  if (!(error >= 0.002 && error <= 0.1))
    throw InvalidGeometry("error of the mesh", error * 100, "%", "0.2 to 10 %");
  const double finer = std::pow(0.03 / error, 0.25);
  const double ball = body.ball_line().centre();
  SoleSizes    sizes{
       .plan = {.along = body.length() / 24 / finer, .across = width_of(body.outline()) / 9 / finer},
       .n_cells = {}};
  sizes.plan.finer = {{ball - 40e-3, ball + 40e-3, std::min(9e-3 / finer, sizes.plan.along)}};
  for (std::size_t layer = 0; layer < body.n_layers(); ++layer)
    sizes.n_cells.push_back(n_cells_through(greatest_thickness(body, layer)));
  return sizes;
}

PlanRing striker_ring(const PlanPoint &centre, double radius, double error)
{
  return ring_along_circle(centre, radius, 3e-3 * std::sqrt(std::min(error, 0.02) / 0.02));
}

SoleMesh make_sole_mesh(const SoleBody &body, const SoleSizes &sizes)
{
  const auto &ball = body.ball_line();
  PlanSizes   plan = sizes.plan;
  plan.lines.push_back({.low = ball.medial[0], .high = ball.lateral[0]});
  SoleMesh mesh;
  mesh.plan =
    make_plan_mesh([&](double place) { return body.outline().at(2 * std::numbers::pi * place); }, plan);
  mesh.columns = make_column_mesh(
    mesh.plan, [&](const PlanPoint &p) { return interfaces(body, p[0]); }, from_the_ground(sizes.n_cells),
    carried_by(body));
  for (std::size_t layer = 0; layer < body.n_layers(); ++layer)
    mesh.fillings.push_back(fillings_of(body, mesh.plan, layer));
  return mesh;
}

PlugMesh make_sole_section(const SoleBody &body, const SoleSizes &sizes,
                           const std::vector<std::string> &layer_names, double end,
                           const std::vector<double> &stops)
{
  auto all_stops = stops;
  all_stops.push_back(body.ball_line().centre());
  const auto lines = section_lines(end, body.length() - end, sizes.plan.along, sizes.plan.finer, all_stops);
  const auto part = [&](unsigned from_ground, double x) {
    return static_cast<int>(body.filled_by(body.n_layers() - 1 - from_ground, {x, 0}));
  };
  return make_section_mesh(
    lines, [&](double x) { return interfaces(body, x); }, from_the_ground(sizes.n_cells), layer_names, part,
    carried_by(body));
}
} // namespace solemech::geometry
