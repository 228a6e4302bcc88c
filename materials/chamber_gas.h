// SPDX-License-Identifier: Apache-2.0
// Ideal gas sealed in a chamber of volume V that trades heat with fibres and walls at T_w:
//   dT/T = -(gamma - 1) dV/V - (T - T_w)/(tau T) dt,   p V = n T,  n = m R_g.
// A step is split symmetrically: half the exchange, adiabatic change of volume, half the exchange. The
// pressure at its end is then a function of the new volume alone, second order in time. Energy is counted as
// exergy, the work the gas could still do against surroundings at T_w and p_a; it falls only in the
// exchanges.
// Source: textbook thermodynamics (A. Bejan, Advanced Engineering Thermodynamics, ch. 3; memory).
#pragma once

#include "materials/errors.h"

#include <numbers>

namespace solemech::materials
{
/// State of the gas at the end of a step.
struct GasState
{
  double volume = 0;      ///< V [m3]
  double temperature = 0; ///< T [K]
  double amount = 0;      ///< n = m R_g [J/K]

  double pressure() const { return amount * temperature / volume; } ///< absolute [Pa]
};

/// Absolute pressure and its derivative by volume at the end of a step.
struct GasPressure
{
  double pressure;   ///< p [Pa]
  double derivative; ///< dp/dV [Pa/m3], < 0
};

/// An accepted step: new exergy = old exergy + work - heat_loss, to rounding.
struct GasStep
{
  GasState state;
  double   work;      ///< exact work of the motion on the gas, net of the atmosphere's [J]
  double   heat_loss; ///< exergy lost in the two exchanges [J], >= 0
};

struct ChamberGas
{
  double wall_temperature = 296.15;                           ///< T_w [K]
  double atmospheric_pressure = 101325;                       ///< p_a [Pa]
  double heat_time = std::numeric_limits<double>::infinity(); ///< tau [s]; infinity: adiabatic, 0: isothermal
  double heat_ratio = 1.4;                                    ///< gamma [-]; air and nitrogen

  /// The gas that fills `volume` [m3] at `gauge_pressure` [Pa] and wall temperature.
  GasState seal(double volume, double gauge_pressure) const
  {
    return {volume, wall_temperature, (atmospheric_pressure + gauge_pressure) * volume / wall_temperature};
  }

  /// True when a step is long against the heat time: then the gas is held at wall temperature, p V is
  /// constant and nothing is lost. A steady change of volume in split steps books (x/2) coth(x/2) of the true
  /// loss, x = dt/tau: 1.3 at x = 2, twice at x = 4, without bound beyond; from there on none is nearer.
  bool isothermal(double dt) const { return dt > 4 * heat_time; }

  /// Absolute pressure at the end of a step of `dt` [s] that takes the gas from `old` to `volume` [m3].
  GasPressure pressure(const GasState &old, double volume, double dt) const
  {
    const double p_wall = old.amount * wall_temperature / volume;
    if (isothermal(dt))
      return {p_wall, -p_wall / volume};
    const double e = half_exchange(dt);
    const double pushed = exchanged(old.temperature, e) * std::pow(old.volume / volume, heat_ratio - 1);
    const double pressure = p_wall + old.amount / volume * e * (pushed - wall_temperature);
    return {pressure, -pressure / volume - (heat_ratio - 1) * old.amount / (volume * volume) * e * pushed};
  }

  /// Takes an accepted step.
  GasStep advance(const GasState &old, double volume, double dt) const
  {
    const double e = half_exchange(dt);
    GasState     start = old;
    start.temperature = isothermal(dt) ? wall_temperature : exchanged(old.temperature, e);
    GasState pushed = start;
    pushed.volume = volume;
    if (!isothermal(dt))
      pushed.temperature = start.temperature * std::pow(old.volume / volume, heat_ratio - 1);
    GasState end = pushed;
    if (!isothermal(dt))
      end.temperature = exchanged(pushed.temperature, e);
    return {end, exergy(pushed) - exergy(start),
            (exergy(old) - exergy(start)) + (exergy(pushed) - exergy(end))};
  }

  /// Exergy against surroundings at T_w and p_a [J]; zero for gas in balance with them. For a fixed amount it
  /// differs by a constant from the form that takes the sealed volume as zero. n differing by a leak is
  /// allowed.
  double exergy(const GasState &state) const
  {
    const double t = thermal_excess(state.temperature / wall_temperature - 1);
    const double v =
      thermal_excess(atmospheric_pressure * state.volume / (state.amount * wall_temperature) - 1);
    return state.amount * wall_temperature * (t / (heat_ratio - 1) + v);
  }

private:
  double half_exchange(double dt) const { return heat_time > 0 ? std::exp(-0.5 * dt / heat_time) : 0.0; }
  double exchanged(double temperature, double e) const
  {
    return wall_temperature + e * (temperature - wall_temperature);
  }
  /// y - ln(1 + y), without cancellation at small y.
  static double thermal_excess(double y)
  {
    if (std::abs(y) > 1e-2)
      return y - std::log1p(y);
    double sum = 0;
    for (int k = 9; k >= 2; --k)
      sum = 1.0 / k - y * sum;
    return y * y * sum;
  }
};

/// Properties of air that the heat time and the leak need.
namespace air
{
inline constexpr double gas_constant = 287.05; ///< R_g [J/(kg K)], dry air
inline constexpr double conductivity = 0.026;  ///< k at 300 K [W/(m K)], handbook (from memory)
inline constexpr double heat_capacity = 718;   ///< c_v [J/(kg K)], handbook (from memory)
} // namespace air

/// Heat time of gas between parallel fibres [s]: each fibre of radius r_f cools a cylinder of gas of radius
/// b = spacing/sqrt(pi); tau = b^2/(2 a) (ln(b/r_f) - 3/4), a = k/(rho c_v), proportional to absolute
/// pressure. Source: slow conduction mode of the cylinder cell for r_f << b (as for cells of unit fuel rods;
/// from memory). Throws InvalidParameter when the fibres touch.
inline double heat_time_between_fibres(double spacing, double fibre_radius, double absolute_pressure,
                                       double temperature)
{
  require_positive("fibre spacing", spacing);
  require_positive("absolute pressure", absolute_pressure);
  require(temperature > 0, "temperature", temperature, "kelvin above 0");
  require(fibre_radius > 0 && fibre_radius <= 0.1 * spacing, "fibre radius", fibre_radius,
          "a radius above 0, at most a tenth of the spacing");
  const double density = absolute_pressure / (air::gas_constant * temperature);
  const double diffusivity = air::conductivity / (density * air::heat_capacity);
  const double b = spacing / std::sqrt(std::numbers::pi);
  return b * b / (2 * diffusivity) * (std::log(b / fibre_radius) - 0.75);
}

/// Throws InvalidParameter when a number is outside its range.
inline void check(const ChamberGas &gas)
{
  require(gas.wall_temperature >= 200 && gas.wall_temperature <= 400, "wall temperature",
          gas.wall_temperature, "kelvin from 200 to 400");
  require_positive("atmospheric pressure", gas.atmospheric_pressure);
  require(gas.heat_time >= 0, "heat time", gas.heat_time, "a time, 0 (isothermal) to infinity (adiabatic)");
  require(gas.heat_ratio > 1 && gas.heat_ratio <= 5.0 / 3.0, "heat capacity ratio", gas.heat_ratio,
          "a number above 1, at most 5/3");
}
} // namespace solemech::materials
