// SPDX-License-Identifier: Apache-2.0
#include "tools/output/results/parts.h"

#include "solver/layer_parts.h"
#include "solver/rig_parts.h"
#include "tools/output/results/air_text.h"
#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <algorithm>

namespace solemech::tools
{
namespace
{
std::string title_of(const materials::Material &material)
{
  return material.title.empty() ? material.name : material.title;
}

/// "fibre_spacing 3 mm" -> "fibre spacing 3 mm".
std::string spoken(std::string text)
{
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

Part made_of(const Run &run, const std::string &name, const materials::Material &material, double thickness)
{
  Part part{name, title_of(material), material.name, material.family, thickness, {}, material.source};
  if (layers_are_assumed(run))
    part.assumed.emplace_back("thickness and choice of material: invented, a demo stack");
  const bool invented = material.invented, remembered = material.from_memory;
  if (invented || remembered)
    part.assumed.push_back(std::string("numbers of the material: partly ") + (invented && remembered
                                                                                ? "invented or from memory"
                                                                              : invented ? "invented"
                                                                                         : "from memory"));
  else if (material.source.empty())
    part.assumed.emplace_back("numbers of the material: no source given");
  return part;
}
} // namespace

bool layers_are_assumed(const Run &run)
{
  return run.setup.invented;
}

std::vector<std::string> defaults_of(const Run &run, const std::string &block)
{
  std::vector<std::string> result;
  for (const auto &entry : run.assumed)
    if (entry.starts_with(block + "."))
      result.push_back(spoken(entry.substr(block.size() + 1)));
  return result;
}

std::vector<Part> parts_of(const Run &run)
{
  std::vector<Part> parts;
  for (const auto &layer : run.setup.layers)
  {
    Part &core = parts.emplace_back(made_of(run, layer.name, layer.material, layer.thickness));
    if (layer.area_share < 1)
      core.material += fmt::format(", {:.0f} % of the area", 100 * layer.area_share);
    if (layer.unit)
    {
      core.material = fmt::format("air unit ({}), {} across, ringed by {}", air_text(*layer.unit),
                                  length_text(layer.unit->diameter, Lengths::millimetre), core.material);
      for (const auto &entry : defaults_of(run, layer.name + ".unit"))
        core.assumed.push_back(entry);
    }
    if (layer.ring)
      parts.push_back(made_of(run, solver::ring_part(layer.name), *layer.ring, layer.thickness));
    if (layer.unit)
      parts.push_back(
        made_of(run, solver::film_part(layer.name), layer.unit->film, layer.unit->film_thickness));
  }
  const auto &plug = run.setup.plug;
  if (plug.side == solver::Side::ring)
    parts.push_back(made_of(run, solver::rig_part::wall, plug.side_material, plug.side_thickness));
  return parts;
}

int part_number(const std::vector<Part> &parts, const std::string &name)
{
  const auto found =
    std::find_if(parts.begin(), parts.end(), [&](const Part &part) { return part.name == name; });
  return found == parts.end() ? -1 : static_cast<int>(found - parts.begin());
}
} // namespace solemech::tools
