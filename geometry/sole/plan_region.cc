// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/plan_region.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <numbers>

namespace solemech::geometry
{
namespace
{
constexpr double pi = std::numbers::pi;

/// One edge drawn in: y over x as a fine polyline that only goes forward.
class DrawnIn
{
public:
  DrawnIn(const Outline &edge, const std::function<double(double)> &inset, bool is_medial)
  {
    constexpr int n = 1000;
    for (int i = 0; i <= n; ++i)
    {
      const double phi = is_medial ? 2 * pi - pi * i / n : pi * i / n;
      const auto   at = edge.at(phi), along = edge.along(phi);
      const double length = std::hypot(along[0], along[1]), distance = inset(at[0]);
      // The curve runs from heel over lateral to toe: inside lies on its right.
      const PlanPoint point{at[0] + distance * along[1] / length, at[1] - distance * along[0] / length};
      if (points_.empty() || point[0] > points_.back()[0])
        points_.push_back(point);
    }
  }

  double from() const { return points_.front()[0]; }
  double to() const { return points_.back()[0]; }

  double y(double x) const
  {
    const auto right = std::ranges::upper_bound(points_, x, {}, [](const PlanPoint &p) { return p[0]; });
    if (right == points_.begin() || right == points_.end())
      return right == points_.begin() ? points_.front()[1] : points_.back()[1];
    const auto  &b = *right, &a = *(right - 1);
    const double share = (x - a[0]) / (b[0] - a[0]);
    return (1 - share) * a[1] + share * b[1];
  }

private:
  std::vector<PlanPoint> points_;
};
} // namespace

Span SlotShape::across(double x) const
{
  if (x < from || x > to)
    return {};
  const double share = to > from ? (x - from) / (to - from) : 0;
  const double at = (1 - share) * middle[0] + share * middle[1];
  const double half = ((1 - share) * width[0] + share * width[1]) / 2;
  return {at - half, at + half};
}

PlanRegion::PlanRegion(const Outline &edge, const std::function<double(double)> &inset, double from,
                       double to, std::vector<SlotShape> slots)
  : from_(std::max(from, 0.0)), to_(std::min(to, edge.length())), slots_(std::move(slots))
{
  if (!inset)
  {
    edge_ = [edge](double x) { return edge.across(x); };
    return;
  }
  const auto lateral = std::make_shared<DrawnIn>(edge, inset, false);
  const auto medial = std::make_shared<DrawnIn>(edge, inset, true);
  from_ = std::max({from_, lateral->from(), medial->from()});
  to_ = std::min({to_, lateral->to(), medial->to()});
  edge_ = [lateral, medial](double x) { return Span{medial->y(x), lateral->y(x)}; };
}

Span PlanRegion::whole(double x) const
{
  if (x < from_ || x > to_)
    return {};
  const Span span = edge_(x);
  return span.width() > 0 ? span : Span{};
}

std::vector<Span> PlanRegion::pieces(double x) const
{
  const Span all = whole(x);
  if (!(all.width() > 0))
    return {};
  std::vector<Span> left{all};
  for (const auto &slot : slots_)
  {
    const Span cut = slot.across(x);
    if (!(cut.width() > 0))
      continue;
    std::vector<Span> rest;
    for (const auto &piece : left)
    {
      const Span before{piece.low, std::min(piece.high, cut.low)},
        after{std::max(piece.low, cut.high), piece.high};
      for (const auto &one : {before, after})
        if (one.width() > 0)
          rest.push_back(one);
    }
    left = std::move(rest);
  }
  return left;
}

bool PlanRegion::covers(const PlanPoint &point) const
{
  return std::ranges::any_of(pieces(point[0]),
                             [&](const Span &s) { return point[1] >= s.low && point[1] <= s.high; });
}

double PlanRegion::integral(const std::function<double(double)> &f) const
{
  // In the angle of the outline, where the round ends are smooth; midpoint rule between all ends.
  std::vector<double> ends{from_, to_};
  for (const auto &slot : slots_)
    for (const double end : {slot.from, slot.to})
      ends.push_back(std::clamp(end, from_, to_));
  std::ranges::sort(ends);
  constexpr int n = 2000;
  double        sum = 0;
  for (std::size_t piece = 1; piece < ends.size(); ++piece)
  {
    const double a = ends[piece - 1], b = ends[piece];
    for (int i = 0; a < b && i < n; ++i)
    {
      const double phi = pi * (i + 0.5) / n, x = a + (b - a) / 2 * (1 - std::cos(phi));
      double       width = 0;
      for (const auto &span : pieces(x))
        width += span.width();
      sum += f(x) * width * (b - a) / 2 * std::sin(phi) * pi / n;
    }
  }
  return sum;
}

double PlanRegion::area() const
{
  return integral([](double) { return 1.0; });
}
} // namespace solemech::geometry
