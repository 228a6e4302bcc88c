// SPDX-License-Identifier: Apache-2.0
#include "geometry/meeting.h"

#include <algorithm>
#include <cmath>
#include <vector>

namespace solemech::geometry
{
namespace
{
using Point = std::array<double, 2>;

constexpr std::size_t block = 8; // segments under one box: a line of a hundred has a dozen boxes

struct Box
{
  Point low{1e300, 1e300}, high{-1e300, -1e300};

  void add(const Point &p)
  {
    for (int c = 0; c < 2; ++c)
      low[c] = std::min(low[c], p[c]), high[c] = std::max(high[c], p[c]);
  }
  void widen(double margin)
  {
    for (int c = 0; c < 2; ++c)
      low[c] -= margin, high[c] += margin;
  }
};

bool apart(const Box &a, const Box &b)
{
  return a.high[0] < b.low[0] || b.high[0] < a.low[0] || a.high[1] < b.low[1] || b.high[1] < a.low[1];
}

double length(const Point &a, const Point &b)
{
  return std::hypot(b[0] - a[0], b[1] - a[1]);
}

double turn(const Point &a, const Point &b, const Point &c)
{
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/// Point of the segment a b nearest to p.
Point nearest_on(const Point &a, const Point &b, const Point &p)
{
  const double dx = b[0] - a[0], dy = b[1] - a[1], square = dx * dx + dy * dy;
  const double s =
    square > 0 ? std::clamp(((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / square, 0.0, 1.0) : 0.0;
  return {a[0] + s * dx, a[1] + s * dy};
}

struct Approach
{
  double distance = 1e300;
  Point  place{};
};

Approach approach(const Point &a, const Point &b, const Point &c, const Point &d)
{
  const double from_a = turn(c, d, a), from_b = turn(c, d, b);
  if (from_a * from_b < 0 && turn(a, b, c) * turn(a, b, d) < 0)
  {
    const double s = from_a / (from_a - from_b);
    return {0, {a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])}};
  }
  Approach   best;
  const auto compare = [&](const Point &end, const Point &other_a, const Point &other_b) {
    const Point on = nearest_on(other_a, other_b, end);
    if (const double distance = length(end, on); distance < best.distance)
      best = {distance, {0.5 * (end[0] + on[0]), 0.5 * (end[1] + on[1])}};
  };
  compare(a, c, d), compare(b, c, d), compare(c, a, b), compare(d, a, b);
  return best;
}
} // namespace

std::optional<Meeting> find_meeting(std::span<const Point> line, double closeness,
                                    const std::function<bool(std::size_t, std::size_t)> &may_meet)
{
  if (line.size() < 4)
    return {};
  const std::size_t   n = line.size() - 1;
  const bool          closed = line.front() == line.back();
  std::vector<double> along(n + 1, 0.0);
  std::vector<Box>    boxes(n), blocks((n + block - 1) / block);
  for (std::size_t i = 0; i < n; ++i)
  {
    const double own = length(line[i], line[i + 1]);
    along[i + 1] = along[i] + own;
    boxes[i].add(line[i]), boxes[i].add(line[i + 1]);
    // A pair is nearer than `closeness` times its shorter length only if boxes widened by half of that each
    // touch.
    boxes[i].widen(0.5 * closeness * own);
    blocks[i / block].add(boxes[i].low), blocks[i / block].add(boxes[i].high);
  }
  const auto meet = [&](std::size_t i, std::size_t j) -> std::optional<Meeting> {
    if (apart(boxes[i], boxes[j]) || (closed && i == 0 && j == n - 1))
      return {};
    const auto found = approach(line[i], line[i + 1], line[j], line[j + 1]);
    double     way = along[j] - along[i + 1];
    if (closed)
      way = std::min(way, along[n] - along[j + 1] + along[i]);
    const double shortest = std::min({along[i + 1] - along[i], along[j + 1] - along[j], way});
    if (found.distance > closeness * shortest || (may_meet && may_meet(i, j)))
      return {};
    return Meeting{i, j, found.place};
  };
  for (std::size_t first = 0; first < blocks.size(); ++first)
  {
    std::optional<Meeting> earliest;
    for (std::size_t second = first; second < blocks.size(); ++second)
    {
      if (apart(blocks[first], blocks[second]))
        continue;
      for (std::size_t i = first * block; i < std::min(n, (first + 1) * block); ++i)
        for (std::size_t j = std::max(i + 2, second * block); j < std::min(n, (second + 1) * block); ++j)
          if (!earliest || i < earliest->first)
            if (const auto found = meet(i, j))
              earliest = found;
    }
    if (earliest)
      return earliest;
  }
  return {};
}
} // namespace solemech::geometry
