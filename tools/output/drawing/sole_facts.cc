// SPDX-License-Identifier: Apache-2.0
#include "tools/output/drawing/sole_facts.h"

#include "tools/output/results/block_json.h"

#include <algorithm>

namespace solemech::tools
{
SoleFacts sole_facts(const solver::Sole &sole, const geometry::SoleBody &body)
{
  const double length = body.length(), heel = geometry::heel_station * length,
               waist = geometry::waist_station * length, ball = body.ball_line().centre();
  SoleFacts facts;
  facts.title = sole.title;
  facts.invented = sole.invented;
  facts.length = length;
  facts.area = body.outline().area();
  facts.width_heel = body.outline().across(heel).width();
  facts.width_waist = body.outline().across(waist).width();
  facts.width_ball = body.outline().across(ball).width();
  facts.height_heel = body.height(heel);
  facts.height_ball = body.height(ball);
  facts.drop = facts.height_heel - facts.height_ball;
  facts.toe_spring = body.bottom().lift(length);
  facts.heel_bevel = body.bottom().lift(0);
  const auto volumes = body.volumes();
  for (std::size_t i = 0; i < sole.layers.size(); ++i)
  {
    const auto &layer = sole.layers[i];
    const auto [least, greatest] = std::ranges::minmax(layer.shape.thickness);
    facts.parts.push_back({layer.name, layer.material.name, least, greatest, body.region(i).area(),
                           volumes[i] * layer.material.density});
    facts.mass += facts.parts.back().mass;
  }
  return facts;
}

std::string facts_json(const SoleFacts &facts)
{
  return text_of(json_of(facts), 2) + "\n";
}
} // namespace solemech::tools
