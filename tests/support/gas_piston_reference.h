// SPDX-License-Identifier: Apache-2.0
// A weight falling on a rigid, frictionless piston above gas that exchanges heat with its walls and may leave
// through a hole with sharp edges (isentropic flow of an orifice, choked where it has to be; J. D. Anderson,
// Modern Compressible Flow, ch. 5; from memory):
//   dT/T = -(gamma - 1) dV/V - (T - T_w)/(tau T) dt + (gamma - 1) dm/m,   p V/(m T) constant,
//   incoming gas brings its enthalpy: dT = (gamma T_w - T) dm/m,
// by Runge-Kutta on compression, speed, temperature and mass; the limits tau = 0 (isothermal) and infinity
// (adiabatic) need no integration in time and are compared with their energy balance (textbook gas laws).
// Independent of the product: no header of it is used here.
#pragma once

#include <limits>
#include <vector>

namespace solemech::tests
{
struct GasColumn
{
  double area = 0;                                            ///< of the piston [m2]
  double height = 0;                                          ///< of the gas at rest [m]
  double outside_volume = 0;                                  ///< joined to the column, of fixed size [m3]
  double gauge_pressure = 0;                                  ///< at rest [Pa]
  double atmospheric_pressure = 101325;                       ///< [Pa]
  double gamma = 1.4;                                         ///< ratio of specific heats [-]
  double heat_time = std::numeric_limits<double>::infinity(); ///< tau [s]; 0 isothermal
  double wall_temperature = 296.15;                           ///< T_w, also of the gas at rest [K]
  double leak_diameter = 0;                                   ///< of the hole [m]; 0: sealed
  double discharge_coefficient = 0.6;                         ///< of the hole [-]
  double gas_constant = 287.05;                               ///< of dry air [J/(kg K)]
  /// Threads that hold the piston down at rest: tension max(0, p_g A - stiffness * compression) [N/m].
  /// Infinite: a rigid stop, the full preload p_g A is released at first touch.
  double thread_stiffness = std::numeric_limits<double>::infinity();
};

struct PistonDrop
{
  double mass = 0;          ///< [kg]; the piston itself weighs nothing
  double touch_speed = 0;   ///< [m/s]
  double gravity = 9.80665; ///< [m/s2]
  double step = 5e-6;       ///< [s]
};

struct PistonHit
{
  std::vector<double> time, force, compression, gauge_pressure, temperature; ///< [s] [N] [m] [Pa] [K]
  double              peak_force = 0, peak_compression = 0, peak_gauge_pressure = 0, peak_temperature = 0;
  double contact_time = 0; ///< until the force on the weight is zero or the piston is back on its stop [s]
  double loss_speed = 0, loss_compression = 0, loss_temperature = 0;    ///< upwards [m/s], [m], [K]
  double return_by_speed = 0, return_by_height = 0, return_by_loop = 0; ///< [-]
  double heat_loss = 0; ///< lost work, integral of m c_v (T - T_w)^2/(T tau) dt [J]
  /// Exergy that leaves with the gas, m' [c_p (T - T_w) - T_w (c_p ln T/T_w - R ln p/p_a)], and that incoming
  /// gas loses as it spreads, T_w times the entropy it makes [J].
  double leak_loss = 0;
  double left_in_gas = 0; ///< exergy at contact loss, against the gas at rest [J]
  double residual = 0;    ///< what the energy balance leaves open, thread energy included [J]
};

/// One hit; throws std::runtime_error if contact lasts longer than 2 s.
PistonHit piston_drop(const GasColumn &gas, const PistonDrop &drop);
} // namespace solemech::tests
