// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report/section_block.h"

#include "tools/output/report/energy_flow.h"
#include "tools/output/report/plain_text.h"
#include "tools/output/report/run_facts.h"
#include "tools/output/results/energy_picture.h"
#include "tools/output/results/readings_table.h"
#include "tools/rigs/registry.h"

#include <nlohmann/json.hpp>

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

const char *name_of(ShareKind kind)
{
  switch (kind)
  {
  case ShareKind::returned:
    return "returned";
  case ShareKind::lost_in_part:
    return "part";
  case ShareKind::lost_in_guide:
    return "guide";
  case ShareKind::left_in_stack:
    break;
  }
  return "left";
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

  void add(const std::string &name, const char *kind, int part, const std::vector<double> &values)
  {
    if (greatest(values) >= least_)
      rows_.push_back(row(name, kind, part, values));
    else
      for (std::size_t i = 0; i < values.size(); ++i)
        (std::string(kind) == "lost" ? lost_ : stored_)[i] += values[i];
  }

  Json finish()
  {
    if (greatest(stored_) > 0)
      rows_.push_back(row("stored elsewhere", "stored", -1, stored_));
    if (greatest(lost_) > 0)
      rows_.push_back(row("lost elsewhere", "lost", -1, lost_));
    return std::move(rows_);
  }

private:
  static Json row(const std::string &name, const char *kind, int part, const std::vector<double> &values)
  {
    return {{"name", name}, {"kind", kind}, {"part", part}, {"energy", rounded(values, 1)}};
  }
  double              least_;
  std::vector<double> stored_, lost_;
  Json                rows_ = Json::array();
};
} // namespace

Json section_json(const Run &run, const std::vector<Part> &parts)
{
  const auto &setup = run.setup;
  // A bar of a tread is no stack of level layers: its kind draws its outline as a chart.
  if (setup.layers.empty() || !rigs::kind_of(setup).presses_a_stack())
    return nullptr;
  const double height = stack_height(setup.layers);
  const bool   invented = layers_are_assumed(run);
  Json         layers = Json::array(), widths = Json::array();
  const auto   width = [&](const std::string &name, double metres, double level, bool assumed) {
    widths.push_back({{"name", name}, {"width", in_mm(metres)}, {"y", in_mm(level)}, {"assumed", assumed}});
  };
  width(setup.plug.section == solver::Section::axisymmetric ? "plug, diameter" : "strip, width",
        2 * setup.plug.radius, 0, invented || is_default(run, "plug", "radius"));
  double top = height;
  for (const auto &layer : setup.layers)
  {
    const double bottom = top - layer.thickness > 1e-9 ? top - layer.thickness : 0.0,
                 middle = 0.5 * (top + bottom);
    layers.push_back({{"name", layer.name},
                      {"bottom", in_mm(bottom)},
                      {"top", in_mm(top)},
                      {"part", part_number(parts, layer.name)},
                      {"assumed", invented}});
    if (layer.core_diameter > 0)
      width(layer.name + ", core diameter", layer.core_diameter, middle, invented);
    if (layer.unit)
      width(layer.name + ", diameter of the air unit", layer.unit->diameter, middle, invented);
    top = bottom;
  }
  width("striker, diameter", tup_of(setup.rig).diameter, height, invented);
  return {{"width", in_mm(2 * setup.plug.radius)},
          {"height", in_mm(height)},
          {"layers", std::move(layers)},
          {"widths", std::move(widths)}};
}

Json curves_json(const Run &run)
{
  const auto &result = run.result;
  const auto  curve = [&](const std::vector<double> *values, double factor) {
    return values ? rounded(*values, factor) : std::vector<double>(result.time.size(), 0.0);
  };
  return {{"time", rounded(result.time, 1e3, 7)},
          {"force", curve(rigs::curve_of(run, "force"), 1)},
          {"compression", curve(rigs::compression_curve(run), mm)},
          {"timeOfPeak", rounded(1e3 * result.time_of_peak, 6)},
          {"timeOfLoss", rounded(1e3 * result.time_of_loss, 6)}};
}

Json energy_json(const Run &run, const std::vector<Part> &parts)
{
  const EnergyPicture picture = energy_picture(run.setup, run.result);
  const EnergyFlow    flow = energy_flow(run);
  if (picture.input <= 0 || flow.input <= 0)
    return nullptr;
  Json shares = Json::array();
  for (const auto &share : picture.shares)
    shares.push_back({{"name", share.name},
                      {"kind", name_of(share.kind)},
                      {"energy", rounded(share.energy, 6)},
                      {"part", share.kind == ShareKind::lost_in_part ? part_number(parts, share.name) : -1}});
  Rows rows(flow.input, run.result.time.size());
  if (!flow.weight.empty())
    rows.add("drop weight", "weight", -1, flow.weight);
  for (const auto &part : flow.parts)
    rows.add(part.name, "stored", part_number(parts, part.name), part.stored);
  rows.add("moving in the stack, stored at its faces", "stored", -1, flow.elsewhere);
  for (const auto &part : flow.parts)
    rows.add(part.name, "lost", part_number(parts, part.name), part.lost);
  rows.add("guide", "lost", -1, flow.guide);
  return {{"input", rounded(picture.input, 6)},
          {"accounted", rounded(picture.accounted(), 6)},
          {"shares", std::move(shares)},
          {"time", rounded(run.result.time, 1e3, 7)},
          {"rows", rows.finish()}};
}
} // namespace solemech::tools::report
