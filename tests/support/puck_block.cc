// SPDX-License-Identifier: Apache-2.0
#include "tests/support/puck_block.h"

#include "materials/relaxing_branch.h"

#include <cmath>
#include <numbers>

namespace solemech::tests
{
namespace
{
using Place = std::array<double, 2>;

constexpr double mm = 1e-3, end = 60, side = 30, axis = 44, near = 10; ///< [mm]; rings reach to x = near

Place between(const Place &a, const Place &b, double share)
{
  return {a[0] + share * (b[0] - a[0]), a[1] + share * (b[1] - a[1])};
}

/// Places along a bent line from `a` over the corner to `b`.
std::vector<Place> bent(const Place &a, const Place &corner, const Place &b, const PuckMeshSize &size)
{
  std::vector<Place> line;
  for (unsigned k = 0; k < size.n_left; ++k)
    line.push_back(between(a, corner, 1.0 * k / size.n_left));
  for (unsigned k = 0; k <= size.n_right; ++k)
    line.push_back(between(corner, b, 1.0 * k / size.n_right));
  return line;
}

/// Places on a circle about the axis of the puck, from the middle plane to the end of the block.
std::vector<Place> arc(double radius, const PuckMeshSize &size)
{
  const double       corner = 0.7 * std::numbers::pi, last = std::acos((end - axis) / radius);
  std::vector<Place> line;
  const auto         add = [&](double angle) {
    line.push_back({axis + radius * std::cos(angle), radius * std::sin(angle)});
  };
  for (unsigned k = 0; k < size.n_left; ++k)
    add(std::numbers::pi + (corner - std::numbers::pi) * k / size.n_left);
  for (unsigned k = 0; k <= size.n_right; ++k)
    add(corner + (last - corner) * k / size.n_right);
  return line;
}

/// Takes places to a plan, a row of cells between each line and the one before.
class Rows
{
public:
  explicit Rows(Plan &plan) : plan_(plan) {}

  std::vector<unsigned> add(const std::vector<Place> &places)
  {
    std::vector<unsigned> numbers;
    for (const auto &place : places)
      numbers.push_back(plan_.places.size()), plan_.places.push_back({mm * place[0], mm * place[1]});
    return numbers;
  }
  /// @param first, second  the direction along them and the one from the first to the second turn left
  void join(const std::vector<unsigned> &first, const std::vector<unsigned> &second, bool round = false)
  {
    for (std::size_t k = 0; k + 1 < first.size(); ++k)
    {
      plan_.cells.push_back({first[k], first[k + 1], second[k], second[k + 1]});
      plan_.round.push_back(round);
    }
  }

private:
  Plan &plan_;
};

/// Lines of places from the core outwards, the box last.
std::vector<std::vector<Place>> lines_outwards(const PuckMeshSize &size)
{
  std::vector<std::vector<Place>> lines{bent({axis - 11, 0}, {axis - 8, 9}, {end, 3.2}, size)};
  const auto                      approach = [&](const std::vector<Place> &to, unsigned n) {
    const auto from = lines.back();
    for (unsigned layer = 1; layer <= n; ++layer)
    {
      auto &line = lines.emplace_back();
      for (std::size_t k = 0; k < to.size(); ++k)
        line.push_back(between(from[k], to[k], 1.0 * layer / n));
    }
  };
  approach(arc(size.rings.front(), size), size.n_inside);
  for (std::size_t ring = 1; ring < size.rings.size(); ++ring)
    lines.push_back(arc(size.rings[ring], size));
  approach(bent({near, 0}, {near, side}, {end, side}, size), size.n_outside);
  return lines;
}
} // namespace

Plan puck_plan(const PuckMeshSize &size)
{
  Plan       plan;
  Rows       rows(plan);
  const auto lines = lines_outwards(size);
  const auto core = rows.add(lines.front());
  // The core between its left side and its end, lines along x.
  std::vector<unsigned> below;
  for (unsigned j = 0; j <= size.n_left; ++j)
  {
    std::vector<unsigned> row;
    if (j == size.n_left)
      row.assign(core.begin() + size.n_left, core.end());
    else
    {
      std::vector<Place> inner;
      const Place        first = lines.front()[j];
      for (unsigned i = 1; i <= size.n_right; ++i)
      {
        const double s = 1.0 * i / size.n_right;
        const Place  top = lines.front()[size.n_left + i];
        inner.push_back({first[0] + s * (end - first[0]), top[1] * j / size.n_left});
      }
      row = rows.add(inner);
      row.insert(row.begin(), core[j]);
    }
    if (j > 0)
      rows.join(below, row);
    below = row;
  }
  auto last = core;
  for (std::size_t k = 1; k < lines.size(); ++k)
  {
    const auto next = rows.add(lines[k]);
    rows.join(last, next, k > size.n_inside && k < size.n_inside + size.rings.size());
    last = next;
  }
  // The rest of the block, away from the puck.
  last.resize(size.n_left + 1);
  for (unsigned i = 1; i <= size.n_far; ++i)
  {
    std::vector<Place> line;
    const double       share = 1.0 * i / size.n_far;
    for (unsigned j = 0; j <= size.n_left; ++j)
      line.push_back({near - (near + end) * (0.5 * share + 0.5 * share * share), side * j / size.n_left});
    const auto next = rows.add(line);
    rows.join(last, next);
    last = next;
  }
  return plan;
}

double strip_share(const Plan &plan, std::size_t cell, double first, double last)
{
  constexpr unsigned n = 24; // places counted along each direction
  double             inside = 0, all = 0;
  const auto        &c = plan.cells[cell];
  const auto        &p = plan.places;
  for (unsigned i = 0; i < n * n; ++i)
  {
    const double s = (i % n + 0.5) / n, t = (i / n + 0.5) / n;
    const Place  low = between(p[c[0]], p[c[1]], s), high = between(p[c[2]], p[c[3]], s);
    const Place  left = between(p[c[0]], p[c[2]], t), right = between(p[c[1]], p[c[3]], t);
    const double area = (right[0] - left[0]) * (high[1] - low[1]) - (right[1] - left[1]) * (high[0] - low[0]);
    const double y = between(low, high, t)[1];
    all += area;
    if (y > first && y < last)
      inside += area;
  }
  return inside / all;
}

namespace
{
constexpr double plate_from = 9, plate_to = 10; ///< [mm]

materials::Foam foam(double mu, double alpha, double beta, bool lossy)
{
  materials::Foam foam;
  foam.network = {{mu, alpha, beta}};
  if (lossy)
    for (const auto &[share, time] : {std::pair{0.3, 2e-3}, std::pair{0.2, 20e-3}})
      foam.branches.push_back(
        materials::RelaxingBranch(share * mu, share * foam.network_constants().bulk_modulus, time));
  return foam;
}

/// The block's cells layer by layer over the plan, shared out among the parts. A cell in the layer of the
/// plate goes to what fills most of it: shared out by area, cells of 4 to 8 mm along the edge of the strip
/// carry across it what the foam does not, and the block reads 1 % stiffer.
std::vector<solver::SolidPart> parts_of(const Plan &plan, const PuckMeshSize &size, double first, double last,
                                        bool lossy)
{
  solver::SolidPart lower{"A", {}, {}, solver::make_kernel<3>(foam(0.60e6, 8, 0.125, lossy))},
    plate{"plate",
          {},
          {},
          solver::make_kernel<3>(materials::IsotropicPlate{materials::hencky_from_young(30e9, 0.3), {}})},
    upper{"B", {}, {}, solver::make_kernel<3>(foam(0.40e6, 6, 0.10, lossy))};
  if (lossy)
    lower.density = upper.density = 200, plate.density = 1500;
  for (std::size_t layer = 0; layer + 1 < size.z.size(); ++layer)
    for (std::size_t i = 0; i < plan.cells.size(); ++i)
    {
      const double z = size.z[layer], cell = layer * plan.cells.size() + i;
      const double share =
        z >= plate_from && z < plate_to ? std::round(strip_share(plan, i, first, last)) : 0.0;
      if (share > 0)
        plate.cells.push_back(cell), plate.shares.push_back(share);
      auto &foam = z < plate_to ? lower : upper;
      if (share < 1)
        foam.cells.push_back(cell), foam.shares.push_back(1 - share);
    }
  std::vector<solver::SolidPart> parts;
  for (auto *part : {&lower, &plate, &upper})
    parts.push_back(std::move(*part));
  return parts;
}

/// Brings the nodes between the corners of a round cell to circles; at the end of the block they stay there.
void round_off(HexMesh &mesh, const Plan &plan)
{
  std::vector<Point3> moves(mesh.n_nodes(), Point3{});
  for (std::size_t cell = 0; cell < mesh.cells().size(); ++cell)
  {
    const std::size_t in_plan = cell % plan.cells.size();
    if (!plan.round[in_plan])
      continue;
    double radius[4], angle[4];
    for (unsigned c = 0; c < 4; ++c)
    {
      const auto [x, y] = plan.places[plan.cells[in_plan][c]];
      radius[c] = std::hypot(x - axis * mm, y), angle[c] = std::atan2(y, x - axis * mm);
    }
    for (unsigned a = 0; a < 27; ++a)
    {
      const unsigned node = mesh.cells()[cell][a];
      const auto    &place = mesh.nodes()[node];
      if (place[0] > end * mm - 1e-9)
        continue;
      const double s = 0.5 * (a % 3), t = 0.5 * (a / 3 % 3);
      const auto   mean = [&](const double(&at)[4]) {
        return (1 - t) * ((1 - s) * at[0] + s * at[1]) + t * ((1 - s) * at[2] + s * at[3]);
      };
      moves[node] = {axis * mm + mean(radius) * std::cos(mean(angle)) - place[0],
                     mean(radius) * std::sin(mean(angle)) - place[1], 0};
    }
  }
  mesh.move_nodes(moves);
}

std::unique_ptr<solver::SolidModel> block(const PuckMeshSize &size, double first, double last, bool lossy)
{
  const Plan                    plan = puck_plan(size);
  const unsigned                n = plan.places.size();
  std::vector<Point3>           vertices;
  std::vector<HexMesh::Corners> cells;
  for (const double z : size.z)
    for (const auto &[x, y] : plan.places)
      vertices.push_back({x, y, mm * z});
  for (unsigned layer = 0; layer + 1 < size.z.size(); ++layer)
    for (const auto &cell : plan.cells)
    {
      auto &corners = cells.emplace_back();
      for (unsigned c = 0; c < 8; ++c)
        corners[c] = cell[c % 4] + n * (layer + c / 4);
    }
  HexMesh mesh(vertices, cells);
  round_off(mesh, plan);
  return std::make_unique<solver::SolidModel>(std::move(mesh), parts_of(plan, size, first, last, lossy),
                                              [](const Point3 &place) {
                                                const bool base = place[2] < 1e-9;
                                                return std::array{base, base || place[1] < 1e-9, base};
                                              });
}
} // namespace

PuckBlock puck_block(const PuckMeshSize &size, double first, double last, double puck_mass, double penalty)
{
  PuckBlock out{block(size, first, last, puck_mass > 0), nullptr, {}};
  auto     &model = *out.model;
  out.puck = model.equation.add({{solver::Freedom::along_z}, {0.5 * puck_mass}, {}, 0});
  std::vector<solver::SolidFace> top;
  for (const auto &face : outer_faces(*model.mesh))
    if (face_centre(*model.mesh, face)[2] > mm * size.z.back() - 1e-9)
      top.push_back(face);
  out.contact = &model.equation.contribute<solver::SolidContact>(
    "puck", *model.mesh, top, geometry::SweptSurface{geometry::FlatPuck(20 * mm, 3 * mm)},
    solver::ContactSettings{.penalty = penalty}, out.puck, Point3{axis * mm, 0, mm * size.z.back()}, false);
  return out;
}
} // namespace solemech::tests
