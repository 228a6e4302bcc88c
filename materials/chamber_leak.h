// SPDX-License-Identifier: Apache-2.0
// A small hole in a gas chamber: isentropic flow of an ideal gas through an orifice,
//   dm/dt = Cd A p_u sqrt(gamma/(R_g T_u)) psi,
//   psi = sqrt{2/(gamma - 1) [q^(2/gamma) - q^((gamma + 1)/gamma)]},
// q = p_down/p_up, held at its greatest value once q falls below (2/(gamma + 1))^(gamma/(gamma - 1))
// (choked). Cd = 0.6, sharp edge: common practice, no source. At fixed volume the pressure follows from one
// equation, since what stays expands adiabatically and what comes in brings its enthalpy. It is integrated in
// s = sqrt(|p/p_a - 1|), which falls at a bounded rate and comes to zero in finite time.
// Source: Saint-Venant & Wantzel 1839, any textbook of gas dynamics (from memory).
#pragma once

#include "materials/chamber_gas.h"

#include <algorithm>

namespace solemech::materials
{
/// Gas after a leak, and what the ledger books for it.
struct LeakStep
{
  GasState state;
  double   flow_loss; ///< exergy carried out and lost in the jet [J], >= 0
};

struct ChamberLeak
{
  double diameter = 0;                ///< of the hole [m]; 0: tight
  double discharge_coefficient = 0.6; ///< Cd [-]

  /// Rate dn/dt of the amount n = m R_g [J/(K s)]: negative while gas leaves.
  double rate(const ChamberGas &gas, const GasState &state) const
  {
    const double g = gas.heat_ratio, p = state.pressure(), p_a = gas.atmospheric_pressure;
    const bool   leaving = p > p_a;
    const double upstream = leaving ? p : p_a;
    const double t = leaving ? state.temperature : gas.wall_temperature;
    const double choked = g / (g - 1) * std::log(2 / (g + 1));
    const double q =
      std::clamp(std::log(std::min(p, p_a) / upstream), choked, 0.0); // its logarithm: no cancellation
    const double psi = std::sqrt(-2 / (g - 1) * std::exp(2 / g * q) * std::expm1((g - 1) / g * q));
    const double area = std::numbers::pi / 4 * diameter * diameter;
    const double flow = discharge_coefficient * area * upstream * std::sqrt(g * air::gas_constant / t) * psi;
    return leaving ? -flow : flow;
  }

  /// Lets the gas leak for `dt` [s] at fixed volume, down to balance with the atmosphere. What stays expands
  /// adiabatically, what comes in brings its enthalpy at wall temperature: d(n T) = gamma T_up dn. Where
  /// `isothermal`, everything keeps the wall temperature that it has.
  LeakStep leak(const ChamberGas &gas, const GasState &state, double dt, bool isothermal = false) const
  {
    const double p_a = gas.atmospheric_pressure;
    const Path   path{gas, state, state.pressure() > p_a ? 1.0 : -1.0, isothermal ? 1.0 : gas.heat_ratio};
    double       s = std::sqrt(std::abs(state.pressure() / p_a - 1));
    if (diameter <= 0 || s == 0)
      return {state, 0};
    constexpr double step = 0.05; // of s; the method of fourth order errs by 1e-7 then
    for (double left = dt; left > 0 && s > 0;)
    {
      const double k1 = fall(path, s), h = std::min(left, step / k1);
      const double k2 = fall(path, s - 0.5 * h * k1), k3 = fall(path, s - 0.5 * h * k2),
                   k4 = fall(path, s - h * k3);
      s -= h / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
      left -= h;
    }
    const GasState now = path.at(std::max(s, 0.0));
    return {now, gas.exergy(state) - gas.exergy(now)};
  }

private:
  /// States that the gas can come to.
  struct Path
  {
    const ChamberGas &gas;
    const GasState   &start;
    double            sign;     ///< of p - p_a
    double            exponent; ///< gamma, or 1: isothermal

    GasState at(double s) const
    {
      GasState     now = start;
      const double p0 = start.pressure(), p = gas.atmospheric_pressure * (1 + sign * s * s), v = start.volume;
      if (sign > 0)
        now.amount *= std::pow(p / p0, 1 / exponent);
      else
        now.amount += (p - p0) * v / (exponent * gas.wall_temperature);
      now.temperature = p * v / now.amount;
      return now;
    }
  };

  /// -ds/dt [1/s].
  double fall(const Path &path, double s) const
  {
    s = std::max(s, 1e-5); // the limit at 0 is reached there
    const GasState now = path.at(s);
    const double   upstream = path.sign > 0 ? now.temperature : path.gas.wall_temperature;
    const double   slope = path.exponent * upstream / now.volume * rate(path.gas, now); // dp/dt
    return -path.sign * slope / (2 * s * path.gas.atmospheric_pressure);
  }
};

/// Throws InvalidParameter when a number is outside its range.
inline void check(const ChamberLeak &leak)
{
  require_not_negative("leak diameter", leak.diameter);
  require(leak.discharge_coefficient > 0 && leak.discharge_coefficient <= 1, "discharge coefficient",
          leak.discharge_coefficient, "a number above 0, at most 1");
}
} // namespace solemech::materials
