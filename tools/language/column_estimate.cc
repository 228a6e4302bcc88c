// SPDX-License-Identifier: Apache-2.0
#include "tools/language/case_checks.h"

#include "numerics/rising_root.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace solemech::tools
{
namespace
{
using materials::FoamData;

double loaded_area(const solver::Case &data)
{
  const double striker = tup_of(data.rig).diameter / 2;
  const double radius = std::min(data.plug.radius, striker + stack_height(data.layers) / 2);
  // A plane section counts one metre of depth.
  return data.plug.section == solver::Section::axisymmetric ? std::numbers::pi * radius * radius : 2 * radius;
}

/// Stored energy per volume [Pa] of a foam at an upright stretch, without branches.
double stored(const FoamData &foam, double pressure, double stretch)
{
  const double beta = foam.network.front().volumetric_exponent;
  const double nu = beta / (1 + 2 * beta);
  const double lateral = std::pow(stretch, -nu), volume = stretch * lateral * lateral;
  double       energy = 0;
  for (const auto &term : foam.network)
  {
    const double a = term.exponent, b = term.volumetric_exponent;
    const double volumetric = b > 0 ? std::expm1(-a * b * std::log(volume)) / b : -a * std::log(volume);
    energy +=
      2 * term.shear_modulus / (a * a) * (std::pow(stretch, a) + 2 * std::pow(lateral, a) - 3 + volumetric);
  }
  const double r = foam.relative_density;
  if (r > 0 && volume < 1)
  {
    const double x = (volume - r) / (1 - r);
    energy += foam.closed_cells * pressure * (1 - r) * (-std::log(x) + x - 1); // isothermal cell gas
    const double m = foam.densification_exponent;
    energy += foam.densification_modulus * (1 - r) *
              ((std::pow(x, 1 - m) - 1) / (m - 1) + x - 1 - m * (1 - x) * (1 - x) / 2);
  }
  return energy;
}

/// Stretch at which a foam counts as locked up: a fifth of its cell space left; a tenth when it has no cells.
double lock_up(const FoamData &foam)
{
  const double beta = foam.network.front().volumetric_exponent;
  const double nu = beta / (1 + 2 * beta);
  const double r = foam.relative_density;
  return r > 0 ? std::pow(r + 0.2 * (1 - r), 1 / (1 - 2 * nu)) : 0.1;
}

/// Nominal stress [Pa], compression positive, by differences.
double stress(const FoamData &foam, double pressure, double stretch)
{
  const double step = 1e-5;
  return (stored(foam, pressure, stretch - step) - stored(foam, pressure, stretch)) / step;
}
} // namespace

double energy_capacity(const solver::Case &data)
{
  const double area = loaded_area(data);
  double       force = std::numeric_limits<double>::infinity();
  bool         soft = false;
  for (const auto &layer : data.layers)
    if (const auto *foam = std::get_if<FoamData>(&layer.material.data);
        foam && !layer.unit && !foam->network.empty())
      force = std::min(force, layer.area_share * area *
                                stress(*foam, data.atmospheric_pressure, lock_up(*foam) + 2e-5));
  double energy = 0;
  for (const auto &layer : data.layers)
  {
    if (layer.unit)
    {
      const auto  &unit = *layer.unit;
      const double base = data.plug.section == solver::Section::axisymmetric
                            ? std::numbers::pi / 4 * unit.diameter * unit.diameter
                            : unit.diameter;
      const double volume = base * layer.thickness;
      const double whole = volume + unit.outside_volume;
      const double ratio = whole / (whole - (1 - unit.packed_share) * volume);
      if (unit.state == solver::ChamberState::sealed)
        energy += (data.atmospheric_pressure + unit.gauge_pressure) * whole * std::log(ratio);
      continue;
    }
    const auto *foam = std::get_if<FoamData>(&layer.material.data);
    if (!foam || foam->network.empty())
      continue;
    soft = true;
    const auto left_over = [&](double stretch) {
      return force - layer.area_share * area * stress(*foam, data.atmospheric_pressure, stretch);
    };
    const double stretch =
      numerics::rising_root(left_over, lock_up(*foam), 1); // where the layer carries the force
    energy += stored(*foam, data.atmospheric_pressure, stretch) * layer.area_share * area * layer.thickness;
  }
  return soft ? energy : std::numeric_limits<double>::infinity();
}
} // namespace solemech::tools
