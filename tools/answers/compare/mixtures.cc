// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/mixtures.h"

#include "tools/answers/compare/layer_words.h"
#include "tools/language/case_checks.h"
#include "tools/language/problem.h"
#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
using solver::Layer;

class Mixer
{
public:
  Mixer(const ChangePlan &plan, ChangeSet changes) : plan_(plan), changes_(changes) {}

  Mixture mixed() const
  {
    Mixture mixture{plan_.a, ""};
    auto   &setup = mixture.setup;
    setup.label = mixture_name(plan_, changes_);
    setup.layers.clear();
    for (const Slot &slot : plan_.slots)
      if (auto layer = layer_of(slot))
        setup.layers.push_back(std::move(*layer));
    name_apart(setup.layers);
    if (is_made(plan_.plug))
      setup.plug = plan_.b.plug;
    setup.plug.radius = (is_made(plan_.radius) ? plan_.b : plan_.a).plug.radius;
    for (const RigSlot &part : plan_.rig)
      if (is_made(part.change))
        part.take(setup, plan_.b);
    rigs::kind_of(setup).follow_layers(setup);
    if (is_made(plan_.surroundings))
    {
      setup.temperature = plan_.b.temperature;
      setup.gravity = plan_.b.gravity;
      setup.atmospheric_pressure = plan_.b.atmospheric_pressure;
    }
    if (plan_.height_is_kept)
      mixture.impossible =
        scale_foam(setup.layers, cushion_height((is_made(plan_.size) ? plan_.b : plan_.a).layers));
    if (mixture.impossible.empty())
      mixture.impossible = misfit(setup);
    return mixture;
  }

private:
  bool is_made(int change) const
  {
    return change != Slot::none && (changes_ >> static_cast<unsigned>(change) & 1U) != 0;
  }

  std::optional<Layer> layer_of(const Slot &slot) const
  {
    const auto &[a, b] = slot.layers;
    if (slot.whole != Slot::none)
    {
      const bool from_b = is_made(slot.whole);
      if (from_b ? b.has_value() : a.has_value())
        return from_b ? plan_.b.layers[*b] : plan_.a.layers[*a];
      return std::nullopt;
    }
    return blended(slot, plan_.a.layers[*a], plan_.b.layers[*b]);
  }

  /// A pair of one kind, property by property.
  Layer blended(const Slot &slot, const Layer &a, const Layer &b) const
  {
    Layer layer = is_made(slot.build) || is_made(slot.material) ? b : a;
    layer.thickness = (is_made(slot.thickness) || is_made(slot.build) ? b : a).thickness;
    if (layer.unit)
    {
      const solver::AirUnit &air = *(is_made(slot.air) ? b : a).unit;
      layer.unit->gauge_pressure = air.gauge_pressure;
      layer.unit->state = air.state;
      layer.unit->leak_diameter = air.leak_diameter;
    }
    // From whichever side A and B are looked at, a mixture has one name for the layer.
    layer.name = std::min(a.name, b.name);
    return layer;
  }

  static void name_apart(std::vector<Layer> &layers)
  {
    for (std::size_t i = 0; i < layers.size(); ++i)
      for (std::size_t j = 0; j < i; ++j)
        if (layers[j].name == layers[i].name)
        {
          layers[i].name += "-2";
          j = static_cast<std::size_t>(-1);
        }
  }

  /// Scales the foam layers to a height of the cushion; answers why that cannot be done.
  static std::string scale_foam(std::vector<Layer> &layers, double height)
  {
    double foam = 0;
    for (const Layer &layer : layers)
      foam += role_of(layer) == Role::foam ? layer.thickness : 0;
    const double rest = cushion_height(layers) - foam;
    if (std::abs(foam + rest - height) < 1e-9) // [m]
      return "";
    if (foam <= 0)
      return fmt::format("there is no foam left that could bring the stack to {}", short_length(height));
    const double factor = (height - rest) / foam;
    for (Layer &layer : layers)
      if (role_of(layer) == Role::foam)
      {
        layer.thickness *= factor;
        if (layer.thickness < thinnest_foam)
          return fmt::format("in {} of height the parts leave {} for the foam", short_length(height),
                             height > rest ? short_length(height - rest) : std::string("nothing"));
      }
    return "";
  }

  /// What the checks of case files say against the parts together.
  static std::string misfit(const solver::Case &setup)
  {
    static const toml::table nothing;
    const toml::table       *block = &nothing;
    materials::Problems      problems;
    CaseBlocks               blocks;
    blocks.layers.assign(setup.layers.size(), block);
    check_case(setup, blocks, problems);
    return problems.list().empty() ? "" : problems.list().front().reason;
  }

  const ChangePlan &plan_;
  ChangeSet         changes_;
};
} // namespace

ChangeSet all_of(std::size_t n_changes)
{
  return static_cast<ChangeSet>((std::uint64_t{1} << n_changes) - 1);
}

Mixture mixture(const ChangePlan &plan, ChangeSet changes)
{
  if (changes == 0)
    return {plan.a, ""};
  if (changes == all_of(plan.changes.size()))
    return {plan.b, ""};
  return Mixer(plan, changes).mixed();
}

std::string mixture_name(const ChangePlan &plan, ChangeSet changes)
{
  std::vector<std::string> names;
  for (std::size_t i = 0; i < plan.changes.size(); ++i)
    if (changes >> i & 1)
      names.push_back(plan.changes[i].name);
  return names.empty() ? plan.a.label : fmt::format("{} with {}", plan.a.label, listed(names));
}

std::string closing_rule(const ChangePlan &plan)
{
  if (!plan.height_is_kept)
    return "";
  return fmt::format("Mixtures of the two stacks keep the height of {}{}: their foam layers are scaled "
                     "alike. A board, plate or insert keeps its own height.",
                     plan.a.label,
                     plan.size != Slot::none ? fmt::format(" ({}, once the size is changed)", plan.b.label)
                                             : "");
}
} // namespace solemech::tools
