// SPDX-License-Identifier: Apache-2.0
#include "geometry/sole/sole_flaws.h"

#include "geometry/errors.h"
#include "geometry/sole/sole_body.h"
#include "geometry/sole/trace.h"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace solemech::geometry
{
namespace
{
using Of = Flaw::Of;

constexpr double least_ball = 0.55, most_ball = 0.80; ///< share of the length
constexpr double least_room = 0.5e-3;                 ///< height of a pocket [m]
constexpr double rounding = 1e-9;                     ///< measurements that agree to this are the same [m]

std::string between(double low, double high)
{
  return in_mm(low) + " to " + in_mm(high);
}

/// In whole micrometres: computed lengths are shown like measured ones.
std::string shown(double length)
{
  return in_mm(std::round(length * 1e6) / 1e6);
}

class Search
{
public:
  explicit Search(const SoleShape &shape) : shape_(shape) {}

  std::vector<Flaw> all()
  {
    if (!has_outline())
      return std::move(list_);
    outline();
    bottom();
    if (shape_.layers.empty())
      add(Of::layer, 0, "layer", 0, "the sole has no layer", "Add [[layer]] blocks from the foot down");
    if (shape_.layers.size() > most_sole_layers)
      add(Of::layer, most_sole_layers, "name", 0,
          "the sole has " + std::to_string(shape_.layers.size()) + " layers",
          "Give at most " + std::to_string(most_sole_layers) + "; thin ones of a kind can be one");
    for (std::size_t i = 0; i < shape_.layers.size(); ++i)
      layer(i);
    for (std::size_t i = 0; i < shape_.pockets.size(); ++i)
      pocket(i);
    for (std::size_t i = 0; i < shape_.patches.size(); ++i)
      patch(i);
    return std::move(list_);
  }

private:
  void add(Of of, std::size_t index, std::string entry, double value, std::string reason, std::string cure,
           std::size_t slot = 0)
  {
    list_.push_back({of, index, slot, std::move(entry), value, std::move(reason), std::move(cure)});
  }

  /// Whether there is one to measure the rest on.
  bool has_outline()
  {
    const auto &given = shape_.outline;
    if (!given.trace.empty())
    {
      if (const auto flaw = trace_flaw(given.trace))
      {
        add(Of::outline, 0, "points", 0, flaw->reason, flaw->cure);
        return false;
      }
    }
    else
    {
      const auto is_positive = [](double value) { return value > 0; };
      if (!(given.length > 0) || !std::ranges::all_of(given.half_widths.medial, is_positive) ||
          !std::ranges::all_of(given.half_widths.lateral, is_positive))
      {
        if (given.length <= 0)
          add(Of::outline, 0, "length", given.length, "the length is " + in_mm(given.length),
              "Give a length above 0");
        for (const auto *side : {&given.half_widths.medial, &given.half_widths.lateral})
          for (const double half : *side)
            if (half <= 0)
              add(Of::outline, 0, side == &given.half_widths.medial ? "medial" : "lateral", half,
                  "a half width is " + in_mm(half), "Give half widths above 0");
        return false;
      }
    }
    sole_.emplace(outline_of(given));
    length_ = sole_->length();
    ball_ = ball_line_of(*sole_, given).centre();
    return true;
  }

  void outline()
  {
    if (const double x = sole_->crossing(); x >= 0)
      add(Of::outline, 0, shape_.outline.trace.empty() ? "medial" : "points", x,
          "the outline crosses itself " + shown(x) + " from the heel",
          "Measure the half widths there again; neighbours must not differ that much");
    const double low = least_ball * length_, high = most_ball * length_;
    for (const auto &[entry, x] : {std::pair("ball_medial", shape_.outline.ball_medial),
                                   std::pair("ball_lateral", shape_.outline.ball_lateral)})
      if (x != 0 && (x < low || x > high))
        add(Of::outline, 0, entry, x, "the ball line ends " + in_mm(x) + " from the heel",
            "Give " + between(low, high) + ": 55 to 80 % of the length");
  }

  void bottom()
  {
    const auto   given = bottom_of(shape_, ball_);
    const double run = length_ - given.toe_spring_start, half = length_ / 2;
    if (given.heel_bevel_rise > 0 && (given.heel_bevel_start <= 0 || given.heel_bevel_start > half))
      add(Of::bottom, 0, "heel_bevel_start", given.heel_bevel_start,
          "the heel bevel starts " + in_mm(given.heel_bevel_start) + " from the heel",
          "Give more than 0, at most " + in_mm(half));
    else if (given.heel_bevel_rise > given.heel_bevel_start / 2)
      add(Of::bottom, 0, "heel_bevel_rise", given.heel_bevel_rise,
          "the heel rises by " + in_mm(given.heel_bevel_rise) + " over " + in_mm(given.heel_bevel_start),
          "Give at most half of that length");
    if (given.toe_spring_rise > 0 && (given.toe_spring_start < half || given.toe_spring_start >= length_))
      add(Of::bottom, 0, "toe_spring_start", given.toe_spring_start,
          "the toe spring starts " + in_mm(given.toe_spring_start) + " from the heel",
          "Give " + between(half, length_) + ", the half of the sole with the toes");
    else if (given.toe_spring_rise > run / 2)
      add(Of::bottom, 0, "toe_spring_rise", given.toe_spring_rise,
          "the toe rises by " + in_mm(given.toe_spring_rise) + " over " + shown(run),
          "Give at most half of that length");
    else if (given.toe_spring_rise > 0)
      if (const double greatest = BottomLine::greatest_radius(run, given.toe_spring_rise);
          given.rocker_radius > greatest)
        add(Of::bottom, 0, "rocker_radius", given.rocker_radius,
            "an arc of " + in_mm(given.rocker_radius) + " does not rise by " + in_mm(given.toe_spring_rise) +
              " up to the toe tip",
            "Give at most " + shown(greatest) + ", or leave it out");
  }

  void layer(std::size_t i)
  {
    const auto  &given = shape_.layers[i];
    const double to = given.to > 0 ? given.to : length_;
    if (given.from < 0 || given.from >= to || to > length_ + rounding)
      add(Of::layer, i, given.from < 0 || given.from >= to ? "from" : "to", given.from,
          "the layer reaches from " + in_mm(given.from) + " to " + shown(to),
          "Give two places inside the sole, 0 mm to " + shown(length_) +
            ", the one nearer to the heel first");
    for (const double thickness : given.thickness)
      if (thickness < least_layer_thickness - 1e-12)
      {
        add(Of::layer, i, "thickness", thickness, "the layer is " + in_mm(thickness) + " thick somewhere",
            "Give at least " + in_mm(least_layer_thickness) +
              " everywhere; let a thinner film be part of the layer next to it, and end a layer with from "
              "and to");
        break;
      }
    if (given.host >= static_cast<int>(shape_.layers.size()) || given.host == static_cast<int>(i))
      add(Of::layer, i, "host", given.host, "is filled up by a layer that is not another one",
          "Name another layer of this sole");
    own_outline(i, to);
    inset(i);
    slots(i, to);
  }

  void own_outline(std::size_t i, double to)
  {
    const auto &given = shape_.layers[i];
    if (!given.own)
      return;
    for (const auto &[entry, half_widths] :
         {std::pair("medial", &given.own->medial), std::pair("lateral", &given.own->lateral)})
      for (const double half : *half_widths)
        if (!(half > 0))
        {
          if (half <= 0)
            add(Of::layer, i, entry, half, "a half width is " + in_mm(half), "Give half widths above 0");
          return;
        }
    const Outline own(length_, *given.own);
    if (const double x = own.crossing(); x >= 0)
      return add(Of::layer, i, "medial", x, "the outline crosses itself " + shown(x) + " from the heel",
                 "Measure the half widths there again");
    constexpr int n = 400;
    double        worst = 0.05e-3, at = 0; // what callipers cannot tell is no mistake
    const char   *entry = "";
    for (int k = 0; k < n; ++k)
    {
      const double x = given.from + (to - given.from) * (k + 0.5) / n;
      const Span   sole = sole_->across(x), plate = own.across(x);
      for (const auto &[name, over] :
           {std::pair("medial", sole.low - plate.low), std::pair("lateral", plate.high - sole.high)})
        if (over > worst)
        {
          worst = over;
          at = x;
          entry = name;
        }
    }
    if (*entry)
      add(Of::layer, i, entry, worst,
          "reaches " + shown(worst) + " over the edge of the sole, " + shown(at) + " from the heel",
          "Measure layer and sole again; a layer lies inside the outline of the sole");
  }

  void inset(std::size_t i)
  {
    const auto &given = shape_.layers[i];
    const auto  zones = inset_zones(length_, ball_);
    for (std::size_t k = 0; k < zones.size(); ++k)
    {
      const double room = sole_->across(zones[k]).width() / 2;
      if (given.inset[k] < 0 || given.inset[k] >= room)
        return add(Of::layer, i, "inset", given.inset[k],
                   "an inset of " + in_mm(given.inset[k]) + " leaves nothing of a sole " + shown(2 * room) +
                     " wide",
                   "Give 0 mm to less than " + shown(room));
    }
  }

  void slots(std::size_t i, double to)
  {
    const auto &given = shape_.layers[i];
    if (given.slots.size() > most_slots)
      add(Of::slot, i, "from", 0, "the layer has " + std::to_string(given.slots.size()) + " slots",
          "Give at most two", most_slots);
    bool is_sound = true;
    for (std::size_t k = 0; k < given.slots.size(); ++k)
    {
      const auto &slot = given.slots[k];
      if (slot.from >= slot.to || slot.from >= to || slot.to <= given.from)
      {
        is_sound = false;
        add(Of::slot, i, "from", slot.from,
            "the slot reaches from " + in_mm(slot.from) + " to " + in_mm(slot.to),
            "Give two places inside the layer, the one nearer to the heel first", k);
      }
      if (slot.width[0] <= 0 || slot.width[1] <= 0)
      {
        is_sound = false;
        add(Of::slot, i, "width", std::min(slot.width[0], slot.width[1]), "the slot has no width",
            "Give widths above 0", k);
      }
    }
    if (is_sound && !given.slots.empty() && !given.own)
      cut_through(i, {*sole_, nullptr, given.from, to, given.slots});
    else if (is_sound && given.own)
      cut_through(i, {Outline(length_, *given.own), nullptr, given.from, to, given.slots});
  }

  /// A slot leaves something beside it, wherever it lies.
  void cut_through(std::size_t i, const PlanRegion &plate)
  {
    constexpr int n = 400;
    for (int k = 0; k < n; ++k)
    {
      const double x = plate.from() + (plate.to() - plate.from()) * (k + 0.5) / n;
      if (plate.whole(x).width() > 0 && plate.pieces(x).empty())
        return add(Of::slot, i, "width", x, "slots cut the layer through, " + shown(x) + " from the heel",
                   "Make them narrower, or end the layer there");
    }
  }

  void pocket(std::size_t i)
  {
    const auto &given = shape_.pockets[i];
    if (given.layer >= shape_.layers.size())
      return;
    const auto  &layer = shape_.layers[given.layer];
    const double to = layer.to > 0 ? layer.to : length_;
    const auto   edge = points_round(given.plan, 90);
    if (!std::ranges::all_of(edge, [](const auto &p) { return std::isfinite(p[0] + p[1]); }))
      return;
    const auto inside = [&](const PlanPoint &p) {
      const Span span = sole_->across(p[0]);
      return p[0] >= layer.from && p[0] <= to && p[1] > span.low && p[1] < span.high;
    };
    if (!std::ranges::all_of(edge, inside))
      add(Of::pocket, i, "x", given.plan.x, "the pocket reaches out of its layer",
          "Measure its place again: x from the heel, y from the middle line to the lateral side");
    const MonotoneCurve thickness(thickness_stations(length_, ball_), layer.thickness);
    double              room = thickness(given.plan.x) - given.floor - given.roof;
    for (const auto &p : edge)
      room = std::min(room, thickness(p[0]) - given.floor - given.roof);
    if (given.floor < 0 || given.roof < 0 || room < least_room)
      add(Of::pocket, i, "floor", given.floor,
          "floor and roof leave " + shown(std::max(room, 0.0)) + " of room in the layer",
          "Leave at least " + in_mm(least_room) + "; the pocket must not cut the layers next to it");
    for (std::size_t k = 0; k < i; ++k)
      if (const auto &other = shape_.pockets[k]; other.layer == given.layer)
        if (covers(other.plan, {given.plan.x, given.plan.y}) ||
            covers(given.plan, {other.plan.x, other.plan.y}) ||
            std::ranges::any_of(edge, [&](const PlanPoint &p) { return covers(other.plan, p); }))
          add(Of::pocket, i, "x", given.plan.x, "the pocket lies on another one of its layer",
              "Move one of the two, or make one of both");
  }

  void patch(std::size_t i)
  {
    const auto &given = shape_.patches[i];
    const auto  edge = points_round(given.plan, 90);
    const auto  on_sole = [&](const PlanPoint &p) {
      const Span span = sole_->across(p[0]);
      return p[1] > span.low && p[1] < span.high;
    };
    if (std::isfinite(given.plan.x + given.plan.y) && !on_sole({given.plan.x, given.plan.y}) &&
        std::ranges::none_of(edge, on_sole))
      add(Of::patch, i, "x", given.plan.x, "lies beside the sole",
          "Measure its place again: x from the heel, y from the middle line to the lateral side");
    if (shape_.layers.empty())
      return;
    const auto  &outsole = shape_.layers.back();
    const double least = *std::ranges::min_element(outsole.thickness),
                 deepest = least - least_layer_thickness;
    if (given.depth <= 0 || given.depth > deepest + 1e-12)
      add(Of::patch, i, "depth", given.depth,
          "a depth of " + in_mm(given.depth) + " does not fit into an outsole of " + in_mm(least),
          "Give more than 0, at most " + shown(deepest));
  }

  const SoleShape       &shape_;
  std::optional<Outline> sole_;
  double                 length_ = 0, ball_ = 0;
  std::vector<Flaw>      list_;
};
} // namespace

std::vector<Flaw> flaws(const SoleShape &shape)
{
  return Search(shape).all();
}
} // namespace solemech::geometry
