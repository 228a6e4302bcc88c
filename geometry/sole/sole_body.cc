// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/sole_body.h"

#include "geometry/errors.h"
#include "geometry/sole/sole_flaws.h"
#include "geometry/sole/trace.h"

#include <algorithm>
#include <cmath>

namespace solemech::geometry
{
namespace
{
const SoleShape &sound(const SoleShape &shape)
{
  if (const auto list = flaws(shape); !list.empty())
    throw InvalidGeometry(list.front().entry, list.front().value, list.front().cure);
  return shape;
}

MonotoneCurve thickness_curve(const LayerShape &layer, double length, double ball)
{
  return {thickness_stations(length, ball), layer.thickness};
}

PlanRegion region_of(const LayerShape &layer, const Outline &sole, double ball)
{
  const double length = sole.length(), to = layer.to > 0 ? layer.to : length;
  if (layer.own)
    return {Outline(length, *layer.own), nullptr, layer.from, to, layer.slots};
  if (std::ranges::all_of(layer.inset, [](double inset) { return inset == 0; }))
    return {sole, nullptr, layer.from, to, layer.slots};
  return {sole, MonotoneCurve(inset_zones(length, ball), layer.inset), layer.from, to, layer.slots};
}
} // namespace

double BallLine::x_at(double y) const
{
  return medial[0] + (y - medial[1]) / (lateral[1] - medial[1]) * (lateral[0] - medial[0]);
}

Outline outline_of(const OutlineShape &shape)
{
  return shape.trace.empty() ? Outline(shape.length, shape.half_widths)
                             : traced_outline(shape.trace, shape.length);
}

BallLine ball_line_of(const Outline &outline, const OutlineShape &shape)
{
  const double length = outline.length();
  const double medial = shape.ball_medial > 0 ? shape.ball_medial : usual_ball_medial * length;
  const double lateral = shape.ball_lateral > 0 ? shape.ball_lateral : usual_ball_lateral * length;
  return {{medial, outline.across(medial).low}, {lateral, outline.across(lateral).high}};
}

BottomShape bottom_of(const SoleShape &shape, double ball)
{
  BottomShape bottom = shape.bottom;
  if (bottom.toe_spring_start == 0)
    bottom.toe_spring_start = ball - 5e-3;
  return bottom;
}

std::array<double, 5> thickness_stations(double length, double ball)
{
  return {0, heel_station * length, waist_station * length, ball, length};
}

std::array<double, 4> inset_zones(double length, double ball)
{
  return {heel_station * length, waist_station * length, ball, toe_station * length};
}

SoleBody::SoleBody(const SoleShape &shape)
  : shape_(sound(shape)), outline_(outline_of(shape.outline)),
    ball_line_(ball_line_of(outline_, shape.outline)),
    bottom_(outline_.length(), bottom_of(shape, ball_line_.centre()))
{
  for (const auto &layer : shape_.layers)
  {
    thickness_.push_back(thickness_curve(layer, length(), ball_line_.centre()));
    regions_.push_back(region_of(layer, outline_, ball_line_.centre()));
  }
}

double SoleBody::lower_face(std::size_t layer, double x) const
{
  double height = 0;
  for (std::size_t below = layer + 1; below < thickness_.size(); ++below)
    height += thickness_[below](x);
  return height;
}

double SoleBody::upper_face(std::size_t layer, double x) const
{
  return lower_face(layer, x) + thickness_[layer](x);
}

std::size_t SoleBody::host(std::size_t layer) const
{
  if (const int host = shape_.layers[layer].host; host >= 0)
    return static_cast<std::size_t>(host);
  return layer > 0 ? layer - 1 : std::min(layer + 1, n_layers() - 1);
}

std::size_t SoleBody::filled_by(std::size_t layer, const PlanPoint &point) const
{
  return regions_[layer].covers(point) ? layer : host(layer);
}

double SoleBody::missing_tread(const PlanPoint &point) const
{
  double round_pods = 0, missing = 0;
  bool   on_pod = false;
  for (const auto &patch : shape_.patches)
  {
    const bool inside = covers(patch.plan, point), is_pod = patch.kind == PatchShape::Kind::pod;
    if (is_pod)
      round_pods = std::max(round_pods, patch.depth);
    if (inside)
      missing = std::max(missing, patch.depth * (is_pod ? 1 - patch.coverage : 1));
    on_pod |= inside && is_pod;
  }
  return on_pod ? missing : std::max(missing, round_pods);
}

std::vector<double> SoleBody::volumes() const
{
  const PlanRegion    everywhere(outline_, nullptr, 0, length());
  std::vector<double> volumes(n_layers());
  for (std::size_t i = 0; i < n_layers(); ++i)
  {
    const auto   thickness = [&](double x) { return thickness_[i](x); };
    const double own = regions_[i].integral(thickness);
    volumes[i] += own;
    volumes[host(i)] += everywhere.integral(thickness) - own;
  }
  for (const auto &pocket : shape_.pockets)
    volumes[pocket.layer] -=
      area(pocket.plan) * (thickness_[pocket.layer](pocket.plan.x) - pocket.floor - pocket.roof);
  if (!shape_.patches.empty())
  {
    // The missing tread on a grid of half a millimetre or so.
    constexpr int n = 400;
    for (int i = 0; i < n; ++i)
    {
      const double x = length() * (i + 0.5) / n;
      const Span   span = outline_.across(x);
      for (int j = 0; j < n; ++j)
        volumes.back() -=
          missing_tread({x, span.low + span.width() * (j + 0.5) / n}) * length() / n * span.width() / n;
    }
  }
  return volumes;
}
} // namespace solemech::geometry
