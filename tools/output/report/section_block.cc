// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/section_block.h"

#include "solver/layer_parts.h"
#include "tools/output/report/energy_flow.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/facts.h"
#include "tools/rigs/registry.h"

#include <algorithm>
#include <cmath>

namespace solemech::tools::report
{
namespace
{
constexpr double mm = 1e3;
constexpr double small_share = 2e-3; ///< of the energy put in; smaller rows are summed

double in_mm(double metres)
{
  return rounded(mm * metres, 6);
}

bool is_default(const Run &run, const std::string &block, const std::string &name)
{
  const auto entries = defaults_of(run, block);
  return std::any_of(entries.begin(), entries.end(),
                     [&](const auto &entry) { return entry.starts_with(name + " "); });
}

double greatest(const std::vector<double> &values)
{
  double size = 0;
  for (const double value : values)
    size = std::max(size, std::abs(value));
  return size;
}

/// Rows of the chart over time; small ones go into one row a kind.
class Rows
{
public:
  Rows(double input, std::size_t n) : least_(small_share * input), stored_(n, 0.0), lost_(n, 0.0) {}

  void add(const std::string &name, EnergyRowKind kind, int part, const std::vector<double> &values)
  {
    if (greatest(values) >= least_)
      rows_.push_back({name, kind, part, rounded(values, 1)});
    else
      for (std::size_t i = 0; i < values.size(); ++i)
        (kind == EnergyRowKind::lost ? lost_ : stored_)[i] += values[i];
  }

  std::vector<EnergyRow> finish()
  {
    if (greatest(stored_) > 0)
      rows_.push_back({"stored elsewhere", EnergyRowKind::stored, -1, rounded(stored_, 1)});
    if (greatest(lost_) > 0)
      rows_.push_back({"lost elsewhere", EnergyRowKind::lost, -1, rounded(lost_, 1)});
    return std::move(rows_);
  }

private:
  double                 least_;
  std::vector<double>    stored_, lost_;
  std::vector<EnergyRow> rows_;
};
} // namespace

std::optional<Section> section_block(const Run &run, const std::vector<Part> &parts)
{
  const auto &setup = run.setup;
  // A bar of a tread is no stack of level layers: its kind draws its outline as a chart.
  if (setup.layers.empty() || !rigs::kind_of(setup).presses_a_stack())
    return std::nullopt;
  const double height = stack_height(setup.layers);
  const bool   invented = layers_are_assumed(run);
  Section      section{in_mm(2 * setup.plug.radius), in_mm(height), {}, {}};
  const auto   width = [&](const std::string &name, double metres, double level, bool assumed) {
    section.widths.push_back({name, in_mm(metres), in_mm(level), assumed});
  };
  width(setup.plug.section == solver::Section::axisymmetric ? "plug, diameter" : "strip, width",
        2 * setup.plug.radius, 0, invented || is_default(run, "plug", "radius"));
  double top = height;
  for (const auto &layer : setup.layers)
  {
    const double bottom = top - layer.thickness > 1e-9 ? top - layer.thickness : 0.0,
                 middle = 0.5 * (top + bottom);
    section.layers.push_back(
      {layer.name, in_mm(bottom), in_mm(top), part_number(parts, layer.name), invented});
    if (layer.core_diameter > 0)
      width(layer.name + ", core diameter", layer.core_diameter, middle, invented);
    if (layer.unit)
      width(layer.name + ", diameter of the air unit", layer.unit->diameter, middle, invented);
    top = bottom;
  }
  width("striker, diameter", tup_of(setup.rig).diameter, height, invented);
  return section;
}

Curves curves_block(const Run &run)
{
  const auto &result = run.result;
  const auto  curve = [&](const std::vector<double> *values, double factor) {
    return values ? rounded(*values, factor) : std::vector<double>(result.time.size(), 0.0);
  };
  return {rounded(result.time, 1e3, 7), curve(rigs::curve_of(run, "force"), 1),
          curve(rigs::compression_curve(run), mm), rounded(1e3 * result.time_of_peak, 6),
          rounded(1e3 * result.time_of_loss, 6)};
}

std::vector<Gas> gas_blocks(const Run &run, const std::vector<Part> &parts)
{
  std::vector<Gas> gases;
  for (const auto &layer : run.setup.layers)
    if (const auto *pressure = rigs::curve_of(run, layer.name + ".gauge_pressure"))
      gases.push_back({part_number(parts, solver::film_part(layer.name)), rounded(*pressure, 1e-3, 4)});
  return gases;
}

std::optional<Energy> energy_block(const Run &run, const std::vector<Part> &parts)
{
  const EnergyPicture picture = energy_picture(run.setup, run.result);
  const EnergyFlow    flow = energy_flow(run);
  if (picture.input <= 0 || flow.input <= 0)
    return std::nullopt;
  Energy energy{rounded(picture.input, 6), rounded(picture.accounted(), 6), {}, {}, {}};
  for (const auto &share : picture.shares)
    energy.shares.push_back({share.name, share.kind, rounded(share.energy, 6),
                             share.kind == ShareKind::lost_in_part ? part_number(parts, share.name) : -1});
  Rows rows(flow.input, run.result.time.size());
  if (!flow.weight.empty())
    rows.add("drop weight", EnergyRowKind::weight, -1, flow.weight);
  for (const auto &part : flow.parts)
    rows.add(part.name, EnergyRowKind::stored, part_number(parts, part.name), part.stored);
  rows.add("moving in the stack, stored at its faces", EnergyRowKind::stored, -1, flow.elsewhere);
  for (const auto &part : flow.parts)
    rows.add(part.name, EnergyRowKind::lost, part_number(parts, part.name), part.lost);
  rows.add("guide", EnergyRowKind::lost, -1, flow.guide);
  energy.time = rounded(run.result.time, 1e3, 7);
  energy.rows = rows.finish();
  return energy;
}
} // namespace solemech::tools::report
