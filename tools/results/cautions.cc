// SPDX-License-Identifier: Apache-2.0
#include "tools/results/cautions.h"

#include <algorithm>
#include <cctype>

namespace solemech::tools
{
namespace
{
bool says_invented(std::string text)
{
  std::transform(text.begin(), text.end(), text.begin(), [](unsigned char c) { return std::tolower(c); });
  return text.find("invented") != std::string::npos;
}

bool any_layer(const std::vector<const solver::Case *> &setups, bool (*condition)(const solver::Layer &))
{
  return std::any_of(setups.begin(), setups.end(), [&](const solver::Case *setup) {
    return std::any_of(setup->layers.begin(), setup->layers.end(), condition);
  });
}

/// The ball test is done on a sheet of foam, and a plug with its shell left on is not sawn either.
bool is_cut_from_a_shoe(const solver::Case &setup)
{
  const auto *drop = std::get_if<solver::DropRig>(&setup.rig);
  const bool  is_ball_test = drop && drop->tup.shape == solver::TupShape::sphere;
  return setup.plug.side != solver::Side::shell && !is_ball_test;
}
} // namespace

bool is_invented_scenario(const solver::Case &setup)
{
  return says_invented(setup.note) || says_invented(setup.title);
}

bool uses_invented_material(const solver::Case &setup)
{
  return says_invented(setup.plug.side_material.source) ||
         any_layer({&setup}, [](const solver::Layer &layer) {
           return says_invented(layer.material.source) || (layer.ring && says_invented(layer.ring->source)) ||
                  (layer.unit && says_invented(layer.unit->film.source));
         });
}

bool is_invented(const solver::Case &setup)
{
  return is_invented_scenario(setup) || uses_invented_material(setup);
}

std::vector<std::string> cautions(const std::vector<const solver::Case *> &setups)
{
  std::vector<std::string> texts;
  const auto               under_pressure = [](const solver::Layer &layer) {
    return layer.unit && layer.unit->state != solver::ChamberState::open && layer.unit->gauge_pressure > 0;
  };
  if (any_layer(setups, under_pressure))
    texts.emplace_back(
      "The air unit is under pressure: never pierce, saw into, heat or refill one; it bursts "
      "without warning.");
  else if (any_layer(setups, [](const solver::Layer &layer) {
             return layer.unit && layer.unit->state == solver::ChamberState::open;
           }))
    texts.emplace_back("Never pierce an air unit to try this: take one that is dead already.");
  if (any_layer(setups, [](const solver::Layer &layer) { return layer.material.family == "plate"; }))
    texts.emplace_back(
      "A cut plate has sharp edges and its dust harms lungs: gloves, goggles, dust mask, extraction.");
  if (std::any_of(setups.begin(), setups.end(),
                  [](const solver::Case *setup) { return is_cut_from_a_shoe(*setup); }))
    texts.emplace_back(
      "Sawing a plug out of a shoe: clamp it, keep hands clear, wear goggles; your shop's rules "
      "come first.");
  return texts;
}
} // namespace solemech::tools
