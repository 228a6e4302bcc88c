// SPDX-License-Identifier: Apache-2.0
#include "geometry/worn_profile.h"

#include "geometry/errors.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace solemech::geometry
{
namespace
{
/// Slope of the edge's arc where the straight line takes over: steeper pieces of a face cannot be told by
/// places on x.
constexpr double steepest = 2;
constexpr double least_left = 1e-4; ///< of a lug's height that a face must keep over the skin, for a mesh [m]

/// The fresh face with its arcs, continued beyond them.
double cap_at(const LugOutline &outline, const LugWall &wall, double x)
{
  const double reach = wall.edge_center[0] + outline.edge_radius * steepest / std::hypot(1.0, steepest);
  const double at = std::abs(x);
  if (at <= reach)
    return surface_height_at(outline, at);
  return surface_height_at(outline, reach) - steepest * (at - reach);
}
} // namespace

WornProfile::WornProfile(const LugOutline &fresh, unsigned n_places) : fresh_(fresh)
{
  check(fresh_);
  const auto   wall = lug_wall(fresh_);
  const double reach = wall.toe[0];
  for (unsigned i = 0; i < n_places; ++i)
    places_.push_back(reach * (2.0 * i / (n_places - 1) - 1));
  for (const double x : places_)
    cap_.push_back(cap_at(fresh_, wall, x));
  depth_.assign(n_places, 0.0);
  drawn_ = section_above();
}

void WornProfile::take(const std::vector<double> &depth)
{
  for (std::size_t i = 0; i < depth_.size(); ++i)
  {
    depth_[i] += depth[i];
    is_worn_ = is_worn_ || depth[i] > 0;
  }
  if (least_height() < least_left)
    throw InvalidGeometry("height of the worn face", fresh_.skin + least_height(),
                          "more than " + in_mm(fresh_.skin + least_left) + ": the lug is worn off");
}

double WornProfile::face(std::size_t i) const
{
  return cap_[i] - depth_[i];
}

double WornProfile::face_at(double x) const
{
  const double place =
    std::clamp((x - places_.front()) / spacing(), 0.0, static_cast<double>(places_.size() - 1));
  const auto   i = std::min(static_cast<std::size_t>(place), places_.size() - 2);
  const double t = place - static_cast<double>(i);
  return (1 - t) * face(i) + t * face(i + 1);
}

double WornProfile::end(double direction) const
{
  // Inside, the face lies below the fresh surface or on it; outside of the end the wall does.
  const auto wall = lug_wall(fresh_);
  // By halving: the width jumps, and of the last two places the inner one counts.
  double low = 0, high = places_.back();
  for (int i = 0; i < 60; ++i)
  {
    const double x = 0.5 * (low + high), z = face_at(direction * x);
    (half_width_at(fresh_, std::min(z, wall.wall_top[1])) >= x ? low : high) = x;
  }
  return direction * low;
}

std::pair<double, double> WornProfile::ends() const
{
  return {end(-1), end(1)};
}

LugOutline WornProfile::outline() const
{
  auto worn = fresh_;
  if (!is_worn_)
    return worn;
  const auto [left, right] = ends();
  const double nearest = 0.3 * spacing(); // a mesh has no use for shorter pieces
  const auto   add = [&](double x) {
    worn.worn_face.push_back({x, std::min(face_at(x), surface_height_at(fresh_, x))});
  };
  add(left);
  for (const double x : places_)
    if (x > left + nearest && x < right - nearest)
      add(x);
  add(right);
  return worn;
}

double WornProfile::lost_section() const
{
  return is_worn_ ? section_above() - drawn_ : 0.0;
}

double WornProfile::section_above() const
{
  // Between places face and cap are straight, so that only walls and arcs need finer steps.
  constexpr int pieces = 8;
  const auto [left, right] = ends();
  double       lost = 0;
  const double step = spacing() / pieces;
  for (double x = places_.front() + 0.5 * step; x < places_.back(); x += step)
  {
    const double fresh = surface_height_at(fresh_, x);
    const double now =
      x < left || x > right ? std::min(fresh, std::max(face_at(x), fresh_.skin)) : face_at(x);
    lost += std::max(0.0, fresh - std::min(now, fresh)) * step;
  }
  return lost;
}

double WornProfile::mean_depth() const
{
  const auto [left, right] = ends();
  double sum = 0;
  int    n = 0;
  for (std::size_t i = 0; i < places_.size(); ++i)
    if (places_[i] >= left && places_[i] <= right)
      sum += depth_[i], ++n;
  return n > 0 ? sum / n : 0.0;
}

double WornProfile::least_height() const
{
  const auto [left, right] = ends();
  double least = fresh_.height;
  for (std::size_t i = 0; i < places_.size(); ++i)
    if (places_[i] >= left && places_[i] <= right)
      least = std::min(least, face(i) - fresh_.skin);
  return least;
}
} // namespace solemech::geometry
