// SPDX-License-Identifier: Apache-2.0
#include "geometry/lug_mesh.h"

#include "geometry/errors.h"

#include "numerics/rising_root.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>

namespace solemech::geometry
{
namespace
{
using LugPoint = std::array<double, 2>;
constexpr unsigned none = static_cast<unsigned>(-1);

LugPoint mirrored(const LugPoint &p)
{
  return {-p[0], p[1]};
}

/// A curve by its length: arcs and straight pieces, one after the other.
class Path
{
public:
  void add_line(const LugPoint &from, const LugPoint &to)
  {
    const double length = std::hypot(to[0] - from[0], to[1] - from[1]);
    if (length > 0)
      add(length, [=](double s) {
        const double t = s / length;
        return LugPoint{from[0] + t * (to[0] - from[0]), from[1] + t * (to[1] - from[1])};
      });
  }

  void add_arc(const LugPoint &center, double radius, double from, double to)
  {
    const double turn = to > from ? 1.0 : -1.0;
    add(radius * std::abs(to - from), [=](double s) {
      const double angle = from + turn * s / radius;
      return LugPoint{center[0] + radius * std::cos(angle), center[1] + radius * std::sin(angle)};
    });
  }

  double length() const { return ends_.empty() ? 0.0 : ends_.back(); }

  LugPoint at(double s) const
  {
    std::size_t i = std::upper_bound(ends_.begin(), ends_.end(), s) - ends_.begin();
    i = std::min(i, ends_.size() - 1);
    return pieces_[i](s - (i > 0 ? ends_[i - 1] : 0.0));
  }

  /// Lengths at which one piece goes over into the next.
  std::vector<double> joints() const { return {ends_.begin(), ends_.end() - 1}; }

  /// Length from the start up to a height; the path must rise.
  double length_to_height(double z) const
  {
    return numerics::rising_root([&](double s) { return at(s)[1] - z; }, 0, length());
  }

private:
  std::vector<std::function<LugPoint(double)>> pieces_;
  std::vector<double>                          ends_;

  void add(double length, std::function<LugPoint(double)> piece)
  {
    ends_.push_back(this->length() + length);
    pieces_.push_back(std::move(piece));
  }
};

/// Fractions 0..1, growing with the square of the number from either end. Where two sides of a block meet
/// half way round an arc, at 180 degrees, the block's map is like z^2, and only this spacing keeps its cells
/// well shaped.
std::vector<double> spacing_of_sides(unsigned n_cells)
{
  std::vector<double> fractions;
  for (unsigned i = 0; i <= n_cells; ++i)
    fractions.push_back(0.5 * (1 - std::cos(std::numbers::pi * i / n_cells)));
  return fractions;
}

/// Cells along a side so that two of them lie on the part of an edge arc that belongs to it.
unsigned n_cells_along(double length, double arc, double level)
{
  const double n = 2 * std::numbers::pi / std::acos(1 - 2 * std::min(0.25, arc / length));
  return std::max(4u, static_cast<unsigned>(std::lround(level * n)));
}

std::vector<double> growing(double length, double first, double growth, double level)
{
  const double        n = std::log(1 + growth * length / first) / std::log(1 + growth);
  const unsigned      n_cells = std::max(1u, static_cast<unsigned>(std::lround(level * n)));
  const double        ratio = std::pow(1 + growth, 1 / level);
  std::vector<double> fractions{0.0};
  for (unsigned i = 1; i <= n_cells; ++i)
    fractions.push_back((std::pow(ratio, i) - 1) / (std::pow(ratio, n_cells) - 1));
  return fractions;
}

/// Moves the nearest inner fractions onto the joints of a path's pieces: a quadratic face across the joint of
/// an arc and a flat would stand out by microns and carry the first load alone.
std::vector<double> with_joints(std::vector<double> fractions, const Path &path, double length)
{
  for (const double joint : path.joints())
  {
    const double wanted = joint / length;
    if (wanted <= 1e-9 || wanted >= 1 - 1e-9)
      continue;
    std::size_t nearest = 1;
    for (std::size_t i = 1; i + 1 < fractions.size(); ++i)
      if (std::abs(fractions[i] - wanted) < std::abs(fractions[nearest] - wanted))
        nearest = i;
    if (nearest + 1 < fractions.size() && fractions[nearest - 1] < wanted && wanted < fractions[nearest + 1])
      fractions[nearest] = wanted;
  }
  return fractions;
}

/// Middles of the intervals between fractions.
std::vector<double> middles(const std::vector<double> &fractions)
{
  std::vector<double> result;
  for (std::size_t i = 1; i < fractions.size(); ++i)
    result.push_back(0.5 * (fractions[i - 1] + fractions[i]));
  return result;
}

std::vector<LugPoint> points_along(const Path &path, double length, const std::vector<double> &fractions)
{
  std::vector<LugPoint> points;
  for (const double f : fractions)
    points.push_back(path.at(f * length));
  return points;
}

/// The four curves of the lug's block and the open skin on the right.
struct Sides
{
  std::vector<LugPoint> left_wall, right_wall; ///< upwards
  std::vector<LugPoint> root, face;            ///< from left to right
  std::vector<LugPoint> open_skin;             ///< from the right end of the root to half the spacing
  std::vector<double>   across, upwards;       ///< fractions of face and wall
  std::vector<LugPoint> left_middles, right_middles, face_middles,
    open_middles; ///< between those points, on the curves
};

Path wall_path(const LugOutline &outline, const LugWall &wall)
{
  Path         path;
  const double middle = 0.5 * (wall.fillet_from + wall.fillet_to);
  path.add_arc(wall.fillet_center, outline.fillet, middle, wall.fillet_to);
  path.add_line(wall.wall_bottom, wall.wall_top);
  path.add_arc(wall.edge_center, outline.edge_radius, wall.edge_from, wall.edge_to);
  return path;
}

Path face_path(const LugOutline &outline, const LugWall &wall, double corner)
{
  Path path;
  if (!outline.worn_face.empty())
  {
    for (std::size_t i = 1; i < outline.worn_face.size(); ++i)
      path.add_line(outline.worn_face[i - 1], outline.worn_face[i]);
    return path;
  }
  constexpr double pi = std::numbers::pi;
  path.add_arc(mirrored(wall.edge_center), outline.edge_radius, pi - corner, pi / 2);
  path.add_line({-wall.edge_center[0], outline.skin + outline.height},
                {wall.edge_center[0], outline.skin + outline.height});
  path.add_arc(wall.edge_center, outline.edge_radius, pi / 2, corner);
  return path;
}

Sides sides(const LugOutline &outline, double level)
{
  const auto   wall = lug_wall(outline);
  const double corner = 0.5 * (wall.edge_from + wall.edge_to); // of the block: half way round the edge
  const Path   rise = wall_path(outline, wall), face = face_path(outline, wall, corner);
  const bool   worn = !outline.worn_face.empty();
  const double arc = outline.edge_radius * (wall.edge_to - wall.edge_from);
  const double right_end =
    worn ? rise.length_to_height(outline.worn_face.back()[1]) : rise.length() - 0.5 * arc;
  const double left_end = worn ? rise.length_to_height(outline.worn_face.front()[1]) : right_end;

  Sides        s;
  const double side = 0.5 * (left_end + right_end);
  s.upwards = with_joints(spacing_of_sides(n_cells_along(side, 0.5 * arc, level)), rise, side);
  s.across = spacing_of_sides(n_cells_along(face.length(), 0.5 * arc, level));
  if (!worn)
    s.across = with_joints(s.across, face, face.length());
  s.right_wall = points_along(rise, right_end, s.upwards);
  s.right_middles = points_along(rise, right_end, middles(s.upwards));
  for (const auto &p : points_along(rise, left_end, middles(s.upwards)))
    s.left_middles.push_back(mirrored(p));
  s.face_middles = points_along(face, face.length(), middles(s.across));
  for (const auto &p : points_along(rise, left_end, s.upwards))
    s.left_wall.push_back(mirrored(p));
  s.face = points_along(face, face.length(), s.across);
  s.left_wall.back() = s.face.front(), s.right_wall.back() = s.face.back();
  const auto &from = s.left_wall.front(), &to = s.right_wall.front();
  for (const double f : s.across)
    s.root.push_back({from[0] + f * (to[0] - from[0]), from[1] + f * (to[1] - from[1])});

  Path open;
  open.add_arc(wall.fillet_center, outline.fillet, 0.5 * (wall.fillet_from + wall.fillet_to),
               wall.fillet_from);
  open.add_line(wall.toe, {0.5 * outline.spacing, outline.skin});
  const auto along_skin =
    with_joints(growing(open.length(), 0.4 * outline.fillet, 0.5, level), open, open.length());
  s.open_skin = points_along(open, open.length(), along_skin);
  s.open_middles = points_along(open, open.length(), middles(along_skin));
  return s;
}

/// Vertices of the lug's block, [row][column]: a harmonic map, which never folds onto a convex shape (Rado,
/// Kneser, Choquet), by successive over-relaxation.
std::vector<std::vector<LugPoint>> lug_block(const Sides &s)
{
  const std::size_t n_across = s.across.size(), n_up = s.upwards.size();
  std::vector       block(n_up, std::vector<LugPoint>(n_across));
  for (std::size_t j = 0; j < n_up; ++j)
    for (std::size_t i = 0; i < n_across; ++i)
    {
      const double xi = s.across[i], eta = s.upwards[j];
      for (unsigned c = 0; c < 2; ++c)
        block[j][i][c] = (1 - eta) * s.root[i][c] + eta * s.face[i][c] + (1 - xi) * s.left_wall[j][c] +
                         xi * s.right_wall[j][c] - (1 - xi) * (1 - eta) * s.root.front()[c] -
                         xi * (1 - eta) * s.root.back()[c] - (1 - xi) * eta * s.face.front()[c] -
                         xi * eta * s.face.back()[c];
    }
  const std::size_t n_sweeps = 2 * (n_across + n_up);
  const double over = 2 / (1 + std::sin(std::numbers::pi / static_cast<double>(std::max(n_across, n_up))));
  for (std::size_t sweep = 0; sweep < n_sweeps; ++sweep)
    for (std::size_t j = 1; j + 1 < n_up; ++j)
      for (std::size_t i = 1; i + 1 < n_across; ++i)
        for (unsigned c = 0; c < 2; ++c)
          block[j][i][c] +=
            over *
            (0.25 * (block[j - 1][i][c] + block[j + 1][i][c] + block[j][i - 1][c] + block[j][i + 1][c]) -
             block[j][i][c]);
  return block;
}

/// Collects vertices and cells of a grid of columns and rows.
class Builder
{
public:
  Builder(unsigned n_columns, unsigned n_rows)
    : n_columns_(n_columns), at_((n_columns + 1) * (n_rows + 1), none)
  {
  }

  void set(unsigned column, unsigned row, const LugPoint &p)
  {
    unsigned &number = at_[row * (n_columns_ + 1) + column];
    if (number == none)
    {
      number = static_cast<unsigned>(mesh.vertices.size());
      mesh.vertices.push_back(p);
    }
  }

  unsigned add_cell(unsigned column, unsigned row, int part)
  {
    const auto vertex = [&](unsigned i, unsigned j) { return at_[j * (n_columns_ + 1) + i]; };
    mesh.cells.push_back({.vertices = {vertex(column, row), vertex(column + 1, row), vertex(column, row + 1),
                                       vertex(column + 1, row + 1)},
                          .part = part,
                          .column = column,
                          .row = row,
                          .strip = static_cast<unsigned>(part)});
    return static_cast<unsigned>(mesh.cells.size()) - 1;
  }

  unsigned add_face(unsigned cell, FaceNumber face, BoundaryId id)
  {
    mesh.faces.push_back({cell, face, static_cast<int>(id)});
    return static_cast<unsigned>(mesh.faces.size()) - 1;
  }

  PlugMesh mesh;

private:
  unsigned              n_columns_;
  std::vector<unsigned> at_;
};
} // namespace

LugMesh make_lug_mesh(const LugOutline &outline, double level)
{
  check(outline);
  if (!(level >= 0.25 && level <= 32))
    throw InvalidGeometry("mesh level", level, "", "0.25 to 32");
  const Sides    s = sides(outline, level);
  const unsigned n_open = static_cast<unsigned>(s.open_skin.size()) - 1;
  const unsigned n_across = static_cast<unsigned>(s.across.size()) - 1;
  const unsigned n_up = static_cast<unsigned>(s.upwards.size()) - 1;
  const unsigned n_skin = std::max(1u, static_cast<unsigned>(std::lround(2 * level)));
  const unsigned n_columns = 2 * n_open + n_across;

  Builder builder(n_columns, n_skin + n_up);
  // Skin: every column runs straight down from what lies above it.
  const auto top_of_skin = [&](unsigned column) {
    if (column < n_open)
      return mirrored(s.open_skin[n_open - column]);
    if (column <= n_open + n_across)
      return s.root[column - n_open];
    return s.open_skin[column - n_open - n_across];
  };
  for (unsigned row = 0; row <= n_skin; ++row)
    for (unsigned column = 0; column <= n_columns; ++column)
    {
      const auto p = top_of_skin(column);
      builder.set(column, row, {p[0], p[1] * row / n_skin});
    }
  const auto block = lug_block(s);
  for (unsigned j = 1; j <= n_up; ++j)
    for (unsigned i = 0; i <= n_across; ++i)
      builder.set(n_open + i, n_skin + j, block[j][i]);

  LugMesh lug;
  builder.mesh.part_names = {"skin", "lug"};
  for (unsigned row = 0; row < n_skin; ++row)
    for (unsigned column = 0; column < n_columns; ++column)
    {
      const unsigned cell = builder.add_cell(column, row, 0);
      if (row == 0)
        builder.add_face(cell, bottom_face, BoundaryId::base);
      if (column == 0)
        builder.add_face(cell, left_face, BoundaryId::axis);
      if (column + 1 == n_columns)
        builder.add_face(cell, right_face, BoundaryId::side);
      if (row + 1 == n_skin && (column < n_open || column >= n_open + n_across))
      {
        const bool left = column < n_open;
        const auto middle = s.open_middles[left ? n_open - 1 - column : column - n_open - n_across];
        lug.on_curves.emplace_back(builder.add_face(cell, top_face, BoundaryId::top),
                                   left ? mirrored(middle) : middle);
      }
    }
  for (unsigned j = 0; j < n_up; ++j)
    for (unsigned i = 0; i < n_across; ++i)
    {
      const unsigned cell = builder.add_cell(n_open + i, n_skin + j, 1);
      const auto     add = [&](std::vector<unsigned> &faces, FaceNumber side, const LugPoint &middle) {
        faces.push_back(builder.add_face(cell, side, BoundaryId::top));
        lug.on_curves.emplace_back(faces.back(), middle);
      };
      if (i == 0)
        add(lug.left_wall, left_face, s.left_middles[j]);
      if (i + 1 == n_across)
        add(lug.right_wall, right_face, s.right_middles[j]);
      if (j + 1 == n_up)
        add(lug.face, top_face, s.face_middles[i]);
    }
  lug.mesh = std::move(builder.mesh);
  return lug;
}
} // namespace solemech::geometry
