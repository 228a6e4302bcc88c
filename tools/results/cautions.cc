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
} // namespace

bool is_invented(const solver::Case &setup)
{
  return says_invented(setup.note) || says_invented(setup.title) ||
         std::any_of(setup.layers.begin(), setup.layers.end(),
                     [](const solver::Layer &layer) { return says_invented(layer.material.source); });
}

std::vector<std::string> cautions(const std::vector<const solver::Case *> &setups)
{
  std::vector<std::string> texts;
  if (any_layer(setups,
                [](const solver::Layer &layer) { return layer.unit && layer.unit->gauge_pressure > 0; }))
    texts.emplace_back(
      "The air unit is under pressure: never pierce, saw into, heat or refill one; it bursts "
      "without warning.");
  if (any_layer(setups, [](const solver::Layer &layer) { return layer.material.family == "plate"; }))
    texts.emplace_back(
      "A cut plate has sharp edges and its dust harms lungs: gloves, goggles, dust mask, extraction.");
  if (std::any_of(setups.begin(), setups.end(),
                  [](const solver::Case *setup) { return setup->plug.side != solver::Side::shell; }))
    texts.emplace_back(
      "Sawing a plug out of a shoe: clamp it, keep hands clear, wear goggles; your shop's rules "
      "come first.");
  return texts;
}
} // namespace solemech::tools
