// SPDX-License-Identifier: Apache-2.0
#include "solver/models/stack_chambers.h"

#include <algorithm>
#include <cmath>

namespace solemech::solver
{
namespace
{
const Layer &layer_of(const geometry::ChamberMesh &drawn, const Case &input)
{
  return input.layers[input.layers.size() - 1 - drawn.strip];
}

/// Exchange of heat with the wall; infinity: none [s].
double heat_time(const AirUnit &unit, const Case &input)
{
  return unit.heat_time >= 0
           ? unit.heat_time
           : materials::heat_time_between_fibres(unit.filament_spacing, unit.fibre_radius,
                                                 input.atmospheric_pressure + unit.gauge_pressure,
                                                 input.temperature);
}

/// The unit as its fibres see it: where they hold no faces together, they are under no pressure.
AirUnit as_pulled(const AirUnit &unit)
{
  AirUnit pulled = unit;
  if (unit.state == ChamberState::open || !unit.has_fibres)
    pulled.gauge_pressure = 0;
  return pulled;
}
} // namespace

bool leaks(const std::vector<Chamber> &chambers)
{
  return std::ranges::any_of(chambers, [](const Chamber &c) { return c.gas && c.gas->leaks(); });
}

std::vector<Chamber> drawn_chambers(const Case &input, const geometry::PlugMesh &mesh)
{
  std::vector<Chamber> chambers;
  for (const auto &drawn : mesh.chambers)
  {
    const auto &layer = layer_of(drawn, input);
    chambers.push_back({layer.name, &*layer.unit, layer.thickness - 2 * layer.unit->film_thickness});
  }
  return chambers;
}

std::vector<UnitToInflate> units_to_inflate(const std::vector<Chamber> &chambers, const Case &input,
                                            const std::vector<Part> &parts)
{
  std::vector<UnitToInflate> units;
  for (unsigned c = 0; c < chambers.size(); ++c)
    if (const auto &chamber = chambers[c]; chamber.is_inflated() && chamber.unit->has_fibres)
    {
      const auto layer = std::ranges::find(input.layers, chamber.layer, &Layer::name);
      units.push_back({c, film_of(parts, *layer), chamber.unit, chamber.height});
    }
  return units;
}

void fill(std::vector<Chamber> &chambers, const Case &input, const Discretisation &mesh,
          EquationOfMotion &equation)
{
  for (unsigned c = 0; c < chambers.size(); ++c)
  {
    auto       &chamber = chambers[c];
    const auto &drawn = mesh.mesh().chambers[c];
    const auto &unit = *chamber.unit;
    if (unit.state != ChamberState::open)
    {
      std::optional<materials::ChamberLeak> leak;
      if (unit.state == ChamberState::leaking)
        leak = materials::ChamberLeak{.diameter = unit.leak_diameter};
      const materials::ChamberGas gas{input.temperature, input.atmospheric_pressure, heat_time(unit, input)};
      chamber.gas =
        &equation.contribute<GasChamber>(chamber.layer, mesh, drawn, gas, unit.outside_volume, leak);
      chamber.gas->seal(Vector::Zero(equation.size()), unit.gauge_pressure);
    }
    chamber.fibres = &equation.contribute<FibreBundle>(chamber.layer, mesh, drawn,
                                                       fibres_of(as_pulled(unit), chamber.height));
  }
}

Vector inflate_in_place(const std::vector<Chamber> &chambers, EquationOfMotion &equation, double away,
                        InflationFacts &facts)
{
  std::vector<ChamberToFill> gases;
  for (const auto &chamber : chambers)
    if (chamber.gas)
      gases.push_back({chamber.gas, chamber.unit->gauge_pressure, !chamber.unit->has_fibres});
  const bool is_slack = std::ranges::any_of(
    chambers, [](const Chamber &c) { return c.gas && c.is_inflated() && !c.unit->has_fibres; });
  return is_slack ? inflate_in_place(equation, gases, away, facts) : Vector();
}

ChamberFacts facts_of(const Chamber &chamber, const geometry::ChamberMesh &drawn, const Case &input,
                      const Discretisation &mesh, const Vector &x)
{
  const auto  &unit = *chamber.unit;
  const double heat = heat_time(unit, input);
  ChamberFacts facts;
  facts.layer = chamber.layer;
  facts.gauge_pressure = unit.gauge_pressure;
  facts.fibre_tension = as_pulled(unit).gauge_pressure * unit.fibre_spacing * unit.fibre_spacing;
  for (const unsigned face : drawn.wetted_faces)
    for (const unsigned node : mesh.edge(mesh.mesh().faces[face]))
    {
      const int    dof = mesh.dof(node, 0);
      const double radius = mesh.nodes()[node][0] + (dof >= 0 ? x[dof] : 0.0);
      facts.bulge = std::max(facts.bulge, radius - (0.5 * unit.diameter - unit.film_thickness));
    }
  facts.threshold_load = chamber.fibres->pull(x);
  facts.heat_time = std::isfinite(heat) ? heat : -1.0;
  if (chamber.gas)
    facts.volume = chamber.gas->volume(x);
  return facts;
}
} // namespace solemech::solver
