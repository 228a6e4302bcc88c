// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/cautions.h"

#include "tools/output/results/text_layout.h"
#include "tools/rigs/registry.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
bool any_layer(const std::vector<const solver::Case *> &setups, bool (*condition)(const solver::Layer &))
{
  return std::any_of(setups.begin(), setups.end(), [&](const solver::Case *setup) {
    return std::any_of(setup->layers.begin(), setup->layers.end(), condition);
  });
}

bool is_cut_from_a_shoe(const solver::Case &setup)
{
  return setup.plug.side != solver::Side::shell && rigs::kind_of(setup).needs_a_plug(setup);
}

bool uses_invented_material(const solver::Case &setup)
{
  return setup.plug.side_material.invented || any_layer({&setup}, [](const solver::Layer &layer) {
           return layer.material.invented || (layer.ring && layer.ring->invented) ||
                  (layer.unit && layer.unit->film.invented);
         });
}
} // namespace

bool is_invented(const solver::Case &setup)
{
  return setup.invented || uses_invented_material(setup);
}

namespace
{
/// Labels of the invented scenarios in brackets, when others stand beside them.
struct Invented
{
  std::string which;
  std::size_t n_stacks = 0;
  bool        materials = false; ///< of a stack that is not invented itself
};

Invented invented_among(const LabelledCases &cases)
{
  Invented                 found;
  std::vector<std::string> labels;
  for (const auto &[label, setup] : cases)
    if (!setup->invented)
      found.materials = found.materials || uses_invented_material(*setup);
    else if (++found.n_stacks; std::find(labels.begin(), labels.end(), label) == labels.end())
      labels.push_back(label);
  if (found.n_stacks > 0 && found.n_stacks < cases.size())
    found.which = " (" + listed(labels) + ")";
  return found;
}
} // namespace

LabelledCases labelled_cases(const std::vector<const Run *> &runs)
{
  LabelledCases cases;
  for (const auto *run : runs)
    cases.emplace_back(run->label, &run->setup);
  return cases;
}

std::string invented_words(const LabelledCases &cases)
{
  const auto found = invented_among(cases);
  if (found.n_stacks > 0)
    return "invented demo stacks" + found.which;
  return found.materials ? "library materials partly invented" : "";
}

std::vector<std::string> invented_sentences(const LabelledCases &cases)
{
  const auto               found = invented_among(cases);
  std::vector<std::string> texts;
  if (found.n_stacks > 0)
    texts.push_back("Invented demo stacks" + found.which + ": the numbers describe no product.");
  if (found.materials)
    texts.emplace_back(
      "Library materials are partly invented for the demonstration: see solemech materials.");
  return texts;
}

std::vector<std::string> change_cautions(const solver::Case &now, const solver::Case &changed)
{
  const auto is_new = [&](const solver::Layer &layer) {
    return std::none_of(now.layers.begin(), now.layers.end(), [&](const solver::Layer &old) {
      return old.name == layer.name && old.material.name == layer.material.name &&
             old.thickness == layer.thickness;
    });
  };
  const auto is_stiff_sheet = [](const solver::Layer &layer) {
    return layer.material.family == "plate" || layer.laid_in;
  };
  const bool has_unit =
    any_layer({&now, &changed}, [](const solver::Layer &layer) { return layer.unit.has_value(); });
  std::vector<std::string> texts;
  if (std::any_of(changed.layers.begin(), changed.layers.end(),
                  [&](const solver::Layer &layer) { return is_stiff_sheet(layer) && is_new(layer); }))
  {
    texts.emplace_back(
      "An insert or plate shifts load to other parts of the foot, which a drop does not show. If there is "
      "pain or numbness, take it out and ask a licensed foot professional.");
    texts.emplace_back("Cut and shape an insert or plate outside the shoe, never in it" +
                       std::string(has_unit ? ", and bring no heat near the air unit." : "."));
  }
  const auto pressure = [](const solver::Case &setup) {
    double sum = 0;
    for (const auto &layer : setup.layers)
      sum += layer.unit ? layer.unit->gauge_pressure : 0;
    return sum;
  };
  if (has_unit && pressure(now) != pressure(changed))
    texts.emplace_back("Change the gauge pressure only in the model: never heat, pierce or refill a unit.");
  texts.emplace_back(
    "Do not alter a shoe that somebody will compete or work in. Local rules and the instructions of your "
    "tools come first. A calculation does not prove that a shoe is safe.");
  return texts;
}

namespace
{
/// Cautions of the rigs, run by run, each once.
std::vector<std::string> rig_cautions(const std::vector<const solver::Case *> &setups)
{
  std::vector<std::string> texts;
  for (const auto *setup : setups)
    for (auto &text : rigs::kind_of(*setup).cautions(*setup))
      if (std::find(texts.begin(), texts.end(), text) == texts.end())
        texts.push_back(std::move(text));
  return texts;
}
} // namespace

std::vector<std::string> cautions(const std::vector<const solver::Case *> &setups)
{
  auto       texts = rig_cautions(setups);
  const auto under_pressure = [](const solver::Layer &layer) {
    return layer.unit && layer.unit->state != solver::ChamberState::open && layer.unit->gauge_pressure > 0;
  };
  if (any_layer(setups, under_pressure))
    texts.emplace_back("The air unit is under pressure: never pierce, saw into, heat or refill one. It can "
                       "burst without warning.");
  else if (any_layer(setups, [](const solver::Layer &layer) {
             return layer.unit && layer.unit->state == solver::ChamberState::open;
           }))
    texts.emplace_back("Never pierce an air unit to try this: use one that is already dead.");
  if (any_layer(setups, [](const solver::Layer &layer) { return layer.material.family == "plate"; }))
    texts.emplace_back(
      "A cut plate has sharp edges and its dust harms the lungs. Wear gloves to handle cut edges, never near "
      "a rotating tool; wear goggles and a dust mask, and use extraction.");
  if (std::any_of(setups.begin(), setups.end(),
                  [](const solver::Case *setup) { return is_cut_from_a_shoe(*setup); }))
    texts.emplace_back("Sawing a plug out of a shoe: clamp it, keep your hands clear, wear goggles. The "
                       "rules of your workshop come first.");
  return texts;
}
} // namespace solemech::tools
