// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/changes.h"

#include "tools/answers/compare/layer_words.h"
#include "tools/answers/compare/plug_changes.h"
#include "tools/language/case_text.h"
#include "tools/output/results/air_text.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using solver::Layer;

constexpr double same_length = 1e-9; // [m]: far below what can be made

/// True when a run cannot tell the two layers apart, whatever their names.
bool same_layer(Layer a, Layer b)
{
  a.name = b.name = "";
  return same_to_a_run(a, b);
}

bool same_thickness(const Layer &a, const Layer &b)
{
  return std::abs(a.thickness - b.thickness) < same_length;
}

const char *thicker_or_thinner(double from, double to)
{
  return to > from ? "thicker" : "thinner";
}

class Planner
{
public:
  explicit Planner(ChangePlan &plan) : plan_(plan) {}

  void run()
  {
    for (const LayerPair &pair : aligned(plan_.a.layers, plan_.b.layers))
      plan_.slots.push_back({pair});
    for (std::size_t i = 0; i < plan_.slots.size();)
      i = is_rubber(i) && !is_tread() ? outsole(i) : one_slot(i);
    if (!is_tread())
      size();
    plug();
    for (auto &part : rigs::differences(plan_.a, plan_.b))
      plan_.rig.push_back({add({ChangeKind::rig, part.name, part.details}), part.take});
    if (auto details = surroundings_details(plan_.a, plan_.b); !details.empty())
      plan_.surroundings = add({ChangeKind::surroundings, "surroundings", details});
  }

private:
  int add(StackChange change)
  {
    plan_.changes.push_back(std::move(change));
    return static_cast<int>(plan_.changes.size()) - 1;
  }

  const Layer *layer_a(std::size_t slot) const
  {
    const auto &pair = plan_.slots[slot].layers;
    return pair.a ? &plan_.a.layers[*pair.a] : nullptr;
  }
  const Layer *layer_b(std::size_t slot) const
  {
    const auto &pair = plan_.slots[slot].layers;
    return pair.b ? &plan_.b.layers[*pair.b] : nullptr;
  }

  /// Bars of a tread: rubber and height of the lug are chosen apart, and the section is as wide as bars lie
  /// apart.
  bool is_tread() const
  {
    return rigs::kind_of(plan_.a).layers_are_a_bar() && rigs::kind_of(plan_.b).layers_are_a_bar();
  }

  bool is_rubber(std::size_t slot) const
  {
    const Layer *layer = layer_a(slot) ? layer_a(slot) : layer_b(slot);
    return role_of(*layer) == Role::rubber;
  }

  /// Rubber layers that lie on each other are one change. Answers the slot after them.
  std::size_t outsole(std::size_t first)
  {
    StackChange change{ChangeKind::outsole, "rubber outsole", {}};
    double      thickness_change = 0;
    std::size_t slot = first;
    for (; slot < plan_.slots.size() && is_rubber(slot); ++slot)
    {
      const Layer *a = layer_a(slot), *b = layer_b(slot);
      change.slots.push_back(slot);
      thickness_change += (b ? b->thickness : 0) - (a ? a->thickness : 0);
      if (a && b && same_layer(*a, *b))
        continue;
      change.details.push_back({a ? a->name : b->name, a ? layer_words(*a) : "-", b ? layer_words(*b) : "-"});
    }
    if (change.details.empty())
      return slot;
    if (change.details.size() == 1 && change.slots.size() == 1)
      change.name = layer_a(first) && layer_b(first) ? change.details[0].what
                                                     : added_name(layer_a(first), layer_b(first));
    note_thickness(thickness_change);
    const int number = add(change);
    for (const std::size_t touched : change.slots)
      plan_.slots[touched].whole = number;
    return slot;
  }

  static std::string added_name(const Layer *a, const Layer *b)
  {
    return a ? short_name(*a) + " taken out" : short_name(*b) + " added";
  }

  std::size_t one_slot(std::size_t i)
  {
    const Layer *a = layer_a(i), *b = layer_b(i);
    Slot        &slot = plan_.slots[i];
    if (!a || !b)
    {
      const Layer &layer = a ? *a : *b;
      if (!is_one_piece(role_of(layer)))
        note_thickness(b ? b->thickness : -a->thickness);
      slot.whole = add({ChangeKind::layer,
                        added_name(a, b),
                        {{layer.name, a ? layer_words(*a) : "-", b ? layer_words(*b) : "-"}},
                        {i}});
    }
    else if (same_layer(*a, *b))
      return i + 1;
    else if (role_of(*a) != role_of(*b))
    {
      note_thickness(b->thickness - a->thickness);
      slot.whole = add({ChangeKind::layer,
                        short_name(*a) + " -> " + short_name(*b),
                        {{a->name, layer_words(*a), layer_words(*b)}},
                        {i}});
    }
    else if (is_one_piece(role_of(*a)))
      one_piece(i, *a, *b);
    else if (a->unit)
      unit(i, *a, *b);
    else
      foam(i, *a, *b);
    return i + 1;
  }

  void one_piece(std::size_t i, const Layer &a, const Layer &b)
  {
    std::string name = "other " + b.name;
    if (same_material(a.material, b.material) && !same_thickness(a, b))
      name = fmt::format("{} {}", thicker_or_thinner(a.thickness, b.thickness), b.name);
    plan_.slots[i].whole =
      add({ChangeKind::plate, name, {{called(a, b), layer_words(a), layer_words(b)}}, {i}});
  }

  void foam(std::size_t i, const Layer &a, const Layer &b)
  {
    Slot &slot = plan_.slots[i];
    Layer same_height = b;
    same_height.thickness = a.thickness;
    if (!same_layer(a, same_height))
      slot.material =
        add({ChangeKind::material,
             fmt::format("{} of {}", role_of(b) == Role::rubber ? "rubber" : "foam", called(a, b)),
             {{called(a, b), material_words(a), material_words(b)}},
             {i}});
    thickness(i, a, b);
  }

  void thickness(std::size_t i, const Layer &a, const Layer &b)
  {
    if (same_thickness(a, b))
      return;
    note_thickness(b.thickness - a.thickness);
    const char       *word = thicker_or_thinner(a.thickness, b.thickness);
    const std::string name = a.name == b.name ? fmt::format("{} {}", word, a.name)
                                              : fmt::format("{} -> {} {}", a.name, word, b.name);
    plan_.slots[i].thickness =
      add({ChangeKind::thickness,
           name,
           {{called(a, b) + ", thickness", short_length(a.thickness), short_length(b.thickness)}},
           {i}});
  }

  void unit(std::size_t i, const Layer &a, const Layer &b)
  {
    Slot       &slot = plan_.slots[i];
    const auto &from = *a.unit, &to = *b.unit;
    const auto  same_air = [](const solver::AirUnit &u, solver::AirUnit v) {
      v.gauge_pressure = u.gauge_pressure;
      v.state = u.state;
      v.leak_diameter = u.leak_diameter;
      return v;
    };
    if (from.gauge_pressure != to.gauge_pressure || from.state != to.state ||
        from.leak_diameter != to.leak_diameter)
    {
      const std::string name = from.state != to.state                    ? "air of " + called(a, b)
                               : to.gauge_pressure > from.gauge_pressure ? "more pressure in " + called(a, b)
                               : to.gauge_pressure < from.gauge_pressure ? "less pressure in " + called(a, b)
                                                                         : "leak of " + called(a, b);
      slot.air = add({ChangeKind::air, name, {{called(a, b) + ", air", air_text(from), air_text(to)}}, {i}});
    }
    Layer other = b;
    other.unit = same_air(from, to);
    if (same_layer(a, other))
      return;
    StackChange change{ChangeKind::build, "build of " + called(a, b), {}, {i}};
    other.thickness = a.thickness;
    const auto detail = [&](const char *what, const std::string &was, const std::string &is) {
      if (was != is)
        change.details.push_back({called(a, b) + ", " + what, was, is});
    };
    detail("height", short_length(a.thickness), short_length(b.thickness));
    detail("width", short_length(from.diameter), short_length(to.diameter));
    detail("film", fmt::format("{} {}", from.film.name, short_length(from.film_thickness)),
           fmt::format("{} {}", to.film.name, short_length(to.film_thickness)));
    detail("around it", a.material.name, b.material.name);
    const auto fibres = [](const solver::AirUnit &unit) {
      return unit.has_fibres ? fmt::format("{} apart, {:.3g} N/mm each", short_length(unit.fibre_spacing),
                                           unit.fibre_stiffness * 1e-3)
                             : std::string("none");
    };
    detail("fibres", fibres(from), fibres(to));
    detail("volume outside the plug", fmt::format("{:.3g} cm3", from.outside_volume * 1e6),
           fmt::format("{:.3g} cm3", to.outside_volume * 1e6));
    if (change.details.empty())
      change.details.push_back({called(a, b) + ", build", "as in A", "as in B"});
    if (change.details.size() == 1 && !same_thickness(a, b))
      change.name = fmt::format("{} {}", b.thickness > a.thickness ? "higher" : "lower", called(a, b));
    note_thickness(b.thickness - a.thickness);
    slot.build = add(std::move(change));
  }

  static std::string called(const Layer &a, const Layer &b)
  {
    return a.name == b.name ? a.name : a.name + " -> " + b.name;
  }

  void note_thickness(double change)
  {
    if (std::abs(change) > same_length)
      ++n_thickness_changes_;
  }

  /// Height of the cushion, which is the shoe, and radius of the plug, which is the saw.
  void size()
  {
    const double from = cushion_height(plan_.a.layers), to = cushion_height(plan_.b.layers);
    plan_.height_is_kept = n_thickness_changes_ > 1;
    if (plan_.height_is_kept && std::abs(to - from) > same_length)
    {
      const bool has_more = std::abs(from - stack_height(plan_.a.layers)) > same_length ||
                            std::abs(to - stack_height(plan_.b.layers)) > same_length;
      plan_.size = add({ChangeKind::size,
                        fmt::format("{} stack", thicker_or_thinner(from, to)),
                        {{has_more ? "height without board, plate and insert" : "height of the stack",
                          short_length(from), short_length(to)}}});
    }
    const double radius_from = plan_.a.plug.radius, radius_to = plan_.b.plug.radius;
    if (std::abs(radius_to - radius_from) > same_length)
      plan_.radius = add({ChangeKind::plug,
                          radius_to > radius_from ? "wider plug" : "narrower plug",
                          {{"radius of the plug", short_length(radius_from), short_length(radius_to)}}});
  }

  void plug()
  {
    if (auto details = plug_details(plan_.a.plug, plan_.b.plug); !details.empty())
    {
      const std::string name =
        details.size() == 1 ? details[0].what : std::string("side and base of the plug");
      plan_.plug = add({ChangeKind::plug, name, details});
    }
  }

  ChangePlan &plan_;
  int         n_thickness_changes_ = 0;
};
} // namespace

ChangePlan planned_changes(const solver::Case &a, const solver::Case &b)
{
  ChangePlan plan;
  plan.a = a;
  plan.b = b;
  // One accuracy for both, the finer one.
  plan.a.accuracy = plan.b.accuracy = std::min(a.accuracy, b.accuracy);
  Planner(plan).run();
  return plan;
}
} // namespace solemech::tools
