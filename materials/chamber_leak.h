// SPDX-License-Identifier: Apache-2.0
// A small hole in a gas chamber: isentropic flow of an ideal gas through an orifice,
//   dm/dt = Cd A p_u sqrt(gamma/(R_g T_u)) psi,
//   psi = sqrt{2/(gamma - 1) [q^(2/gamma) - q^((gamma + 1)/gamma)]},
// q = p_down/p_up, held at its greatest value once q falls below (2/(gamma + 1))^(gamma/(gamma - 1))
// (choked). Cd = 0.6, sharp edge: common practice, no source. A leak is applied at fixed volume after an
// accepted step (first order; a leak is slow against a step).
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
    const double choked = std::pow(2 / (g + 1), g / (g - 1));
    const double q = std::clamp(std::min(p, p_a) / upstream, choked, 1.0);
    const double psi =
      std::sqrt(std::max(0.0, 2 / (g - 1) * (std::pow(q, 2 / g) - std::pow(q, (g + 1) / g))));
    const double area = std::numbers::pi / 4 * diameter * diameter;
    const double flow = discharge_coefficient * area * upstream * std::sqrt(g * air::gas_constant / t) * psi;
    return leaving ? -flow : flow;
  }

  /// Lets the gas leak for `dt` [s] at fixed volume. What stays expands adiabatically, what comes in brings
  /// its enthalpy at wall temperature: d(n T) = gamma T_up dn. Stops at balance with the atmosphere.
  LeakStep leak(const ChamberGas &gas, const GasState &state, double dt) const
  {
    GasState now = state;
    if (diameter > 0)
      for (double left = dt; left > 0;)
      {
        const double imbalance = gas.atmospheric_pressure / now.pressure() - 1;
        const double speed = rate(gas, now);
        if (std::abs(imbalance) < 1e-9 || speed == 0)
          break;
        // A sub-step moves at most 0.2 % of the gas, and never past the balance of pressures.
        const double limit = std::min(0.002, 0.5 * std::abs(imbalance)) * now.amount / std::abs(speed);
        const double part = std::min(left, limit);
        const double dn = part * speed;
        const double t_up = dn < 0 ? now.temperature : gas.wall_temperature;
        const double n_t = now.amount * now.temperature + gas.heat_ratio * t_up * dn;
        now.amount += dn;
        now.temperature = n_t / now.amount;
        left -= part;
      }
    return {now, gas.exergy(state) - gas.exergy(now)};
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
