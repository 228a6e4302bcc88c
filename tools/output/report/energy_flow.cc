// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/energy_flow.h"

#include "solver/rig_parts.h"
#include "tools/output/results/energy_picture.h"
#include "tools/rigs/registry.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
using solver::EnergyKind;
namespace rig_part = solver::rig_part;

void add(std::vector<double> &sum, const std::vector<double> &values)
{
  for (std::size_t i = 0; i < sum.size(); ++i)
    sum[i] += values[i];
}

PartFlow &part_of(EnergyFlow &flow, const std::string &name, std::size_t n)
{
  for (auto &part : flow.parts)
    if (part.name == name)
      return part;
  return flow.parts.emplace_back(PartFlow{name, std::vector<double>(n), std::vector<double>(n)});
}

/// Rows that belong to no part of the stack: springs of the contact, the side's shell, bedding.
bool is_held_at_a_face(const solver::LedgerRow &row)
{
  return row.kind == "contact" || row.kind == "bedding";
}
} // namespace

const PartFlow *EnergyFlow::find(const std::string &name) const
{
  for (const auto &part : parts)
    if (part.name == name)
      return &part;
  return nullptr;
}

EnergyFlow energy_flow(const Run &run)
{
  const auto &result = run.result;
  EnergyFlow  flow;
  if (result.input_energy <= 0 || result.ledger.empty() || result.time.empty())
    return flow;
  const std::size_t n = result.time.size();
  const bool        drop = rigs::kind_of(run.setup).energy_basis() == rigs::EnergyBasis::blow;
  flow.input = result.supplied_energy();
  flow.guide.assign(n, 0);
  flow.elsewhere.assign(n, 0);
  std::vector<double> height(n, 0), moving(n, 0);
  for (const auto &part : parts_of(run))
    part_of(flow, part.name, n);
  for (const auto &row : result.ledger)
  {
    if (row.values.size() != n || row.type == EnergyKind::numerical)
      continue;
    if (row.type == EnergyKind::exchanged)
    {
      if (row.part == rig_part::striker)
        add(height, row.values);
    }
    else if (row.type == EnergyKind::kinetic && row.part != rig_part::support)
      add(row.part == rig_part::striker && drop ? moving : flow.elsewhere, row.values);
    else if (row.type == EnergyKind::dissipated && row.part == rig_part::guide)
      add(flow.guide, row.values);
    else if (row.type == EnergyKind::stored && is_held_at_a_face(row))
      add(flow.elsewhere, row.values);
    else
    {
      PartFlow &part = part_of(flow, row.part == rig_part::support ? base_of_the_rig : row.part, n);
      add(row.type == EnergyKind::dissipated ? part.lost : part.stored, row.values);
    }
  }
  if (drop)
  {
    const double lowest = std::min(0.0, *std::min_element(height.begin(), height.end()));
    flow.sink_gain = -lowest;
    flow.weight = moving;
    for (std::size_t i = 0; i < n; ++i)
      flow.weight[i] += height[i] - lowest;
  }
  return flow;
}

std::size_t recorded_at(const solver::Result &result, double time)
{
  if (result.time.empty())
    return 0;
  const auto nearest = std::min_element(result.time.begin(), result.time.end(), [&](double a, double b) {
    return std::abs(a - time) < std::abs(b - time);
  });
  return static_cast<std::size_t>(nearest - result.time.begin());
}

std::size_t recorded_end(const solver::Result &result)
{
  return result.time_of_loss > 0 ? recorded_at(result, result.time_of_loss)
                                 : (result.time.empty() ? 0 : result.time.size() - 1);
}
} // namespace solemech::tools::report
