// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_checks.h"

#include "tools/language/fields.h"

#include <fmt/format.h>

#include <cmath>
#include <set>

namespace solemech::tools
{
namespace
{
using materials::Dimension;
using materials::quantity_text;

std::string length(double value)
{
  return quantity_text(value, Dimension::length);
}

class Checker
{
public:
  Checker(const solver::Case &data, const CaseBlocks &blocks, materials::Problems &problems)
    : case_(data), blocks_(blocks), problems_(problems)
  {
  }

  void check()
  {
    const auto            n_before = problems_.n_noted();
    std::set<std::string> names;
    for (std::size_t i = 0; i < case_.layers.size(); ++i)
    {
      const auto &layer = case_.layers[i];
      if (!layer.name.empty() && !names.insert(layer.name).second)
        layer_problem(i, "name", fmt::format("\"{}\" is the name of another layer as well", layer.name),
                      "Give each layer its own name");
      ring(i);
      if (layer.unit)
        unit(i);
    }
    if (case_.layers.empty() && blocks_.layers.empty())
      return;
    if (problems_.n_noted() == n_before && n_before == 0)
      std::visit([this](const auto &rig) { check_rig(rig); }, case_.rig);
  }

private:
  void add(const toml::table *block, const char *entry, const std::string &title, std::string reason,
           std::string cure)
  {
    const auto *node = block ? block->get(entry) : nullptr;
    const auto  region = node ? node->source() : block ? block->source() : toml::source_region();
    problems_.add(materials::problem_at(region, title, std::move(reason), std::move(cure)));
  }

  void layer_problem(std::size_t i, const char *entry, std::string reason, std::string cure)
  {
    add(blocks_.layers[i], entry, fmt::format("{}.{}", case_.layers[i].name, entry), std::move(reason),
        std::move(cure));
  }

  void unit_problem(std::size_t i, const char *entry, std::string reason, std::string cure)
  {
    add(blocks_.layers[i]->get_as<toml::table>("unit"), entry,
        fmt::format("{}.{}", case_.layers[i].name, entry), std::move(reason), std::move(cure));
  }

  void ring(std::size_t i)
  {
    const auto &layer = case_.layers[i];
    if (layer.core_diameter > 0 && !layer.ring)
      layer_problem(i, "core_diameter", "a core needs a ring around it", "Add ring = \"material\"");
    if (layer.ring && layer.core_diameter == 0)
      layer_problem(i, "ring", "a ring needs the diameter of the core inside it",
                    "Add core_diameter = \"54 mm\"");
    if (layer.ring && layer.unit)
      layer_problem(i, "ring", "the layer has an air unit as well",
                    "The layer's material already fills the space round the unit; remove the ring");
    if (layer.core_diameter >= 2 * case_.plug.radius)
      layer_problem(i, "core_diameter",
                    fmt::format("the core of {} fills the plug of {}", length(layer.core_diameter),
                                length(2 * case_.plug.radius)),
                    "Remove core_diameter and ring, or widen plug.radius");
  }

  void unit(std::size_t i)
  {
    const auto &layer = case_.layers[i];
    const auto &unit = *layer.unit;
    if (2 * unit.film_thickness >= layer.thickness)
      unit_problem(i, "film_thickness",
                   fmt::format("two films of {} leave no chamber in a layer of {}",
                               length(unit.film_thickness), length(layer.thickness)),
                   "Give a thinner film or a thicker layer");
    else if (2 * unit.film_thickness >= unit.diameter)
      unit_problem(i, "diameter", "the film fills the unit", "Give a wider unit");
    else if (const double limit = film_pressure_limit(layer); unit.gauge_pressure > limit)
      unit_problem(i, "gauge_pressure",
                   fmt::format("{} is more than the film can hold, about {}",
                               quantity_text(unit.gauge_pressure, Dimension::pressure),
                               quantity_text(limit, Dimension::pressure)),
                   "Lower the pressure or give a thicker film");
    if (unit.diameter > 2 * case_.plug.radius * (1 + 1e-9))
      unit_problem(i, "diameter",
                   fmt::format("the unit of {} does not fit into the plug of {}", length(unit.diameter),
                               length(2 * case_.plug.radius)),
                   "Give a narrower unit (what lies outside goes into outside_volume), or widen plug.radius");
    if (std::holds_alternative<materials::FoamData>(unit.film.data) && !unit.film.name.empty() &&
        !std::get<materials::FoamData>(unit.film.data).network.empty())
      unit_problem(i, "film", fmt::format("\"{}\" is a foam", unit.film.name),
                   "Give a film such as \"tpu-film\"");
    const bool leaking = unit.state == solver::ChamberState::leaking;
    if (leaking && unit.leak_diameter == 0)
      unit_problem(i, "leak_diameter", "a leaking unit needs a hole", "Give leak_diameter = \"0.3 mm\"");
    if (!leaking && unit.leak_diameter > 0)
      unit_problem(i, "leak_diameter", "only a leaking unit has a hole", "Add state = \"leaking\"");
  }

  void check_rig(const solver::DurometerRig &rig)
  {
    if (case_.plug.section != solver::Section::axisymmetric)
      add(blocks_.plug, "section", "plug.section", "a gauge has a round tip", "Remove the line");
    if (height() < 1.05 * rig.gauge.travel)
      add(blocks_.rig, "scale", "durometer.scale",
          fmt::format("the tip would reach through a stack of {}", length(height())),
          "Stack sheets to 6 mm or more, or add what the sheet lies on as a layer");
  }

  void check_rig(const solver::AbrasionRig &)
  {
    for (std::size_t i = 0; i < case_.layers.size(); ++i)
    {
      const auto &layer = case_.layers[i];
      if (layer.unit)
        layer_problem(i, "unit", "an abrasive near a unit under pressure: it bursts without warning",
                      "Remove the unit from the stack; never grind on or near one");
      else if (layer.ring)
        layer_problem(i, "ring", "an abrasion bench allows plain layers only",
                      "Remove core_diameter and ring");
      else if (!(layer.abraded > 0) && !std::holds_alternative<materials::RubberData>(layer.material.data))
        layer_problem(i, "abraded",
                      fmt::format("\"{}\" is not a rubber: what the abrasive takes off it is not known",
                                  layer.material.name),
                      "Give it from a bench, such as abraded = \"0.1 mm3/(N m)\"");
    }
  }

  void check_rig(const solver::PressRig &rig)
  {
    if (rig.control == solver::PressControl::displacement && rig.peak >= 0.95 * height())
      add(blocks_.rig, blocks_.rig && blocks_.rig->contains("history") ? "history" : "peak_displacement",
          "press.peak_displacement",
          fmt::format("{} would leave nothing of a stack of {}", length(rig.peak), length(height())),
          "Give a smaller travel");
  }

  /// Of any other rig the reader has checked all.
  template <typename Other>
  void check_rig(const Other &)
  {
  }

  void check_rig(const solver::DropRig &rig)
  {
    const double energy = rig.mass * case_.gravity * rig.height;
    const double capacity = energy_capacity(case_);
    if (energy > capacity)
      add(blocks_.rig, blocks_.rig && blocks_.rig->contains("energy") ? "energy" : "height",
          fmt::format("{}.{}", blocks_.rig_name,
                      blocks_.rig && blocks_.rig->contains("energy") ? "energy" : "height"),
          fmt::format("{} would bottom the stack: its foam locks up at about {}",
                      quantity_text(energy, Dimension::energy), fmt::format("{:.2g} J", capacity)),
          "Lower the drop, or give a thicker or firmer stack");
  }

  double height() const { return stack_height(case_.layers); }

  const solver::Case  &case_;
  const CaseBlocks    &blocks_;
  materials::Problems &problems_;
};
} // namespace

double film_pressure_limit(const solver::Layer &layer)
{
  constexpr double allowed_stress = 30e6 / 3; // [Pa]
  const auto      &unit = *layer.unit;
  if (unit.has_fibres)
    return allowed_stress * unit.film_thickness / (layer.thickness / 2);
  return allowed_stress * 4 * unit.film_thickness / unit.diameter;
}

void check_case(const solver::Case &data, const CaseBlocks &blocks, materials::Problems &problems)
{
  Checker(data, blocks, problems).check();
}
} // namespace solemech::tools
