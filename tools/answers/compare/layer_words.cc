// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/layer_words.h"

#include "tools/output/results/air_text.h"

#include <fmt/format.h>

namespace solemech::tools
{
std::string material_words(const solver::Layer &layer)
{
  std::string text = layer.material.name.empty() ? layer.material.family : layer.material.name;
  if (layer.ring)
    text += fmt::format(", {} wide in {}", short_length(layer.core_diameter), layer.ring->name);
  return text;
}

std::string layer_words(const solver::Layer &layer)
{
  if (layer.unit)
    return fmt::format("air unit {}, {} wide, {}, in {}", short_length(layer.thickness),
                       short_length(layer.unit->diameter), air_text(*layer.unit), layer.material.name);
  std::string text = fmt::format("{} {}", layer.material.name, short_length(layer.thickness));
  if (layer.ring)
    text += fmt::format(", {} wide in {}", short_length(layer.core_diameter), layer.ring->name);
  if (layer.area_share < 1)
    text += fmt::format(", {:.0f} % of the area", 100 * layer.area_share);
  return text;
}

std::string short_name(const solver::Layer &layer)
{
  return layer.unit ? "air unit" : layer.name;
}
} // namespace solemech::tools
