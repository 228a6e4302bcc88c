// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/trial/geometry_cost.h"

#include "tools/output/results/readings_table.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace solemech::tools
{
namespace
{
constexpr double least_length = 0.05e-3; // [m], less is not worth a line

ShoePart part_named(const std::string &text)
{
  const bool heel = text.find("heel") != std::string::npos,
             forefoot = text.find("forefoot") != std::string::npos;
  return heel == forefoot ? ShoePart::unknown : heel ? ShoePart::heel : ShoePart::forefoot;
}

GeometryLine drop_line(const GeometryCost &cost, Lengths lengths)
{
  const std::string name = "heel-to-toe drop",
                    only = "if only this part gets it; no change if it runs the full length";
  if (cost.part == ShoePart::heel)
    return {name, signed_length_text(cost.height, lengths), only};
  if (cost.part == ShoePart::forefoot)
    return {name, signed_length_text(-cost.height, lengths), only};
  return {name, "not known",
          fmt::format("the case does not say which part it is: {} if only under the heel, {} if only under "
                      "the forefoot, no change if full length",
                      signed_length_text(cost.height, lengths), signed_length_text(-cost.height, lengths))};
}

GeometryLine counter_line(const GeometryCost &cost, Lengths lengths)
{
  const auto value =
    fmt::format("{} {}", length_text(std::abs(cost.inside), lengths), cost.inside > 0 ? "less" : "more");
  if (cost.part == ShoePart::forefoot)
    return {"room above the toes", value,
            "the foot sits that much higher or lower in the upper; no change at the heel"};
  return {"counter depth", value,
          cost.part == ShoePart::heel ? "the heel sits that much higher or lower in the upper"
                                      : "if it lies under the heel"};
}

GeometryLine volume_line(const GeometryCost &cost)
{
  const char *where = cost.part == ShoePart::heel       ? "under a heel"
                      : cost.part == ShoePart::forefoot ? "under a forefoot"
                                                        : "full length, as the part is not known";
  return {"room for the foot", fmt::format("{:+.0f} cm3", -1e6 * cost.volume),
          fmt::format("{:.0f} cm2 assumed, {}", 1e4 * assumed_area(cost.part), where)};
}
} // namespace

ShoePart shoe_part(const solver::Case &data)
{
  const auto by_label = part_named(data.label);
  return by_label != ShoePart::unknown ? by_label : part_named(data.title);
}

double thickness_inside(const solver::Case &data)
{
  const auto board = std::find_if(data.layers.begin(), data.layers.end(), [](const auto &layer) {
    return layer.material.family == "board" || layer.name == "board";
  });
  double     inside = 0;
  for (auto layer = data.layers.begin(); layer != data.layers.end(); ++layer)
    if (board != data.layers.end() ? layer < board : layer->laid_in)
      inside += layer->thickness;
  return inside;
}

double assumed_area(ShoePart part)
{
  return part == ShoePart::heel ? 45e-4 : part == ShoePart::forefoot ? 75e-4 : 190e-4;
}

GeometryCost geometry_cost(const solver::Case &now, const solver::Case &changed)
{
  GeometryCost cost;
  cost.part = shoe_part(now);
  cost.height = stack_height(changed.layers) - stack_height(now.layers);
  cost.inside = thickness_inside(changed) - thickness_inside(now);
  cost.volume = cost.inside * assumed_area(cost.part);
  return cost;
}

std::vector<GeometryLine> geometry_lines(const GeometryCost &cost, Lengths lengths)
{
  std::vector<GeometryLine> lines;
  if (std::abs(cost.height) < least_length)
    lines.push_back({"stack height", "the same",
                     "so are the heel-to-toe drop, the counter depth and the room for the foot"});
  else
  {
    lines.push_back(
      {"stack height", signed_length_text(cost.height, lengths), "the foot stands higher above the ground"});
    if (cost.height < 0)
      lines.back().note = "the foot stands lower";
    lines.push_back(drop_line(cost, lengths));
  }
  if (std::abs(cost.inside) >= least_length)
  {
    if (lines.size() == 1)
      lines.back().note.clear();
    lines.push_back(counter_line(cost, lengths));
    lines.push_back(volume_line(cost));
  }
  else if (lines.size() > 1)
    lines.push_back({"counter depth", "the same", "nothing changes above the lasting board"});
  return lines;
}
} // namespace solemech::tools
