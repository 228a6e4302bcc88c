// SPDX-License-Identifier: Apache-2.0
#include "tools/answers/compare/ledger_difference.h"

#include "solver/layer_parts.h"
#include "solver/rig_parts.h"
#include "tools/output/results/energy_picture.h"

#include <algorithm>

namespace solemech::tools
{
namespace
{
/// One row of the table: what of each run belongs to it.
struct Row
{
  PartDifference           difference;
  std::vector<std::string> names_a = {}, names_b = {}; ///< layers
};

bool belongs(const std::string &part, const std::vector<std::string> &layers)
{
  return std::any_of(layers.begin(), layers.end(),
                     [&](const std::string &layer) { return solver::is_part_of(part, layer); });
}

/// Rows of the layers: those of one change of several layers (the rubber) are one row.
std::vector<Row> layer_rows(const ChangePlan &plan)
{
  std::vector<Row> rows;
  int              last_whole = Slot::none;
  for (const Slot &slot : plan.slots)
  {
    const auto &[a, b] = slot.layers;
    if (slot.whole == Slot::none || slot.whole != last_whole)
    {
      std::string name = !a ? plan.b.layers[*b].name : plan.a.layers[*a].name;
      if (a && b && plan.a.layers[*a].name != plan.b.layers[*b].name)
        name += " -> " + plan.b.layers[*b].name;
      if (slot.whole != Slot::none &&
          plan.changes[static_cast<std::size_t>(slot.whole)].kind == ChangeKind::outsole)
        name = "rubber outsole";
      rows.push_back(Row{{name, 0, 0}});
    }
    last_whole = slot.whole;
    if (a)
      rows.back().names_a.push_back(plan.a.layers[*a].name);
    if (b)
      rows.back().names_b.push_back(plan.b.layers[*b].name);
  }
  return rows;
}

void add(std::vector<Row> &rows, const EnergyPicture &picture, bool is_b)
{
  const auto sum = [&](Row &row, double share) { (is_b ? row.difference.to : row.difference.from) += share; };
  for (const EnergyShare &part : picture.shares)
  {
    const double share = picture.share(part);
    auto         row = std::find_if(rows.begin(), rows.end(), [&](const Row &candidate) {
      return part.kind == ShareKind::lost_in_part
                       ? belongs(part.name, is_b ? candidate.names_b : candidate.names_a)
                       : candidate.difference.name == part.name;
    });
    if (row == rows.end())
    {
      // Not of a layer: a wall, a base.
      const auto other = std::find_if(rows.begin(), rows.end(), [&](const Row &candidate) {
        return candidate.difference.name == part.name;
      });
      row = other != rows.end() ? other : rows.insert(rows.end(), Row{{part.name, 0, 0}});
    }
    sum(*row, share);
  }
}
} // namespace

std::vector<PartDifference> ledger_difference(const ChangePlan &plan, const solver::Result &a,
                                              const solver::Result &b)
{
  const EnergyPicture of_a = energy_picture(plan.a, a), of_b = energy_picture(plan.b, b);
  if (of_a.shares.empty() || of_b.shares.empty())
    return {};
  std::vector<Row> rows = layer_rows(plan);
  const auto       returned = [](const EnergyPicture &picture) {
    return picture.shares.front().kind == ShareKind::returned ? picture.shares.front().name : std::string();
  };
  if (const std::string name = returned(of_a); !name.empty() && name == returned(of_b))
    rows.insert(rows.begin(), Row{{name, 0, 0}});
  for (const char *name : {solver::rig_part::guide, "left in the stack"})
    rows.push_back(Row{{name, 0, 0}});
  add(rows, of_a, false);
  add(rows, of_b, true);

  std::vector<PartDifference> differences;
  for (Row &row : rows)
    if (row.difference.from != 0 || row.difference.to != 0)
      differences.push_back(std::move(row.difference));
  return differences;
}
} // namespace solemech::tools
