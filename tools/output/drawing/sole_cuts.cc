// SPDX-License-Identifier: Apache-2.0
#include "tools/output/drawing/sole_cuts.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <numbers>
#include <optional>
#include <tuple>

namespace solemech::tools
{
namespace
{
using geometry::PlanPoint;
using geometry::SoleBody;
constexpr double mm = 1e3;

/// A cut in plan: points in order, and where a height over one of them is drawn.
struct Cut
{
  std::vector<PlanPoint>                                 points;
  std::function<Point(const PlanPoint &, double height)> drawn;
};

/// What lies at a point between two heights.
struct Slab
{
  CutPiece::Kind kind = CutPiece::Kind::material;
  std::size_t    layer = 0;
  double         low = 0, high = 0;
  double         depth = 0; ///< of a gap: where it changes there is a step

  bool goes_on_in(const Slab &next) const
  {
    return std::tie(kind, layer, depth) == std::tie(next.kind, next.layer, next.depth);
  }
};
using SlabAt = std::function<std::optional<Slab>(const PlanPoint &)>;

/// The polygons of what lies along a cut, one for each stretch without a break.
void add_pieces(const Cut &cut, const SlabAt &slab_at, std::vector<CutPiece> &pieces)
{
  constexpr std::size_t            stride = 8; // chords of the faces
  const auto                      &points = cut.points;
  std::vector<std::optional<Slab>> slabs;
  for (const auto &point : points)
    slabs.push_back(slab_at(point));
  for (std::size_t first = 0; first < points.size();)
  {
    std::size_t last = first;
    while (last + 1 < points.size() && slabs[first] && slabs[last + 1] &&
           slabs[first]->goes_on_in(*slabs[last + 1]))
      ++last;
    if (slabs[first])
    {
      CutPiece piece{slabs[first]->kind, slabs[first]->layer, {}};
      Polygon  back;
      // Up to the next point, so that nothing is left between two pieces.
      const std::size_t end = std::min(last + 1, points.size() - 1);
      for (std::size_t i = first; i <= end; i = i == end ? end + 1 : std::min(i + stride, end))
      {
        const auto &slab = *slabs[std::min(i, last)];
        piece.outline.push_back(cut.drawn(points[i], slab.low));
        back.push_back(cut.drawn(points[i], slab.high));
      }
      piece.outline.insert(piece.outline.end(), back.rbegin(), back.rend());
      pieces.push_back(std::move(piece));
    }
    first = last + 1;
  }
}

/// Materials first, from the floor up; hollows lie over them.
std::vector<CutPiece> pieces_of(const SoleBody &body, const Cut &cut)
{
  using Kind = CutPiece::Kind;
  std::vector<CutPiece> pieces;
  for (std::size_t layer = body.n_layers(); layer-- > 0;)
    add_pieces(
      cut,
      [&](const PlanPoint &point) {
        return Slab{Kind::material, body.filled_by(layer, point), body.lower_face(layer, point[0]),
                    body.upper_face(layer, point[0])};
      },
      pieces);
  add_pieces(
    cut,
    [&](const PlanPoint &point) -> std::optional<Slab> {
      const double missing = body.missing_tread(point);
      return missing > 0 ? std::optional(Slab{Kind::gap, body.n_layers() - 1, 0, missing, missing})
                         : std::nullopt;
    },
    pieces);
  for (const auto &pocket : body.shape().pockets)
    add_pieces(
      cut,
      [&](const PlanPoint &point) -> std::optional<Slab> {
        if (!covers(pocket.plan, point))
          return std::nullopt;
        return Slab{Kind::pocket, pocket.layer, body.lower_face(pocket.layer, point[0]) + pocket.floor,
                    body.upper_face(pocket.layer, point[0]) - pocket.roof};
      },
      pieces);
  return pieces;
}
} // namespace

std::vector<CutPiece> cut_along(const SoleBody &body, double y)
{
  constexpr int n = 1600;
  Cut           cut;
  for (int i = 0; i <= n; ++i)
  {
    const double x = body.length() / 2 * (1 - std::cos(std::numbers::pi * i / n));
    if (const auto span = body.outline().across(x); (y > span.low && y < span.high) || y == 0)
      cut.points.push_back({x, y});
  }
  cut.drawn = [&](const PlanPoint &point, double height) {
    const auto placed = body.bottom().placed(point[0], height);
    return Point{mm * placed[0], mm * placed[1]};
  };
  return pieces_of(body, cut);
}

std::vector<CutPiece> cut_across(const SoleBody &body, double x)
{
  constexpr int n = 600;
  const auto    span = body.outline().across(x);
  Cut           cut;
  for (int i = 0; i <= n; ++i)
    cut.points.push_back({x, span.low + span.width() * i / n});
  cut.drawn = [](const PlanPoint &point, double height) { return Point{-mm * point[1], mm * height}; };
  return pieces_of(body, cut);
}

namespace
{
using Spans = std::vector<geometry::Span>;

bool lies_in(const Spans &spans, double y)
{
  return std::ranges::any_of(spans, [&](const auto &span) { return y > span.low && y < span.high; });
}

/// Lines across the foot where one of two neighbours has material and the other none.
void add_ends(double x, const Spans &before, const Spans &after, std::vector<Polygon> &edges)
{
  std::vector<double> y;
  for (const auto *spans : {&before, &after})
    for (const auto &span : *spans)
      y.insert(y.end(), {span.low, span.high});
  std::ranges::sort(y);
  for (std::size_t i = 1; i < y.size(); ++i)
    if (const double middle = (y[i - 1] + y[i]) / 2; lies_in(before, middle) != lies_in(after, middle))
      edges.push_back({{mm * x, mm * y[i - 1]}, {mm * x, mm * y[i]}});
}
} // namespace

PlanPieces plan_pieces(const geometry::PlanRegion &region)
{
  constexpr int       n = 600;
  std::vector<double> x;
  std::vector<Spans>  pieces;
  for (int i = 0; i <= n; ++i)
  {
    x.push_back(region.from() + (region.to() - region.from()) / 2 * (1 - std::cos(std::numbers::pi * i / n)));
    pieces.push_back(region.pieces(x.back()));
  }
  PlanPieces drawn;
  add_ends(x.front(), {}, pieces.front(), drawn.edges);
  for (std::size_t first = 0; first < x.size();)
  {
    std::size_t last = first;
    while (last + 1 < x.size() && pieces[last + 1].size() == pieces[first].size())
      ++last;
    const std::size_t end = std::min(last + 1, x.size() - 1); // up to where the next run begins
    for (std::size_t k = 0; k < pieces[first].size(); ++k)
    {
      Polygon low, high;
      for (std::size_t i = first; i <= end; ++i)
      {
        const auto &piece = pieces[std::min(i, last)][k];
        low.push_back({mm * x[i], mm * piece.low});
        high.push_back({mm * x[i], mm * piece.high});
      }
      drawn.edges.insert(drawn.edges.end(), {low, high});
      low.insert(low.end(), high.rbegin(), high.rend());
      drawn.areas.push_back(std::move(low));
    }
    add_ends(x[end], pieces[last], end > last ? pieces[end] : Spans(), drawn.edges);
    first = last + 1;
  }
  return drawn;
}

Polygon in_millimetres(const std::vector<geometry::PlanPoint> &points)
{
  Polygon polygon;
  for (const auto &point : points)
    polygon.push_back({mm * point[0], mm * point[1]});
  return polygon;
}
} // namespace solemech::tools
